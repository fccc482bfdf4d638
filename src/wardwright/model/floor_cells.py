"""The floor of a storey as cells: what is free, whose it is, how high its ceiling, where one comes in.

Memoised by the storey's parts, so that moving a device paints nothing again.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray, FloatArray, Grid, IntArray, grid_over, painted
from wardwright.model.flights import footprint
from wardwright.model.floor import walkable
from wardwright.model.sightlines import Levels, stood_on
from wardwright.model.surfaces import Level, ceilings, way_in_areas


@dataclass(frozen=True, eq=False)
class FloorCells:
    """One storey's floor as cells."""

    grid: Grid
    free: BoolArray
    """Where a person's middle may be, shape (ny, nx)."""
    spaces: IntArray
    """Which of the storey's spaces, in the order of ids, holds each cell; -1: none; shape (ny, nx)."""
    ceiling: FloatArray
    """Above the house's zero, shape (ny, nx). [m]"""
    entries: FloatArray
    """How far each cell lies from a way in or a stair, where one can turn up without crossing floor; inf beyond a
    cell or two; shape (ny, nx). [m]"""

    def points(self) -> FloatArray:
        """Middles of the free cells in the order of the mask, not to be written to, shape (N, 2). [m]"""
        return self._points

    @cached_property
    def _points(self) -> FloatArray:
        points: FloatArray = self.grid.centres()[self.free]
        points.flags.writeable = False
        return points

    def mask_of(self, free_values: BoolArray) -> BoolArray:
        """A mask of all cells from values at the free ones."""
        mask = np.zeros(self.grid.shape, dtype=np.bool_)
        mask[self.free] = free_values
        return mask


@lru_cache(maxsize=64)
def floor_cells(level: Level, cell: float) -> FloorCells:
    """Paint one storey's floor.

    Parameters
    ----------
    level : Level
        The storey.
    cell : float
        Side of a cell. [m]

    Returns
    -------
    FloorCells
        Its cells; a single one that is not free if the storey has no spaces.
    """
    spaces = level.parts.spaces
    if not spaces:
        none = np.zeros((1, 1), dtype=np.bool_)
        return FloorCells(
            Grid(0.0, 0.0, cell, 1, 1),
            none,
            none - 1,
            np.full((1, 1), level.ceiling_m),
            np.full((1, 1), np.inf),
        )
    area = walkable(level.parts)
    bounds = shapely.union_all([shapely.Polygon(space.outline_m) for space in spaces]).bounds
    grid = grid_over(bounds, cell=cell, margin=cell)
    owner = np.full(grid.shape, -1, dtype=np.int64)
    # The smallest space that holds a cell counts, as in `placement.space_at`.
    polygons = [(shapely.Polygon(space.outline_m), index) for index, space in enumerate(spaces)]
    for polygon, index in sorted(polygons, key=lambda one: -one[0].area):
        owner[_painted_near(grid, polygon)] = index
    ways = shapely.union_all([*way_in_areas(level), *(footprint(stair) for stair in level.parts.stairs)])
    entries = np.full(grid.shape, np.inf)
    near = painted(grid, ways.buffer(1.5 * cell))
    entries[near] = shapely.distance(ways, shapely.points(grid.centres()[near]))
    return FloorCells(
        grid,
        painted(grid, area),
        owner,
        ceilings(level, (grid.x0, grid.y0, grid.cell, grid.nx, grid.ny)),
        entries,
    )


@lru_cache(maxsize=64)
def cells_on_flights(level: Level, others: Levels, cell: float) -> tuple[IntArray, FloatArray]:
    """The free cells of a storey that lie on a flight, and how high one stands there.

    Parameters
    ----------
    level : Level
        The storey.
    others : tuple of Level
        Storeys that a stair may join to it.
    cell : float
        Side of a cell. [m]

    Returns
    -------
    rows : ndarray of int, shape (K,)
        Indexes into the free cells; only those above the storey's floor. [-]
    heights : ndarray, shape (K,)
        Above the house's zero. [m]
    """
    heights = stood_on(level, others, floor_cells(level, cell).points())
    rows: IntArray = np.nonzero(heights > level.floor_m)[0]
    return rows, heights[rows]


def _painted_near(grid: Grid, polygon: shapely.Polygon) -> BoolArray:
    """As `painted`, asking only about the cells of its own rectangle."""
    mask = np.zeros(grid.shape, dtype=np.bool_)
    x_low, y_low, x_high, y_high = polygon.bounds
    rows, columns = grid.cells_of(np.array([[x_low, y_low], [x_high, y_high]]))
    window = (slice(int(rows[0]), int(rows[1]) + 1), slice(int(columns[0]), int(columns[1]) + 1))
    part = Grid(
        grid.x0 + window[1].start * grid.cell,
        grid.y0 + window[0].start * grid.cell,
        grid.cell,
        window[1].stop - window[1].start,
        window[0].stop - window[0].start,
    )
    mask[window] = painted(part, polygon)
    return mask
