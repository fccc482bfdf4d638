"""Least walking times to the cells of every storey, the rims of the rooms included."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from scipy.ndimage import distance_transform_edt

from wardwright.geometry.raster import BoolArray, FloatArray, Grid, IntArray, grid_over, painted
from wardwright.physics.walking.network import Costs, Reach, times_on
from wardwright.physics.walking.premises import Network


class TimeMap(NamedTuple):
    """Least walking times to the cells of a storey."""

    grid: Grid
    times: FloatArray
    """Shape (ny, nx), nan where not reachable. [s]"""


def maps_from(network: Network, reach: Reach, *, costs: Costs, cell: float) -> dict[str, TimeMap]:
    """Least times from one place to the cells of every storey.

    Parameters
    ----------
    network : Network
        The premises.
    reach : Reach
        Times from the place to the nodes of the network.
    costs : Costs
        The same that the times were worked out with.
    cell : float
        Side of a cell. [m]

    Returns
    -------
    dict of TimeMap
        By storey. A cell of a room where a body cannot stand, being too near to a wall, has the time of the nearest
        free cell, less the walk of half a cell's diagonal. The arrays cannot be written to.
    """
    maps = {}
    for floor, (storey, room) in enumerate(zip(network.storeys, network.rooms, strict=True)):
        if room.is_empty:
            continue
        grid = grid_over(room.bounds, cell=cell)
        times = times_on(network.web, reach, floor, grid=grid, costs=costs)
        # Half a cell's diagonal earlier, but for the cells at the place itself, from where no walk is that long.
        offset = grid.centres() - reach.point
        is_far = (reach.floor != floor) | (offset[..., 0] ** 2 + offset[..., 1] ** 2 > (2 * cell) ** 2)
        early = np.where(is_far, costs.per_metre * cell * math.sqrt(0.5), 0.0)
        # The corner of a room is the farthest place beside free floor.
        limit = network.body_radius * math.sqrt(2.0) + cell
        spread = _spread(times, _room_cells(network, floor, grid), limit=limit / cell, early=early)
        spread.setflags(write=False)
        maps[storey] = TimeMap(grid, spread)
    return maps


@lru_cache(maxsize=64)
def _room_cells(network: Network, floor: int, grid: Grid) -> BoolArray:
    return painted(grid, network.rooms[floor])


def _spread(times: FloatArray, room: BoolArray, *, limit: float, early: FloatArray) -> FloatArray:
    """Give cells of the rooms within so many cells of a reached one its time, a little earlier; nan elsewhere."""
    reached = np.isfinite(times)
    if not reached.any():
        return np.full(times.shape, np.nan)
    away, nearest = _nearest(reached.shape, reached.tobytes())
    lent = np.maximum(times[nearest] - early, 0.0)
    return np.where(reached, times, np.where(room & (away <= limit), lent, np.nan))


@lru_cache(maxsize=16)
def _nearest(shape: tuple[int, ...], reached: bytes) -> tuple[FloatArray, tuple[IntArray, ...]]:
    """How far each cell lies from a reached one, and which; the same cells are reached from nearly everywhere."""
    away, nearest = distance_transform_edt(
        ~np.frombuffer(reached, dtype=np.bool_).reshape(shape), return_indices=True
    )
    return away, tuple(nearest)
