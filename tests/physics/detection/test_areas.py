import math

import numpy as np
import pytest

from wardwright.geometry.raster import Grid
from wardwright.physics.detection.areas import areas_by_owner, areas_within, owner_before, shares_missing

PLACES = np.array([True, True, False, True])
DISTANCE = np.array([1.0, 2.0, 2.0, 3.0])


def test_areas_grow_with_reach() -> None:
    assert areas_within(PLACES, DISTANCE, reaches=(0.5, 2.0, 3.0), cell=0.1) == pytest.approx(
        (0.0, 0.02, 0.03)
    )


def test_missing_share_counts_the_floor_in_question_only() -> None:
    whole = np.array([True, True, True, False])
    assert shares_missing(PLACES, DISTANCE, whole=whole, reaches=(1.0, 9.0)) == pytest.approx((2 / 3, 1 / 3))


def test_of_no_floor_there_is_no_share() -> None:
    assert math.isnan(shares_missing(PLACES, DISTANCE, whole=~PLACES & PLACES, reaches=(1.0,))[0])


def test_owners_are_listed_largest_first_and_nobody_s_floor_not_at_all() -> None:
    owner = np.array([1, 0, 0, -1])
    assert areas_by_owner(np.ones(4, dtype=bool), owner, names=("a", "b", "c"), cell=1.0) == (
        ("a", 2.0),
        ("b", 1.0),
    )


def test_a_detector_on_a_wall_stands_in_the_space_before_it() -> None:
    owners = np.array([[-1, -1, 4, 4]])
    grid = Grid(0.0, 0.0, 0.1, 4, 1)
    assert owner_before(grid, owners, (0.05, 0.05), heading=0.0) == 4
    assert owner_before(grid, owners, (0.05, 0.05), heading=math.pi / 2) == -1
