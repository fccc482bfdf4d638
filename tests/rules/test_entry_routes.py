"""Ways from entry doors to keypads."""

from __future__ import annotations

import numpy as np
import pytest

from common.houses import CATALOGUE, on_wall, open_edge, standing_free, two_rooms_and_hall
from wardwright.errors import NotComputable
from wardwright.rules.entry_routes import entry_routes, is_in, keypads, place_before, rooms_on

IN_HALL = on_wall("keypad", "keypad", "kitchen-wall", 1.0, side="right", height_m=1.3)
IN_STUDY = on_wall("a-keypad", "keypad", "east", 3.0, height_m=1.3)
BUILT_IN = on_wall("unit", "unit-with-keypad", "north", 3.0, height_m=1.5)


def test_the_way_ends_before_the_keypad_that_is_reached_first() -> None:
    (one,) = entry_routes(two_rooms_and_hall(devices=(IN_HALL, IN_STUDY)), CATALOGUE)
    assert (one.door.id, one.keypad.id) == ("front-door", "keypad")
    assert one.points_on("ground")[-1] == pytest.approx((4.5, 1.0), abs=0.01)
    assert len(one.points_on("up")) == 0


def test_one_way_a_door_in_the_order_of_ids() -> None:
    plan = two_rooms_and_hall(devices=(IN_HALL,))
    doors = tuple(
        o.model_copy(update={"is_entry_door": o.id in ("front-door", "back-door")})
        for o in (
            *plan.openings,
            plan.opening("front-door").model_copy(update={"id": "back-door", "wall": "north"}),
        )
    )
    ways = entry_routes(plan.model_copy(update={"openings": doors}), CATALOGUE)
    assert [one.door.id for one in ways] == ["back-door", "front-door"]


def test_a_keypad_built_into_the_control_unit_counts() -> None:
    site = two_rooms_and_hall(devices=(BUILT_IN, IN_HALL))
    assert [device.id for device in keypads(site, CATALOGUE)] == ["keypad", "unit"]
    with pytest.raises(NotComputable, match="no keypad"):
        keypads(two_rooms_and_hall(devices=(on_wall("unit", "unit", "north", 3.0),)), CATALOGUE)


def test_a_person_stands_before_the_wall() -> None:
    site = two_rooms_and_hall(devices=(IN_HALL,))
    assert place_before(site, IN_HALL) == ("ground", pytest.approx(4.5), pytest.approx(1.0))
    free = standing_free("keypad", "keypad", 5.0, 2.0)
    assert place_before(site, free) == ("ground", 5.0, 2.0)


def test_the_rooms_on_the_way_take_in_those_open_to_them() -> None:
    plan = two_rooms_and_hall(devices=(IN_HALL,))
    assert rooms_on(plan, entry_routes(plan, CATALOGUE)) == {"hall"}
    joined = plan.model_copy(
        update={"open_edges": (open_edge("hall", "kitchen", ((4.05, 0.0), (4.05, 6.0))),)}
    )
    assert rooms_on(joined, entry_routes(joined, CATALOGUE)) == {"hall", "kitchen"}


def test_points_lie_in_rooms() -> None:
    plan = two_rooms_and_hall()
    inside = is_in((plan.space("hall"), plan.space("study")), np.array([[5.0, 1.0], [7.0, 1.0], [1.0, 1.0]]))
    assert inside.tolist() == [True, True, False]
