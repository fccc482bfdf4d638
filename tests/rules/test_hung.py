"""Where a movement detector hangs and what it has in sight there."""

from __future__ import annotations

import math

import numpy as np
import pytest

from common.houses import CATALOGUE, on_wall, one_room
from common.rule_houses.service import WORKTOP
from wardwright.model.device_sheets import MovementSheet
from wardwright.rules.ahead import ahead_of
from wardwright.rules.hung import depressions_of, hung_of, in_fan, in_sight, in_sight_there, sight_from


def table(sheet_id: str = "fan") -> MovementSheet:
    found = CATALOGUE.sheet(sheet_id).movement
    assert found is not None
    return found


# In the middle of the west wall at (0.04, 2.0), looking east; the fan is 90 degrees wide.
FAN = on_wall("fan", "fan", "west", 2.15)


def test_where_it_hangs_and_how_wide_it_looks() -> None:
    hung = hung_of(one_room(devices=(FAN,)).bare, FAN, table())
    assert (hung.storey, hung.half) == ("ground", pytest.approx(math.pi / 4))
    assert hung.eye == pytest.approx((0.04, 2.0, 2.2))
    assert math.cos(hung.heading) == pytest.approx(1.0)


def test_a_tilt_counts_for_all_its_rows() -> None:
    up = FAN.model_copy(update={"tilt_deg": -1.0})
    pairs = zip(depressions_of(FAN, table()), depressions_of(up, table()), strict=True)
    assert [level - raised for level, raised in pairs] == pytest.approx([math.radians(1.0)] * 4)


def test_the_fan_covers_45_degrees_each_side() -> None:
    points = np.array([[1.0, 0.99], [1.0, 1.01], [1.0, 0.0], [-0.1, 0.0]])
    covered = in_fan((0.0, 0.0, 2.0), points, heading=0.0, half=math.pi / 4)
    assert covered.tolist() == [True, False, True, False]


def test_places_in_sight_are_those_in_the_fan_that_are_not_hidden() -> None:
    tall = WORKTOP.model_copy(update={"centre_m": (2.0, 2.0), "size_m": (0.4, 1.0), "height_m": 2.6})
    ahead = ahead_of(one_room(devices=(FAN,), fixtures=(tall,)), FAN, table())
    points = np.array([[1.04, 2.0], [3.0, 2.0], [1.04, 3.9], [1.54, 2.5]])
    seen = in_sight(ahead.sight, points, heading=ahead.heading, half=ahead.half)
    assert seen.rows.tolist() == [0, 3]
    assert seen.distance.tolist() == pytest.approx([1.0, math.hypot(1.5, 0.5)])
    stood = np.array([0.0, 0.3])
    assert (
        seen.lowest_zone(ahead.depressions, stood, reach_m=12.0).tolist()
        == ahead.lowest_zone(points[[0, 3]], stood, reach_m=12.0).tolist()
    )


def test_a_sheet_as_wide_in_its_place_shares_its_sight() -> None:
    # Where no other test has it hang: of what one asked before, a part may be forgotten.
    here = on_wall("fan", "fan", "west", 2.173)
    site = one_room(devices=(here,))
    ahead = ahead_of(site, here, table())
    assert sight_from(site.bare, hung_of(site.bare, here, table())) is ahead.sight


def test_asked_about_a_few_places_it_sees_the_same() -> None:
    house = one_room(devices=(FAN,), fixtures=(WORKTOP,)).bare
    hung = hung_of(house, FAN, table())
    places = np.array([[2.0, 2.1], [3.0, 1.2], [4.5, 0.3], [0.5, 3.9], [-1.0, 2.0]])
    few = in_sight_there(house, hung, places)
    whole = in_sight(sight_from(house, hung), places, heading=hung.heading, half=hung.half)
    assert few.rows.tolist() == whole.rows.tolist()
    assert 0 < len(few.rows) < len(places)
    assert few.distance.tolist() == whole.distance.tolist()
    assert few.heights.lowest().tolist() == whole.heights.lowest().tolist()
