"""Places for a sounder inside: off the way in, away from the unit, on landings first."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, two_rooms_and_hall
from common.rule_houses.control import UNIT_IN_STUDY
from common.rule_houses.keypads import KEYPAD
from common.rule_houses.sounders import BESIDE
from wardwright.model.placement import standing
from wardwright.rules.sounder_spots import distance_to_unit, sounder_spot

HOUSE = two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY, BESIDE))
NEAR = standing(HOUSE, BESIDE)


def test_the_distance_is_to_the_nearest_unit_of_the_storey() -> None:
    assert distance_to_unit(HOUSE, CATALOGUE, NEAR) == pytest.approx(0.8)
    assert distance_to_unit(two_rooms_and_hall(), CATALOGUE, NEAR) == math.inf


def test_it_is_off_the_way_and_away_from_the_unit() -> None:
    spot = sounder_spot(HOUSE, CATALOGUE, near=NEAR, height_m=2.1)
    assert spot is not None
    assert spot.space == "study"
    assert distance_to_unit(HOUSE, CATALOGUE, spot.standing(2.1)) > 2.0


def test_a_landing_goes_before_a_nearer_room() -> None:
    spaces = tuple(s.model_copy(update={"use": "landing"}) if s.id == "kitchen" else s for s in HOUSE.spaces)
    spot = sounder_spot(HOUSE.model_copy(update={"spaces": spaces}), CATALOGUE, near=NEAR, height_m=2.1)
    assert spot is not None
    assert spot.space == "kitchen"


def test_none_where_every_room_is_unfit() -> None:
    spaces = tuple(s.model_copy(update={"use": "bathroom"}) for s in HOUSE.spaces)
    assert (
        sounder_spot(HOUSE.model_copy(update={"spaces": spaces}), CATALOGUE, near=NEAR, height_m=2.1) is None
    )
