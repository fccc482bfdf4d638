from __future__ import annotations

import math

import numpy as np
import shapely

from wardwright.geometry.corners import corners_of
from wardwright.geometry.raster import FloatArray, Grid
from wardwright.geometry.views import views_round
from wardwright.geometry.wedges import paint_wedges, wedges_of

ROOM = shapely.box(0, 0, 4, 2)


def painted_from(point: tuple[float, float], lines: FloatArray, *, limits: FloatArray) -> FloatArray:
    views = views_round(np.array([point]), corners_of(ROOM), crossing_lines=lines)
    grid = Grid(-0.2, -0.2, 0.1, 44, 24)
    values = np.full(grid.shape, np.inf)
    wedges = wedges_of(grid, views, sectors=np.arange(4), limits=limits)
    paint_wedges(values, wedges, base=np.full(4, 5.0), per_metre=2.0, per_crossing=10.0)
    return values


ALL_ROUND = np.array([[0.0, math.pi / 2]] * 4)


def test_every_cell_of_a_plain_room_gets_its_distance_and_no_cell_outside_gets_any() -> None:
    values = painted_from((1.0, 0.5), np.empty((0, 2, 2)), limits=ALL_ROUND)
    centres = Grid(-0.2, -0.2, 0.1, 44, 24).centres()
    inside = shapely.contains_xy(ROOM, centres[..., 0], centres[..., 1])
    assert np.isinf(values[~inside]).all()
    expected = 5.0 + 2.0 * np.hypot(centres[..., 0] - 1.0, centres[..., 1] - 0.5)
    assert np.abs(values - expected)[inside].max() < 1e-12


def test_cells_behind_a_line_cost_its_crossing() -> None:
    line = np.array([[(2.0, 0.0), (2.0, 2.0)]])
    values = painted_from((1.0, 0.5), line, limits=ALL_ROUND)
    plain = painted_from((1.0, 0.5), np.empty((0, 2, 2)), limits=ALL_ROUND)
    x = Grid(-0.2, -0.2, 0.1, 44, 24).centres()[..., 0]
    inside = np.isfinite(plain)
    assert np.allclose(values[inside] - plain[inside], np.where(x > 2.0, 10.0, 0.0)[inside])


def test_limits_cut_the_sectors() -> None:
    eighth = np.array([[0.0, math.pi / 4], [0.0, 0.0], [0.0, 0.0], [0.0, 0.0]])
    values = painted_from((1.0, 0.5), np.empty((0, 2, 2)), limits=eighth)
    rows, columns = np.nonzero(np.isfinite(values))
    centres = Grid(-0.2, -0.2, 0.1, 44, 24).centres()[rows, columns]
    assert len(rows) > 100
    assert (centres[:, 1] >= 0.5 - 1e-6).all()
    assert (centres[:, 1] - 0.5 <= centres[:, 0] - 1.0 + 1e-6).all()


def test_values_only_go_down() -> None:
    views = views_round(np.array([(1.0, 0.5)]), corners_of(ROOM), crossing_lines=np.empty((0, 2, 2)))
    grid = Grid(0.0, 0.0, 0.5, 8, 4)
    values = np.full(grid.shape, 0.1)
    wedges = wedges_of(grid, views, sectors=np.arange(4), limits=ALL_ROUND)
    paint_wedges(values, wedges, base=np.zeros(4), per_metre=1.0, per_crossing=0.0)
    assert values.max() == 0.1
