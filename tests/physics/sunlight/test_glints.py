"""The sun thrown on by something smooth."""

from __future__ import annotations

import math

import numpy as np
import pytest

from wardwright.physics.sunlight.glints import behind_floor, behind_mirror, through_floor, through_mirror

SQUARE = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))


def test_the_thrown_line_leaves_the_floor_as_steeply_as_it_came() -> None:
    """From a lens 2 m up, the sun at 45 degrees is seen in the floor 2 m away."""
    eye = behind_floor((1.0, 1.0, 2.0), 0.0)
    found = through_floor(eye, np.array([0.0, math.pi]), np.array([1.0, 1.0]), level=0.0, ring=SQUARE)
    assert found.places[0] == pytest.approx((3.0, 1.0))
    assert found.is_met.tolist() == [True, False]


def test_a_mirror_shows_what_is_before_it_between_its_edges() -> None:
    face = ((4.0, 0.0), (0.0, 0.0))
    eye = behind_mirror((1.0, 2.0, 1.0), face, (0.0, 1.0))
    assert eye is not None
    bearing, rise = np.array([math.pi / 2, math.pi / 2, math.radians(30.0)]), np.array([0.1, 2.0, 0.1])
    found = through_mirror(eye, bearing, rise, face=(face, (0.0, 1.0)), levels=(0.5, 2.0))
    # Straight ahead it crosses 2 m on: at 1.2 m, or at 5 m, above the edge; the slanting one beyond its end.
    assert found.is_met.tolist() == [True, False, False]
    assert found.places[0] == pytest.approx((1.0, 0.0))
    assert found.shown[0] == pytest.approx((1.0, 0.2))
    assert behind_mirror((1.0, -2.0, 1.0), face, (0.0, 1.0)) is None
