"""Stand-by batteries: the forms and their inverse."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.physics.power.standby import battery_least, charge_current_least, charging_time, standby_time


def test_a_light_alarm_counts_once() -> None:
    """1.25 x (0.25 x 24 + 0.3 x 0.5) = 7.6875 Ah, a twentieth of which is 0.38 A: 0.3 A is light."""
    assert float(battery_least(0.25, 24.0, alarm=0.3, alarm_time=0.5)) == 7.6875


@given(st.floats(0.01, 1.0), st.floats(1.0, 72.0), st.floats(0.0, 2.0), st.floats(0.0, 1.0))
def test_the_battery_asked_for_lasts_at_least_as_long(
    quiet: float, time: float, alarm: float, alarm_time: float
) -> None:
    battery = battery_least(quiet, time, alarm=alarm, alarm_time=alarm_time)
    found = standby_time(battery, quiet, alarm=alarm, alarm_time=alarm_time)
    assert found >= time - 1e-9


@given(st.floats(0.5, 20.0), st.floats(0.01, 1.0), st.floats(0.0, 2.0))
def test_a_new_battery_lasts_at_least_as_long_as_an_old_one(
    capacity: float, quiet: float, alarm: float
) -> None:
    old, new = standby_time(capacity, quiet, alarm=alarm, alarm_time=0.25, ageing=[1.25, 1.0])
    assert new >= old >= 0.0


def test_an_alarm_that_takes_all_leaves_nothing() -> None:
    assert float(standby_time(0.5, 0.05, alarm=2.0, alarm_time=0.5)) == 0.0


def test_a_charger_of_no_current_never_ends() -> None:
    assert np.isinf(charging_time(7.0, 0.0))
    assert float(charging_time(7.0, charge_current_least(7.0, 24.0))) == pytest.approx(24.0)
