"""Panes in earshot: hand-worked distances, plain sight, the nearest place that hears."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, on_wall, one_room, opening, two_rooms_and_hall, window
from common.rule_houses.glass import ear, heard, long_room
from wardwright.errors import CatalogueError, NoneOfAKind
from wardwright.model.fixture import Fixture
from wardwright.rules.panes_in_earshot import (
    ears,
    farthest_m,
    hearing_spot,
    hears,
    is_in_sight,
    moved_to_hear,
    panes_of,
)

WINDOW = window("east-window", "east", 2.15, covering="none")


def test_the_farthest_corner_is_in_space() -> None:
    """Window: x 10.15, y 1.4 to 2.6, z 0.9 to 2.1; from (8, 0, 2) the far lower corner is farthest."""
    expected = math.sqrt(2.15**2 + 2.6**2 + 1.1**2)
    assert farthest_m(heard(8.15), (8.0, 0.0, 2.0), WINDOW) == pytest.approx(expected)


def box(height_m: float) -> Fixture:
    """A box across the long room at x = 9, 0.4 m deep."""
    return Fixture(
        id="box", name="box", storey="ground", centre_m=(9.0, 2.0), size_m=(0.4, 4.0), height_m=height_m
    )


@pytest.mark.parametrize(("height_m", "is_seen"), [(1.5, True), (1.7, False)])
def test_furniture_hides_a_pane_only_where_it_is_high_enough(height_m: float, is_seen: bool) -> None:
    """From z 2 at x 8 to the pane's middle, z 1.5 at x 10.15: over x 8.8 to 9.2 the line is at 1.81 to 1.72."""
    site = long_room(fixtures=(box(height_m),))
    low = long_room(fixtures=(box(1.5),))
    assert is_in_sight(low, "ground", (8.0, 2.0, 2.0), opening=WINDOW)
    assert is_in_sight(site, "ground", (8.0, 2.0, 2.0), opening=WINDOW) is (height_m < 1.72)
    assert is_seen is (height_m < 1.7)


def test_a_box_up_to_the_line_hides_it() -> None:
    assert not is_in_sight(long_room(fixtures=(box(1.75),)), "ground", (8.0, 2.0, 2.0), opening=WINDOW)


def test_walls_and_shut_doors_hide_a_pane() -> None:
    """From the hall to the study's window through the study's door: y 4, as the door's middle is."""
    east = window("study-window", "east", 4.15)
    openings = tuple(one for one in two_rooms_and_hall().openings if one.id != "study-window")
    shut = two_rooms_and_hall(openings=(*openings, east))
    ajar = two_rooms_and_hall(
        openings=(
            *(one for one in openings if one.id != "study-door"),
            opening("study-door", "study-wall", 4.0, habit="open"),
            east,
        )
    )
    hall = (5.0, 4.0, 1.5)
    assert not is_in_sight(shut, "ground", hall, opening=east)
    assert is_in_sight(ajar, "ground", hall, opening=east)
    assert not is_in_sight(ajar, "ground", (5.0, 1.0, 1.5), opening=east)


def test_a_curtain_shortens_the_reach() -> None:
    (one,) = ears(heard(6.15), CATALOGUE)
    assert hears(heard(6.15), "ground", one.point, opening=WINDOW, sheet=one.sheet)
    assert not hears(heard(6.15), "ground", one.point, opening=WINDOW, sheet=one.sheet, is_curtained=True)


def test_panes_are_those_with_glass_to_the_outside() -> None:
    site = one_room(
        openings=(window("a", "north", 2.65), opening("door", "south", 2.65), window("b", "west", 2.15))
    )
    assert [one.id for one in panes_of(site, site.spaces)] == ["a", "b"]


def test_the_place_is_the_nearest_that_hears() -> None:
    site = heard(1.15)
    (one,) = ears(site, CATALOGUE)
    spot = hearing_spot(site, one.row, (WINDOW,), room=one.room, near=one.point, heed=False)
    assert spot is not None
    assert farthest_m(site, (spot.x_m, spot.y_m, 2.0), WINDOW) <= 6.0
    # Along the south wall: x from which sqrt((10.15 - x)^2 + 2.56^2 + 1.1^2) = 6, in steps of 0.25 m.
    least = 10.15 - math.sqrt(36.0 - 2.56**2 - 1.1**2)
    assert least <= spot.x_m < least + 0.25
    (mend,) = moved_to_hear(site, one, (WINDOW,))
    assert dict(mend.values)["wall"] == "south"


def test_a_sheet_for_ceilings_only_has_no_place_on_walls() -> None:
    site = heard(1.15)
    (one,) = ears(site, CATALOGUE)
    row = one.row.model_copy(update={"mounts": ("ceiling",)})
    assert hearing_spot(site, row, (WINDOW,), room=one.room, near=one.point, heed=False) is None


def test_without_detectors_or_their_table_there_is_nothing() -> None:
    with pytest.raises(NoneOfAKind):
        ears(long_room(), CATALOGUE)
    bare = CATALOGUE.model_copy(
        update={"sheets": tuple(one.model_copy(update={"glass_break": None}) for one in CATALOGUE.sheets)}
    )
    with pytest.raises(CatalogueError, match="without a table 'glass_break'"):
        ears(long_room(devices=(ear(2.0),)), bare)
    assert (
        ears(one_room(devices=(on_wall("ear", "ear", "south", 2.0, side="right"),)), CATALOGUE)[0].room == ()
    )
