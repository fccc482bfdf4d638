import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from wardwright.geometry.raster import BoolArray, FloatArray, Grid
from wardwright.physics.detection.depth import core_cells


def grid_of(mask: BoolArray) -> Grid:
    return Grid(0.0, 0.0, 0.1, mask.shape[1], mask.shape[0])


def nowhere(mask: BoolArray) -> FloatArray:
    return np.full(mask.shape, np.inf)


def test_a_room_watched_whole_has_its_core_1_5_m_from_the_door() -> None:
    free = np.zeros((50, 62), dtype=bool)
    free[5:45, 12:62] = True  # the room, 5 m by 4 m
    free[20:30, 11] = True  # the doorway
    free[5:45, 1:11] = True  # the room beyond, not watched
    low = free.copy()
    low[:, :12] = False
    core = core_cells(low, free, entries=nowhere(free), grid=grid_of(free))
    y, x = np.nonzero(core)
    # The shortest way from the doorway's edge, x = 12 cells: never less than 1.5 m, and at most a little more.
    aside = np.maximum(np.maximum(20 - y, y - 29), 0)
    assert (np.hypot(x - 12, aside) * 0.1 >= 1.5 - 1e-9).all()
    missing = low & ~core
    y, x = np.nonzero(missing)
    assert (np.hypot(x - 12, np.maximum(np.maximum(20 - y, y - 29), 0)) * 0.1).max() < 1.5 * 1.0824 * 1.0276


def test_a_wall_between_makes_the_way_longer_not_shorter() -> None:
    free = np.ones((40, 40), dtype=bool)
    low = free & (np.arange(40) >= 5)
    walled = free.copy()
    walled[:30, 15] = False
    plain = core_cells(low, free, entries=nowhere(free), grid=grid_of(free))
    behind = core_cells(low & walled, walled, entries=nowhere(free), grid=grid_of(free))
    assert not (plain & walled & ~behind).any()
    assert behind[5, 18]
    assert not plain[5, 18]


def test_a_window_in_the_middle_of_the_shape_takes_floor_off_the_core() -> None:
    free = np.ones((40, 80), dtype=bool)
    low = free & (np.arange(80) >= 5)
    entry = nowhere(free)
    entry[39, 60] = 0.0
    without = core_cells(low, free, entries=nowhere(free), grid=grid_of(free))
    with_window = core_cells(low, free, entries=entry, grid=grid_of(free))
    assert without[39, 60]
    assert not with_window[39, 60]
    assert not (with_window & ~without).any()


def test_a_speck_no_larger_than_a_person_is_no_way_in() -> None:
    free = np.ones((60, 60), dtype=bool)
    low = free & (np.arange(60) >= 5)
    spotted = low.copy()
    spotted[30, 40:43] = False
    hole = low.copy()
    hole[25:35, 35:45] = False
    whole = core_cells(low, free, entries=nowhere(free), grid=grid_of(free))
    assert np.array_equal(
        core_cells(spotted, free, entries=nowhere(free), grid=grid_of(free)), whole & spotted
    )
    assert core_cells(hole, free, entries=nowhere(free), grid=grid_of(free)).sum() < whole.sum() / 2


def test_floor_that_nothing_leads_to_is_no_core() -> None:
    free = np.ones((30, 30), dtype=bool)
    assert not core_cells(free, free, entries=nowhere(free), grid=grid_of(free)).any()


def test_the_edge_between_cells_is_found_to_a_quarter_of_a_cell() -> None:
    free = np.ones((9, 60), dtype=bool)
    for edge in (1.0, 1.02, 1.04, 1.06, 1.08):
        low = free & ((np.arange(60) + 0.5) * 0.1 >= edge)
        core = core_cells(
            low, free, entries=nowhere(free), grid=grid_of(free), is_low=lambda p, x=edge: p[:, 0] >= x
        )
        first = (core[4].argmax() + 0.5) * 0.1
        # Never less than 1.5 m from the edge; at most the allowance for slant steps and one cell more.
        assert 1.5 <= first - edge <= 1.5 * 1.0276 + 0.03 + 0.1


@given(st.integers(0, 9999))
def test_the_farther_out_the_edge_the_more_core(seed: int) -> None:
    # An edge that lies at the middles of the outermost cells, told or left out, is the same edge.
    rng = np.random.default_rng(seed)
    free = rng.random((45, 45)) < 0.97
    low = free.copy()
    low[:, : rng.integers(1, 40)] = False
    low[: rng.integers(0, 12)] = False
    told, left_out = (
        core_cells(low, free, entries=nowhere(free), grid=grid_of(free), is_low=is_low)
        for is_low in (lambda places: np.zeros(len(places), dtype=bool), None)
    )
    assert np.array_equal(told, left_out)
    # The farther out the edge, the larger the depth: never less core.
    latest = core_cells(
        low, free, entries=nowhere(free), grid=grid_of(free), is_low=lambda p: np.ones(len(p), dtype=bool)
    )
    assert not (left_out & ~latest).any()
