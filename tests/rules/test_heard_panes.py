"""All that a glass-break detector's sheet asks for, one condition at a time, worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, opening, two_rooms_and_hall, window
from common.houses import on_wall as at_wall
from common.rule_houses.glass import heard
from wardwright.model.fixture import Fixture
from wardwright.model.site import Site
from wardwright.rules.heard_panes import is_heard, shorter_side_m


def hearing(site: Site, pane: str = "east-window", sheet: str = "ear") -> bool:
    return is_heard(site, site.device("ear"), CATALOGUE.sheet(sheet), pane=site.opening(pane))


@pytest.mark.parametrize(
    ("offset_m", "facts", "is_expected"),
    [
        # Reach 6 m, to (10.15, 2.6, 0.9) from (x, 0, 2): 3.55 m at x 8, 6.78 m at x 4.
        (8.15, {}, True),
        (4.15, {}, False),
        # Through a curtain 3 m: 2.90 m at x 9.5, 3.55 m at x 8.
        (9.65, {"covering": "curtain"}, True),
        (8.15, {"covering": "curtain"}, False),
        # Glass that the sheet does not name, and glass that nobody told.
        (8.15, {"glazing": "laminated"}, False),
        (8.15, {"glazing": None}, False),
        # The smallest pane is 0.4 m: two leaves of 0.45 m, of 0.35 m.
        (8.15, {"width_m": 0.9, "leaves": 2}, True),
        (8.15, {"width_m": 0.7, "leaves": 2}, False),
        (8.15, {"sill_m": 1.75}, False),
    ],
)
def test_each_condition(offset_m: float, facts: dict[str, Any], is_expected: bool) -> None:
    assert hearing(heard(offset_m, **facts)) is is_expected


def test_a_sheet_that_names_no_glass_is_not_taken_to_know_any() -> None:
    site = heard(8.15)
    row = CATALOGUE.sheet("ear")
    assert row.glass_break is not None
    silent = row.model_copy(update={"glass_break": row.glass_break.model_copy(update={"glazings": ()})})
    assert not is_heard(site, site.device("ear"), silent, pane=site.opening("east-window"))


def test_furniture_in_the_way_keeps_it_from_hearing() -> None:
    box = Fixture(id="box", name="box", storey="ground", centre_m=(9.0, 2.0), size_m=(0.4, 4.0), height_m=2.2)
    assert not hearing(heard(8.15).model_copy(update={"fixtures": (box,)}))


def test_a_pane_of_another_room_is_not_taken_for_heard_through_an_open_door() -> None:
    """From the hall's west side straight through the study's open door, 5.4 m: in sight, but another room."""
    openings = (
        opening("study-door", "study-wall", 4.0, habit="open"),
        window("study-window", "east", 4.15, covering="none"),
    )
    device = at_wall("ear", "ear", "kitchen-wall", 4.0, side="right", height_m=1.5)
    assert not hearing(two_rooms_and_hall(openings=openings, devices=(device,)), "study-window")


def test_the_shorter_side_is_of_one_leaf() -> None:
    assert shorter_side_m(window("a", "east", 2.0, width_m=1.8, leaves=2)) == pytest.approx(0.9)
    assert shorter_side_m(window("a", "east", 2.0, width_m=1.8)) == pytest.approx(1.2)
