from __future__ import annotations

import numpy as np
import pytest
import shapely

from wardwright.physics.walking.free_floor import Passages, Rooms
from wardwright.physics.walking.premises import (
    OFF_THE_WALL_M,
    Doors,
    Flight,
    FloorPlan,
    Network,
    ground_of,
    network_between,
)

NO_DOORS = Doors((), np.empty((0, 2, 2)), (), np.empty((0, 2, 2)))
NO_PASSAGES = Passages(np.empty((0, 2)), np.empty((0, 2)), np.empty(0), np.empty(0))


def plan(storey: str, room: shapely.Geometry) -> FloorPlan:
    return FloorPlan(storey, room, shapely.Polygon(), Rooms(room, (), NO_PASSAGES), NO_DOORS)


def two_floors(upper: shapely.Geometry) -> Network:
    flight = Flight("stairs", 0, 1, ((1.0, 1.0), (1.0, 3.9)), 4.0)
    return network_between(
        (plan("ground", shapely.box(0, 0, 6, 4)), plan("upper", upper)), (flight,), body_radius=0.22
    )


def test_a_place_on_free_floor_stays_and_one_in_a_wall_is_taken_to_the_nearest() -> None:
    network = two_floors(shapely.box(0, 0, 6, 4))
    assert network.snapped(0, np.array([2.0, 2.0])).tolist() == [2.0, 2.0]
    taken = network.snapped(0, np.array([3.0, -0.5]))
    assert taken.tolist() == pytest.approx([3.0, 0.22 + OFF_THE_WALL_M])
    assert network.free[0].covers(shapely.Point(taken))


def test_the_ends_of_a_flight_stand_on_free_floor() -> None:
    network = two_floors(shapely.box(0, 0, 6, 4))
    (join,) = network.web.joins
    assert join.at_a == (1.0, 1.0)
    assert join.at_b == pytest.approx((1.0, 4 - 0.22 - OFF_THE_WALL_M))
    assert join.length == 4.0


def test_a_flight_to_an_empty_floor_leads_nowhere() -> None:
    network = two_floors(shapely.Polygon())
    assert network.flights == ()
    assert network.web.joins == ()


def test_a_closet_smaller_than_the_body_is_no_floor() -> None:
    network = network_between((plan("ground", shapely.box(0, 0, 0.4, 0.4)),), (), body_radius=0.22)
    assert network.free[0].is_empty


def test_a_place_in_a_nook_is_taken_to_its_own_side_of_the_wall() -> None:
    nook = shapely.union_all([shapely.box(0, 0, 3, 3), shapely.box(3, 0, 3.9, 0.4)])
    rooms = shapely.union_all([nook, shapely.box(3, 0.5, 6, 3).difference(shapely.box(3, 0, 3.1, 3))])
    network = network_between((plan("ground", rooms),), (), body_radius=0.22)
    place = np.array([3.8, 0.35])
    beyond = shapely.box(3.1, 0.5, 6, 3)
    assert network.inner[0].intersection(beyond).distance(shapely.Point(place)) < 0.5
    assert network.snapped(0, place)[0] < 3.1


def test_a_place_walled_in_is_taken_to_the_nearest_of_all() -> None:
    rooms = shapely.union_all([shapely.box(0, 0, 3, 3), shapely.box(5, 0, 5.3, 0.3)])
    network = network_between((plan("ground", rooms),), (), body_radius=0.22)
    assert network.snapped(0, np.array([5.1, 0.1])) == pytest.approx(
        [3 - 0.22 - OFF_THE_WALL_M, 0.22 + OFF_THE_WALL_M]
    )


def test_floors_that_are_known_already_make_the_same_network() -> None:
    plans = (plan("ground", shapely.box(0, 0, 5, 4)), plan("first", shapely.box(0, 0, 3, 4)))
    grounds = tuple(ground_of(one, body_radius=0.22) for one in plans)
    anew, known = (network_between(plans, (), body_radius=0.22, grounds=given) for given in (None, grounds))
    assert all(a.equals(b) for a, b in zip(anew.free, known.free, strict=True))
    assert (anew.web.points == known.web.points).all()
    assert (anew.web.starts == known.web.starts).all()
    assert network_between((), (), body_radius=0.22).free == ()
