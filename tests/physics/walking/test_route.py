from __future__ import annotations

import math

import numpy as np
import pytest
import shapely

from wardwright.physics.walking.clock import SPACING_M
from wardwright.physics.walking.free_floor import Passages, Rooms
from wardwright.physics.walking.network import reach_from, way_to
from wardwright.physics.walking.premises import Doors, Flight, FloorPlan, Network, network_between
from wardwright.physics.walking.route import Paces, Route, costs_of, route_along

Place = tuple[float, float]
PACES = Paces(2.0, 0.5, 1.5)
NO_PASSAGES = Passages(np.empty((0, 2)), np.empty((0, 2)), np.empty(0), np.empty(0))
CORRIDOR = shapely.box(0, 0, 8, 2)
ROOMS = Rooms(CORRIDOR, (), NO_PASSAGES)
LINES = np.array([[(3.0, 0.0), (3.0, 2.0)], [(5.0, 0.0), (5.0, 2.0)]])


def corridor(*, timed: int = 2) -> Network:
    """A corridor of 8 m with two doors and a flight at its end to a floor above."""
    names = ("first-door", "second-door")
    doors = Doors(names[:timed], LINES[:timed], names[timed:], LINES[timed:])
    no_doors = Doors((), np.empty((0, 2, 2)), (), np.empty((0, 2, 2)))
    plans = (
        FloorPlan("ground", CORRIDOR, shapely.Polygon(), ROOMS, doors),
        FloorPlan("upper", CORRIDOR, shapely.Polygon(), ROOMS, no_doors),
    )
    flight = Flight("stairs", 0, 1, ((7.0, 1.0), (4.0, 1.0)), 4.2)
    return network_between(plans, (flight,), body_radius=0.22)


def route_between(network: Network, start: tuple[int, Place], goal: tuple[int, Place]) -> Route | None:
    reach = reach_from(network.web, start[0], np.array(start[1]), costs=costs_of(PACES))
    place = (goal[0], np.array(goal[1]))
    way = way_to(network.web, reach, place, costs=costs_of(PACES))
    return None if way is None else route_along(network, reach, (way[1], *place), paces=PACES)


def route(network: Network, start: tuple[int, float], goal: tuple[int, float]) -> Route:
    found = route_between(network, (start[0], (start[1], 1.0)), (goal[0], (goal[1], 1.0)))
    assert found is not None
    return found


def test_legs_in_order_with_their_lengths_and_times() -> None:
    found = route(corridor(), (0, 1.0), (1, 2.0))
    assert [(leg.kind, leg.subject) for leg in found.legs] == [
        ("floor", None),
        ("door", "first-door"),
        ("floor", None),
        ("door", "second-door"),
        ("floor", None),
        ("stairs-up", "stairs"),
        ("floor", None),
    ]
    assert [leg.length for leg in found.legs] == pytest.approx([2.0, 0.0, 2.0, 0.0, 2.0, 4.2, 2.0])
    times = [found.clock[leg.last] - found.clock[leg.first] for leg in found.legs]
    # At 2 m/s on the flat, 1 m/s on the flight, 1.5 s a door.
    assert times == pytest.approx([1.0, 1.5, 1.0, 1.5, 1.0, 4.2, 1.0])


def test_legs_follow_one_another_and_points_are_close() -> None:
    found = route(corridor(), (0, 1.0), (1, 2.0))
    assert found.legs[0].first == 0
    assert found.legs[-1].last == len(found.points) - 1 == len(found.clock) - 1 == len(found.storeys) - 1
    assert all(a.last == b.first for a, b in zip(found.legs, found.legs[1:], strict=False))
    assert np.linalg.norm(np.diff(found.points, axis=0), axis=1).max() <= SPACING_M + 1e-9
    assert (np.diff(found.clock) >= 0).all()
    door = found.legs[1]
    assert found.points[door.first].tolist() == found.points[door.last].tolist() == pytest.approx([3.0, 1.0])


def test_the_upper_half_of_a_flight_counts_to_the_upper_storey() -> None:
    found = route(corridor(), (0, 6.0), (1, 2.0))
    (flight,) = [leg for leg in found.legs if leg.kind == "stairs-up"]
    on_it = found.storeys[flight.first : flight.last + 1]
    assert on_it.count("upper") == pytest.approx(len(on_it) / 2, abs=1)
    assert list(on_it) == sorted(on_it, key=["ground", "upper"].index)


def test_down_again_takes_the_same_time() -> None:
    up, down = route(corridor(), (0, 1.0), (1, 2.0)), route(corridor(), (1, 2.0), (0, 1.0))
    assert down.clock[-1] == pytest.approx(up.clock[-1], abs=1e-9)
    assert [leg.kind for leg in down.legs][1] == "stairs-down"


def test_a_door_that_stands_open_is_named_and_takes_no_time() -> None:
    found = route(corridor(timed=1), (0, 1.0), (0, 6.0))
    doors = [leg for leg in found.legs if leg.kind == "door"]
    assert [leg.subject for leg in doors] == ["first-door", "second-door"]
    assert [leg.last - leg.first for leg in doors] == [1, 0]
    assert found.clock[-1] == pytest.approx(2.5 + 1.5)


def test_a_walk_to_where_one_stands_is_over_at_once() -> None:
    found = route(corridor(), (0, 1.0), (0, 1.0))
    assert found.points.tolist() == [[1.0, 1.0]]
    assert found.clock.tolist() == [0.0]
    assert found.legs == ()


def test_no_way_is_no_route() -> None:
    network = corridor()
    rooms = shapely.union_all([shapely.box(0, 0, 2, 2), shapely.box(3, 0, 5, 2)])
    plan = FloorPlan("ground", rooms, shapely.Polygon(), Rooms(rooms, (), NO_PASSAGES), network.doors[1])
    island = network_between((plan,), (), body_radius=0.22)
    assert route_between(island, (0, (1.0, 1.0)), (0, (4.0, 1.0))) is None


def test_the_time_of_the_walk_is_the_least_time() -> None:
    found = route_between(corridor(), (0, (1.0, 0.5)), (0, (7.0, 1.7)))
    assert found is not None
    assert found.clock[-1] == pytest.approx(math.hypot(6.0, 1.2) / 2.0 + 2 * 1.5)


def test_a_way_after_another_to_one_place_is_told_as_by_itself() -> None:
    # Most ways to a place end alike; what is remembered of the one must not be of the other's start.
    network = corridor()
    first, again = route(network, (0, 1.0), (1, 2.0)), route(corridor(), (0, 4.0), (1, 2.0))
    second = route(network, (0, 4.0), (1, 2.0))
    assert second.legs == again.legs
    assert np.array_equal(second.points, again.points)
    assert np.array_equal(second.clock, again.clock)
    assert len(second.points) < len(first.points)
