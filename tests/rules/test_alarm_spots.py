"""Places for alarms: off the walls where the rule pack asks for it."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, one_room
from common.rule_houses.fire import US, hung
from wardwright.rules.alarm_spots import added_alarm, alarm_spot, moved_alarm
from wardwright.rules.fire_alarms import alarms, to_walls_m


def test_a_place_is_off_the_walls() -> None:
    site = one_room()
    spot = alarm_spot(site, CATALOGUE, site.spaces[0], nearest_to=(0.0, 2.0))
    assert spot is not None
    assert to_walls_m(site, "ground", spot) == pytest.approx(0.3)


def test_a_place_must_fit() -> None:
    site = one_room(place=US)
    spot = alarm_spot(site, CATALOGUE, site.spaces[0], nearest_to=(0.0, 0.0), fits=lambda p: p[0] > 4.0)
    assert spot is not None
    assert spot[0] > 4.0
    assert alarm_spot(site, CATALOGUE, site.spaces[0], nearest_to=(0.0, 0.0), fits=lambda _: False) is None


def test_an_alarm_moves_on_the_ceiling_of_its_room() -> None:
    site = one_room(devices=(hung("smoke", "smoke", 0.1, 2.0),))
    (alarm,) = alarms(site, CATALOGUE, "smoke-alarm")
    (mend,) = moved_alarm(site, CATALOGUE, alarm)
    values = dict(mend.values)
    assert (values["on"], values["storey"]) == ("ceiling", "ground")
    assert math.dist((float(values["x_m"]), float(values["y_m"])), (0.1, 2.0)) < 0.3
    assert moved_alarm(site, CATALOGUE, alarm._replace(space=None)) == ()


def test_an_alarm_is_added_only_where_there_is_a_place() -> None:
    row, space = CATALOGUE.sheet("smoke"), one_room().spaces[0]
    assert added_alarm(row, space, None) == ()
    (mend,) = added_alarm(row, space, (1.0, 2.0))
    assert (mend.subject, dict(mend.values)["sheet"]) == ("living", "smoke")
