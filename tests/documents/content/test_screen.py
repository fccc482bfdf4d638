from __future__ import annotations

import pytest

from wardwright.documents.content.screen import ROOM, house_drawing, overlay, storeys_on_screen, strip_of
from wardwright.documents.writers.svg import fragment_svg
from wardwright.model.edits import MoveWall, edited
from wardwright.model.revision import replaced
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names

SITE, CATALOGUE = read_sample("terrace"), load_catalogue()
ANSWERS = ask(SITE, CATALOGUE)
OUTER = "hall-south-wall"


def test_all_storeys_lie_on_one_sheet_from_the_lowest_up() -> None:
    ground, first = storeys_on_screen(SITE)
    assert (ground.storey, first.storey) == ("ground", "first")
    assert (ground.bounds, ground.mm_per_m) == (first.bounds, first.mm_per_m)


@pytest.mark.parametrize("name", sample_names())
def test_every_sample_lies_on_a_sheet_on_which_a_laptop_shows_letters_that_are_read(name: str) -> None:
    x0, y0, x1, y1 = storeys_on_screen(site := read_sample(name))[0].bounds
    mm = storeys_on_screen(site)[0].mm_per_m
    assert (x1 - x0) * mm <= ROOM.width_mm + 20.0  # leaves that open outward come to it
    assert (y1 - y0) * mm <= ROOM.height_mm + 20.0


def test_the_sheet_holds_leaves_that_open_outward() -> None:
    door = SITE.opening("front-door")
    wide = door.model_copy(update={"width_m": 2.5, "swing": "right"})
    outward = SITE.model_copy(
        update={"openings": tuple(wide if one == door else one for one in SITE.openings)}
    )
    x0, low, *rest = storeys_on_screen(SITE)[0].bounds
    there = storeys_on_screen(outward)[0].bounds
    assert there == (x0, pytest.approx(-0.3 - 2.5), *rest)
    assert there[1] < low


def test_what_is_tried_lies_on_the_sheet_of_the_house_as_kept() -> None:
    moved = edited(SITE, (MoveWall(wall=OUTER, by_m=-0.5),))
    assert storeys_on_screen(moved)[0].bounds != storeys_on_screen(SITE)[0].bounds
    tried = overlay(moved, CATALOGUE, ANSWERS, key=None, over=SITE)["ground"]
    assert tried.bounds == overlay(SITE, CATALOGUE, ANSWERS, key=None)["ground"].bounds
    assert tried.bounds != overlay(moved, CATALOGUE, ANSWERS, key=None)["ground"].bounds


def test_the_house_is_drawn_without_its_devices_so_that_they_can_move() -> None:
    bare = replaced(SITE, devices=(), zones=())
    for storey in ("ground", "first"):
        drawn = fragment_svg(house_drawing(SITE, CATALOGUE, storey))
        assert drawn == fragment_svg(house_drawing(bare, CATALOGUE, storey))
        assert "ink-wall" in drawn


def test_what_is_chosen_is_laid_over_it() -> None:
    nothing_chosen = overlay(SITE, CATALOGUE, ANSWERS, key=None)
    assert set(nothing_chosen) == {"ground"}
    race = overlay(SITE, CATALOGUE, ANSWERS, key="1/front-door")
    assert "ink-walk" in fragment_svg(race["ground"])
    assert "noticed by OC1" in fragment_svg(race["ground"]) or "OC" in fragment_svg(race["ground"])
    assert overlay(SITE, CATALOGUE, ANSWERS, key="1/nowhere") == nothing_chosen


def test_only_a_race_has_a_strip_of_time() -> None:
    assert strip_of(ANSWERS, CATALOGUE, key="1/front-door") is not None
    assert strip_of(ANSWERS, CATALOGUE, key="11/hall-movement") is None
    assert strip_of(ANSWERS, CATALOGUE, key=None) is None
