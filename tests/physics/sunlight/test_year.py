"""The sun over a year."""

from __future__ import annotations

import math

import numpy as np
import pytest

from wardwright.physics.sunlight.position import refraction, sun_angles, sun_place
from wardwright.physics.sunlight.year import FIRST_MIDNIGHT, facing, sun_year

LATITUDE, LONGITUDE = math.radians(51.5), math.radians(-3.0)


def test_every_step_is_where_the_formula_puts_the_sun() -> None:
    year = sun_year(LATITUDE, LONGITUDE)
    some = np.arange(0, len(year.day), 997)
    minutes = year.minute[some] - 4.0 * math.degrees(LONGITUDE)
    place = sun_place(FIRST_MIDNIGHT + year.day[some] + minutes / 1440.0)
    angles = sun_angles(place, minutes, latitude=LATITUDE, longitude=LONGITUDE)
    seen = angles.elevation + refraction(angles.elevation)
    assert np.degrees(np.abs(seen - year.elevation[some])).max() < 1e-3
    assert np.degrees(np.abs(angles.azimuth - year.azimuth[some])).max() < 1e-3


def test_a_thinned_year_stands_for_as_many_minutes() -> None:
    whole, thin = sun_year(LATITUDE, LONGITUDE), sun_year(LATITUDE, LONGITUDE, step=6.0, every_days=5)
    assert len(thin.day) * thin.step_min == pytest.approx(len(whole.day) * whole.step_min, rel=0.005)


def test_before_a_wall_the_sun_is_in_order_and_nothing_is_lost() -> None:
    year = sun_year(LATITUDE, LONGITUDE, step=10.0, every_days=7)
    south = facing(year, math.pi)
    assert (np.diff(south.turn) >= 0.0).all()
    assert len(south.steps) == int((np.cos(year.azimuth - math.pi) > math.cos(math.radians(89.0))).sum())
    noon = np.argmin(np.abs(south.turn))
    assert south.profile[noon] == pytest.approx(year.elevation[south.steps[noon]], abs=1e-3)
    # Turns are anticlockwise: the morning sun, in the east, is left of south seen from above.
    assert year.minute[south.steps[-1]] < 720.0 < year.minute[south.steps[0]]


def test_a_stretch_begins_whenever_the_sun_comes_up_and_at_each_midnight_with_the_sun_up() -> None:
    # North of the polar circle: nights, days, and weeks in which it does not set.
    year = sun_year(math.radians(70.0), LONGITUDE, step=20.0)
    new = np.zeros(len(year.day), dtype=np.bool_)
    new[year.begins] = True
    follows = (np.diff(year.day) == 0) & np.isclose(np.diff(year.minute), 20.0)
    assert new[0]
    assert (new[1:] == ~follows).all()
