"""Sunrise and sunset."""

from __future__ import annotations

import math

import pytest

from wardwright.physics.sunlight.rise_set import rise_and_set


def test_near_the_equinox_the_zero_is_found_not_interpolated() -> None:
    found = rise_and_set(5740.5, latitude=math.radians(39.742476), longitude=math.radians(-105.1786))
    assert found.set_min / 60.0 - 7.0 == pytest.approx(18.0 + 1.0 / 60.0 + 21.47 / 3600.0, abs=10.0 / 3600.0)


def test_a_sun_that_stays_up_or_down_neither_rises_nor_sets() -> None:
    for day in (9667.5, 9851.5):  # 21 June and 22 December 2026
        found = rise_and_set(day, latitude=math.radians(75.0), longitude=0.0)
        assert math.isnan(found.rise_min)
        assert math.isnan(found.set_min)
        assert found.noon_min == pytest.approx(720.0, abs=5.0)


def test_rises_before_noon_and_sets_after() -> None:
    found = rise_and_set(9700.5, latitude=0.8, longitude=0.3)
    assert found.rise_min < found.noon_min < found.set_min
