from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from wardwright.geometry.raster import Grid, grid_over, outlines, painted

edges = st.floats(-20.0, 20.0, allow_nan=False)


@given(edges, edges, st.floats(0.01, 10.0), st.floats(0.01, 10.0), st.sampled_from([0.05, 0.1, 0.25, 1.0]))
def test_a_grid_covers_its_bounds_with_edges_on_whole_cells(
    x: float, y: float, width: float, height: float, cell: float
) -> None:
    grid = grid_over((x, y, x + width, y + height), cell=cell)
    slack = 1e-6 * cell
    assert x - cell - slack <= grid.x0 <= x + slack
    assert y - cell - slack <= grid.y0 <= y + slack
    assert x + width - slack <= grid.x0 + grid.nx * cell <= x + width + cell + slack
    assert y + height - slack <= grid.y0 + grid.ny * cell <= y + height + cell + slack
    assert grid.x0 / cell == pytest.approx(round(grid.x0 / cell), abs=1e-6)


@given(st.integers(1, 30), st.integers(1, 30))
def test_each_middle_is_found_in_its_own_cell(ny: int, nx: int) -> None:
    grid = Grid(-1.3, 2.6, 0.1, nx, ny)
    row, column = grid.cells_of(grid.centres())
    assert (row == np.arange(ny)[:, None]).all()
    assert (column == np.arange(nx)[None, :]).all()


def test_points_outside_are_taken_to_the_nearest_cell() -> None:
    row, column = Grid(0.0, 0.0, 1.0, 3, 2).cells_of(np.array([[-5.0, -5.0], [9.0, 9.0]]))
    assert (row.tolist(), column.tolist()) == ([0, 1], [0, 2])


def test_an_area_is_painted_by_the_middles_of_cells() -> None:
    grid = Grid(0.0, 0.0, 1.0, 4, 3)
    assert painted(grid, shapely.box(0.0, 0.0, 2.4, 1.6)).tolist() == [
        [True, True, False, False],
        [True, True, False, False],
        [False, False, False, False],
    ]
    assert not painted(grid, shapely.Polygon()).any()


@given(edges, edges, st.floats(0.01, 10.0), st.floats(0.01, 10.0))
def test_cells_far_from_an_area_need_not_be_asked(x: float, y: float, width: float, height: float) -> None:
    grid, area = Grid(-3.0, -2.0, 0.5, 20, 16), shapely.box(x, y, x + width, y + height)
    centres = grid.centres()
    every = shapely.contains_xy(area, centres[..., 0], centres[..., 1])
    assert painted(grid, area).tolist() == every.tolist()


@given(arrays(np.bool_, st.tuples(st.integers(1, 12), st.integers(1, 12))))
def test_outlines_enclose_exactly_the_cells_they_were_made_of(mask: np.ndarray) -> None:
    ny, nx = mask.shape
    grid = Grid(-2.0, 3.0, 0.5, nx, ny)
    rings = outlines(grid, mask)
    # Outer rings run anticlockwise and holes clockwise: their signed areas add up to that of the cells.
    signed = sum(_signed_area(ring) for ring in rings)
    assert signed == pytest.approx(mask.sum() * grid.cell**2, abs=1e-9)
    assert all(ring[0] != ring[-1] for ring in rings)


def _signed_area(ring: tuple[tuple[float, float], ...]) -> float:
    x, y = np.asarray(ring).T
    return float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum() / 2)
