"""Clock time."""

from __future__ import annotations

import numpy as np

from wardwright.physics.sunlight.clock import clock_shift


def test_summer_time_begins_and_ends_on_the_last_sundays_of_march_and_october() -> None:
    shift = clock_shift("Europe/Berlin", 15.0)
    change = np.nonzero(np.diff(shift))[0] + 1
    assert change.tolist() == [87, 297]  # 29 March and 25 October 2026
    assert shift[0] == 0.0
    assert shift[180] == 60.0


def test_the_south_has_its_summer_time_in_its_summer_and_no_zone_adds_nothing() -> None:
    south = clock_shift("Australia/Sydney", 151.2)
    assert south[0] > south[180]
    assert not clock_shift(None, 151.2).any()
