"""One beam through one opening."""

from __future__ import annotations

import math

import numpy as np
import pytest

from wardwright.errors import GeometryError
from wardwright.physics.sunlight.beam import incidence, lit_band, profile_angle, sunlit_patch

GLASS = [(0.0, 0.0, 0.9), (1.2, 0.0, 0.9), (1.2, 0.0, 2.1), (0.0, 0.0, 2.1)]


def test_the_patch_lies_where_the_band_says_and_is_shifted_sideways() -> None:
    high, turn = math.radians(30.0), math.radians(20.0)
    sun = (math.cos(high) * math.sin(turn), -math.cos(high) * math.cos(turn), math.sin(high))
    patch = sunlit_patch(GLASS, sun, floor_z=0.0)
    assert patch is not None
    near, far = lit_band(profile_angle(high, math.pi - turn, facing=math.pi), sill=0.9, head=2.1)
    assert patch[:, 1] == pytest.approx([near, near, far, far])
    assert (patch[:, 0] < np.array([0.0, 1.2, 1.2, 0.0])).all()
    assert patch[:, 2] == pytest.approx(0.0)


def test_no_patch_from_behind_or_below() -> None:
    assert sunlit_patch(GLASS, (0.0, 0.8, 0.6), floor_z=0.0) is None
    assert sunlit_patch(GLASS, (0.0, -0.8, -0.6), floor_z=0.0) is None


def test_glass_below_the_floor_is_refused() -> None:
    with pytest.raises(GeometryError, match="not above the floor"):
        sunlit_patch(GLASS, (0.0, -0.8, 0.6), floor_z=1.0)


def test_behind_a_wall_there_is_no_profile_angle() -> None:
    assert math.isnan(profile_angle(0.5, 0.0, facing=math.pi))
    assert incidence(0.0, 0.0, tilt=math.pi / 2, facing=math.pi) == pytest.approx(math.pi)
