"""Where the sun stands."""

from __future__ import annotations

import math

import numpy as np
import pytest

from accuracy.sunlight import LATITUDES, accuracy_rows, year_against_pvlib
from wardwright.physics.sunlight.position import refraction, sun_angles, sun_place


@pytest.mark.parametrize("latitude", LATITUDES)
def test_within_a_fiftieth_of_a_degree_of_pvlib_over_a_year(latitude: float) -> None:
    zenith, turn = year_against_pvlib(latitude, step_min=30)
    assert len(zenith) > 4000
    assert np.abs(zenith).max() < 0.02
    assert np.abs(turn).max() < 0.02


def test_every_worked_example_is_met() -> None:
    missed = [row.quantity for row in accuracy_rows() if not row.is_met]
    assert missed == []


def test_east_in_the_morning_west_in_the_afternoon_on_both_halves_of_the_earth() -> None:
    for latitude in (0.9, -0.6):
        angles = sun_angles(sun_place(np.full(2, 9575.0)), [480.0, 960.0], latitude=latitude, longitude=0.0)
        assert math.sin(angles.azimuth[0]) > 0.5 > -0.5 > math.sin(angles.azimuth[1])


def test_refraction_lifts_and_ends_below_the_horizon() -> None:
    lifted = refraction(np.radians([-2.0, 0.0, 10.0, 90.0]))
    assert lifted[0] == 0.0
    assert np.degrees(lifted[1]) == pytest.approx(0.48, abs=0.02)
    assert lifted[1] > lifted[2] > abs(lifted[3])
