"""Which side of an opening is out."""

from __future__ import annotations

from common.houses import opening, two_rooms_and_hall
from wardwright.rules.outdoors import outdoor_side

PLAN = two_rooms_and_hall()


def test_outer_walls_have_the_room_on_their_left() -> None:
    assert outdoor_side(PLAN, PLAN.opening("front-door")) == "right"
    assert outdoor_side(PLAN, PLAN.opening("study-window")) == "right"


def test_an_inside_door_has_none() -> None:
    assert outdoor_side(PLAN, PLAN.opening("kitchen-door")) is None


def test_what_is_told_counts_before_the_plan() -> None:
    door = opening("door", "south", 5.25, joins=(None, "hall"))
    assert outdoor_side(PLAN, door) == "left"
    assert outdoor_side(PLAN, opening("door", "south", 5.25, joins=(None, None))) is None
