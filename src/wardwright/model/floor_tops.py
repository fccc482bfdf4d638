"""What light from above falls on: the floor, and the tops of what stands on it."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray
from wardwright.model.floor_cells import floor_cells
from wardwright.model.placement import fixture_outline
from wardwright.model.surfaces import Level


@lru_cache(maxsize=32)
def tops_of(level: Level, cell: float) -> FloatArray:
    """Places on the floor of a storey's spaces and on what stands there, one a cell.

    Parameters
    ----------
    level : Level
        The storey.
    cell : float
        Side of a cell of the floor. [m]

    Returns
    -------
    ndarray, shape (N, 3)
        x, y, and height above the house's zero; not to be written to. [m]
    """
    cells = floor_cells(level, cell)
    plan = cells.grid.centres()[cells.spaces >= 0]
    height = np.full(len(plan), level.floor_m)
    for fixture in level.parts.fixtures:
        on_it = shapely.contains_xy(shapely.Polygon(fixture_outline(fixture)), plan[:, 0], plan[:, 1])
        height[on_it] = np.maximum(height[on_it], level.floor_m + fixture.base_m + fixture.height_m)
    places = np.column_stack([plan, height])
    places.flags.writeable = False
    return places
