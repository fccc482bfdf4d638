"""What lies ahead: fan, plain sight, zones over a place."""

from __future__ import annotations

import math

import numpy as np
import pytest

from common.houses import CATALOGUE, on_ceiling, on_wall, one_room, opening, two_rooms_and_hall
from common.rule_houses.service import WORKTOP
from wardwright.model.device_sheets import MovementSheet
from wardwright.rules.ahead import ahead_of


def table(sheet_id: str = "fan") -> MovementSheet:
    found = CATALOGUE.sheet(sheet_id).movement
    assert found is not None
    return found


# In the middle of the west wall at (0.04, 2.0), looking east; the fan is 90 degrees wide.
FAN = on_wall("fan", "fan", "west", 2.15)


def test_the_fan_covers_45_degrees_each_side() -> None:
    ahead = ahead_of(one_room(devices=(FAN,)), FAN, table())
    points = np.array([[1.04, 2.99], [1.04, 3.01], [1.04, 2.0], [0.03, 2.0]])
    assert ahead.in_fan(points).tolist() == [True, False, True, False]
    assert ahead.distance(points)[2] == pytest.approx(1.0)


def test_its_own_floor_is_the_part_of_its_room_in_the_fan() -> None:
    """From x = 0.04 the fan widens by 2 m a metre to the whole 4 m at x = 2.04: 4 m2, and 2.96 m of 4 m beyond."""
    ahead = ahead_of(one_room(devices=(FAN,)), FAN, table())
    assert len(ahead.own_floor()) * 0.01 == pytest.approx(4.0 + 2.96 * 4.0, abs=0.15)


def test_another_room_is_not_its_own_even_through_an_open_door() -> None:
    plan = two_rooms_and_hall()
    fan = on_wall("fan", "fan", "kitchen-wall", 4.0, side="right")
    site = plan.model_copy(
        update={"openings": (opening("study-door", "study-wall", 4.0, habit="open"),), "devices": (fan,)}
    )
    ahead = ahead_of(site, fan, table())
    assert ahead.space is not None
    assert ahead.space.id == "hall"
    assert ahead.own_floor()[:, 0].max() < 6.1


def test_behind_a_tall_box_nothing_is_in_sight() -> None:
    tall = WORKTOP.model_copy(update={"centre_m": (2.0, 2.0), "size_m": (0.4, 1.0), "height_m": 2.3})
    floor = ahead_of(one_room(devices=(FAN,), fixtures=(tall,)), FAN, table()).own_floor()
    behind = (floor[:, 0] > 2.3) & (np.abs(floor[:, 1] - 2.0) < 0.4)
    assert len(floor) > 0
    assert not behind.any()


def test_the_lowest_zone_over_a_place() -> None:
    """Rows at 5.71, 13.13, 29.54 and 61.39 degrees fall from 2.2 m: 1 m out they are at 2.10, 1.97, 1.63, 0.37 m."""
    ahead = ahead_of(one_room(devices=(FAN,)), FAN, table())
    point = np.array([[1.04, 2.0], [1.04, 2.0], [1.04, 2.0], [1.04, 3.9]])
    lowest = ahead.lowest_zone(point, np.array([0.0, 0.4, 2.15, 0.0]), reach_m=12.0)
    assert lowest.tolist() == pytest.approx(
        [2.2 - math.tan(math.radians(61.39)), 2.2 - math.tan(math.radians(29.54)), math.inf, math.inf]
    )
    assert ahead.lowest_zone(point[:1], np.zeros(1), reach_m=0.9).tolist() == [math.inf]


def test_one_that_looks_all_round_covers_all_round() -> None:
    round_one = on_ceiling("round", "round", 2.5, 2.0)
    ahead = ahead_of(one_room(devices=(round_one,)), round_one, table("round"))
    assert len(ahead.own_floor()) == 50 * 40


def test_outside_there_is_no_space() -> None:
    outside = on_wall("fan", "fan", "south", 2.0, side="right")
    ahead = ahead_of(one_room(devices=(outside,)), outside, table())
    assert ahead.space is None
    assert len(ahead.own_floor()) == 0


def test_a_zone_behind_a_tall_box_does_not_count() -> None:
    tall = WORKTOP.model_copy(update={"centre_m": (2.0, 2.0), "size_m": (0.4, 1.0), "height_m": 2.35})
    point, stood = np.array([[3.0, 2.0]]), np.zeros(1)
    free = ahead_of(one_room(devices=(FAN,)), FAN, table()).lowest_zone(point, stood, reach_m=12.0)
    # 2.96 m out: 29.54 degrees end at 0.52 m, and 61.39 degrees have met the floor.
    assert free.tolist() == pytest.approx([2.2 - 2.96 * math.tan(math.radians(29.54))])
    hidden = ahead_of(one_room(devices=(FAN,), fixtures=(tall,)), FAN, table())
    assert hidden.lowest_zone(point, stood, reach_m=12.0).tolist() == [math.inf]
