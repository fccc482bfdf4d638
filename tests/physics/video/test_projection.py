"""Points in a picture: against a general matrix, and beyond 90 degrees."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from accuracy.video import general_matrix
from wardwright.physics.video.projection import Lens, drawn

LENS = Lens((0.0, 0.0, 2.5), 0.0, 0.0, 1920, 1080, math.radians(90.0))


@given(
    st.floats(-3.0, 3.0),
    st.floats(-0.5, 1.2),
    st.floats(0.3, 1.57),
    st.lists(st.floats(-9.0, 9.0), min_size=3, max_size=3),
)
def test_a_general_matrix_draws_the_same(heading: float, tilt: float, angle: float, at: list[float]) -> None:
    lens = LENS._replace(heading=heading, tilt=tilt, angle=angle)
    u, v, w = general_matrix(lens) @ [*at, 1.0]
    if w < 0.1:
        return
    picture = drawn(lens, [at])
    assert picture.across[0] * lens.across == pytest.approx(u / w, abs=1e-6)
    assert picture.down[0] * lens.down == pytest.approx(v / w, abs=1e-6)


def test_straight_ahead_is_the_middle_and_what_is_behind_is_not_in_it() -> None:
    picture = drawn(LENS, [(4.0, 0.0, 2.5), (-4.0, 0.0, 2.5), (4.0, 3.9, 2.5), (4.0, 4.1, 2.5)])
    assert (picture.across[0], picture.down[0]) == (0.5, 0.5)
    assert picture.is_in.tolist() == [True, False, True, False]
    assert picture.width_density[0] == pytest.approx(240.0)


def test_an_upright_thing_is_foreshortened_by_the_depression() -> None:
    """At the edge of 45 degrees down: cos 45 of the density across."""
    lens = LENS._replace(tilt=math.radians(45.0))
    picture = drawn(lens, [(2.5, 0.0, 0.0)])
    assert math.degrees(picture.depression[0]) == pytest.approx(45.0)
    assert picture.width_density[0] == pytest.approx(960.0 / (2.5 * math.sqrt(2.0)))
    assert picture.height_density[0] == pytest.approx(picture.width_density[0] * math.sqrt(0.5))


def test_a_very_wide_lens_draws_angles_evenly() -> None:
    lens = LENS._replace(angle=math.radians(180.0))
    places = [(math.cos(turn), -math.sin(turn), 2.5) for turn in np.radians([0.0, 45.0, 89.0])]
    picture = drawn(lens, places)
    assert picture.across.tolist() == pytest.approx([0.5, 0.75, 0.5 + 89.0 / 180.0])
    assert picture.is_in.all()
