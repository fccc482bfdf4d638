"""Ways from entry doors to keypads."""

from __future__ import annotations

import numpy as np
import pytest

from common.houses import CATALOGUE, on_wall, open_edge, standing_free, two_rooms_and_hall
from common.rule_houses.control import UNIT_IN_STUDY
from common.rule_houses.keypads import KEYPAD
from wardwright.errors import NotComputable
from wardwright.physics.walking.from_site import Spot
from wardwright.rules.entry_routes import (
    entry_doors,
    entry_routes,
    household_way,
    is_in,
    keypads,
    place_at,
    place_before,
    rooms_on,
    rooms_on_the_way,
)
from wardwright.rules.wall_spots import wall_spots

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


def test_a_place_before_a_wall_is_an_arm_off_it() -> None:
    site = two_rooms_and_hall()
    spot = next(
        one for one in wall_spots(site, site.space("hall"), height_m=1.2) if one.wall == "kitchen-wall"
    )
    assert place_at(site, spot) == pytest.approx((4.5, spot.y_m))


def test_entry_doors_are_told_or_it_is_said() -> None:
    assert [door.id for door in entry_doors(two_rooms_and_hall())] == ["front-door"]
    with pytest.raises(NotComputable, match="entry door"):
        entry_doors(two_rooms_and_hall(openings=()))


def test_a_household_way_is_at_an_ordinary_pace() -> None:
    """5 m up the hall at 1.3 m/s."""
    way = (Spot("ground", 5.1, 0.5), Spot("ground", 5.1, 5.5))
    route = household_way(two_rooms_and_hall(), CATALOGUE, way)
    assert route is not None
    assert float(route.clock[-1]) == pytest.approx(5.0 / 1.3)


def test_the_way_in_is_the_hall_or_is_not_known() -> None:
    assert rooms_on_the_way(two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY)), CATALOGUE) == {"hall"}
    assert rooms_on_the_way(two_rooms_and_hall(), CATALOGUE) is None
