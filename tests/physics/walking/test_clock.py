from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.physics.walking.clock import SPACING_M, sampled

PLACE = st.tuples(st.floats(-9, 9), st.floats(-9, 9))


@given(st.lists(PLACE, min_size=2, max_size=6))
def test_points_are_close_together_and_the_corners_are_among_them(corners: list[tuple[float, float]]) -> None:
    line = np.array(corners)
    points, walked = sampled(line)
    gaps = np.linalg.norm(np.diff(points, axis=0), axis=1)
    assert gaps.max() <= SPACING_M * (1 + 1e-6)
    assert walked[-1] == pytest.approx(np.linalg.norm(np.diff(line, axis=0), axis=1).sum())
    assert np.allclose(np.diff(walked), gaps)
    for corner in line:
        assert np.linalg.norm(points - corner, axis=1).min() < 1e-12


def test_a_wider_spacing_needs_fewer_points() -> None:
    assert len(sampled(np.array([[0.0, 0.0], [1.0, 0.0]]), spacing=0.5)[0]) == 3
