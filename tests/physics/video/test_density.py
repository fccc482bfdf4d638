"""Densities and edges: what moves them, and which way."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.physics.video.density import distance_of, floor_band, focal_px, pixels_per_metre


@given(st.floats(0.5, 60.0), st.integers(320, 8000), st.floats(0.2, 2.8))
def test_density_and_distance_are_each_others_inverse(distance: float, across: int, angle: float) -> None:
    assert distance_of(pixels_per_metre(distance, across, angle), across, angle) == pytest.approx(distance)


@given(st.integers(320, 8000), st.floats(0.2, 2.8), st.floats(0.0, 0.3))
def test_a_wider_lens_never_shows_more_densely(across: int, angle: float, wider: float) -> None:
    if angle <= math.radians(90.0) < angle + wider:
        return  # at 90 degrees the law of the lens changes
    assert focal_px(across, angle + wider) <= focal_px(across, angle)


def test_a_camera_that_looks_up_sees_no_floor_and_one_straight_down_sees_it_below() -> None:
    assert floor_band(2.7, math.radians(-40.0), math.radians(40.0)) == (math.inf, math.inf)
    near, far = floor_band(2.7, math.radians(80.0), math.radians(40.0))
    assert near == 0.0
    assert far == pytest.approx(2.7 / math.tan(math.radians(60.0)))
