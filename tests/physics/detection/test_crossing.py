import math

import numpy as np
import pytest

from wardwright.geometry.raster import Grid
from wardwright.physics.detection.crossing import angles_to, first_walked, mask_at, steps_of, walked_along


def test_straight_toward_is_0_and_across_is_90() -> None:
    toward = np.array([[3.0, 0.0], [2.0, 0.0], [1.0, 0.0]])
    assert angles_to(toward, (0.0, 0.0), steps=steps_of(toward)) == pytest.approx([0.0, 0.0, 0.0], abs=1e-6)
    assert angles_to(toward, (2.0, 5.0), steps=steps_of(toward))[1] == pytest.approx(90.0)


def test_standing_still_has_no_angle() -> None:
    for places in (np.array([[1.0, 1.0], [1.0, 1.0]]), np.array([[1.0, 1.0]])):
        assert np.isnan(angles_to(places, (0.0, 0.0), steps=steps_of(places))).all()


def test_off_the_grid_is_false() -> None:
    grid = Grid(0.0, 0.0, 1.0, 2, 1)
    mask = np.array([[True, False]])
    places = np.array([[0.5, 0.5], [1.5, 0.5], [-0.5, 0.5], [0.5, 1.5]])
    assert mask_at(grid, mask, places).tolist() == [True, False, False, False]
    both = mask_at(grid, np.stack([mask, ~mask]), places)
    assert both.tolist() == [[True, False, False, False], [False, True, False, False]]


def test_walked_distance_to_the_first() -> None:
    walked = walked_along(np.array([[0.0, 0.0], [3.0, 4.0], [3.0, 5.0]]))
    assert walked.tolist() == [0.0, 5.0, 6.0]
    assert first_walked(walked, np.array([False, False, True])) == 6.0
    assert math.isinf(first_walked(walked, np.zeros(3, dtype=bool)))
    assert walked_along(np.empty((0, 2))).tolist() == []


def test_a_walk_goes_at_each_point_by_what_lies_about_it() -> None:
    places = np.random.default_rng(3).uniform(0.0, 5.0, (17, 2))
    for count in (2, 3, 17):
        assert np.array_equal(steps_of(places[:count]), np.gradient(places[:count], axis=0))
    assert not steps_of(places[:1]).any()
    assert steps_of(places[:0]).shape == (0, 2)
