"""Power points of a room, and places that a lead reaches."""

from __future__ import annotations

import math

import pytest

from common.houses import two_rooms_and_hall
from common.rule_houses.control import MAINS_UNIT, socket
from wardwright.errors import NotComputable
from wardwright.model.placement import standing
from wardwright.rules.power_points import nearest_power, power_points, spots_by_power

HOUSE = two_rooms_and_hall(devices=(MAINS_UNIT,), outlets=(socket(7.0, 0.05),))


def test_a_lead_is_straight_and_stays_in_the_room() -> None:
    """From (6.24, 1.0), 1.5 m up, to (7.0, 0.05), 0.45 m up."""
    found = nearest_power(HOUSE, standing(HOUSE, MAINS_UNIT))
    assert found is not None
    assert found[1] == pytest.approx(math.sqrt(0.76**2 + 0.95**2 + 1.05**2))
    beyond = HOUSE.model_copy(update={"outlets": (socket(6.0, 1.0),)})
    assert nearest_power(beyond, standing(beyond, MAINS_UNIT)) is None


def test_places_are_within_the_lead_and_in_the_same_space() -> None:
    spots = list(spots_by_power(HOUSE, height_m=1.5, lead_m=2.0))
    assert spots
    assert {spot.space for spot in spots} == {"study"}
    assert max(math.dist((spot.x_m, spot.y_m, 1.5), (7.0, 0.05, 0.45)) for spot in spots) <= 2.0


def test_no_place_in_a_damp_room() -> None:
    spaces = tuple(s.model_copy(update={"use": "bathroom"}) for s in HOUSE.spaces)
    damp = HOUSE.model_copy(update={"spaces": spaces})
    assert list(spots_by_power(damp, height_m=1.5, lead_m=2.0)) == []


def test_none_drawn_is_said() -> None:
    with pytest.raises(NotComputable, match="no power point is drawn"):
        power_points(two_rooms_and_hall())
