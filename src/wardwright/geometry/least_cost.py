"""The way of least cost over cells, where every metre has its own cost, by Dijkstra's algorithm.

Steps go to the 8 neighbours and by a knight's move to 8 more: on even floor a way is at most 2.75 % longer than the
straight one (1 / cos of half the widest angle between two steps; derived here).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from scipy.sparse import csr_array
from scipy.sparse.csgraph import dijkstra

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray

STEPS = ((0, 1), (1, 0), (1, 1), (1, -1), (1, 2), (2, 1), (1, -2), (2, -1))
"""Rows and columns of one step; each is gone both ways. [-]"""


class Link(NamedTuple):
    """A way between two cells that is no step, such as a flight."""

    first: int
    """Row by row. [-]"""
    second: int
    cost: float
    """Of the whole way. [-]"""


class Ways(NamedTuple):
    """The ways of least cost from some cells to all others."""

    cost: FloatArray
    """Shape (N,), cells row by row; infinite where no way leads. [-]"""
    before: IntArray
    """The cell that each is come to from; negative at the start and where no way leads. [-]"""

    def to(self, cells: IntArray) -> IntArray | None:
        """The cells of the way to the nearest of some, in order; None where none leads there."""
        if not len(cells) or not np.isfinite(self.cost[cells]).any():
            return None
        way = [int(cells[self.cost[cells].argmin()])]
        while self.before[way[-1]] >= 0:
            way.append(int(self.before[way[-1]]))
        return np.array(way[::-1], dtype=np.int64)


def web_of_cells(
    is_open: BoolArray, each_metre: FloatArray, *, cell: float, links: Sequence[Link] = ()
) -> csr_array:
    """Join open cells by steps, and by links.

    Parameters
    ----------
    is_open : ndarray of bool, shape (ny, nx)
        Where one may be. A step by a knight's move needs both cells between to be open.
    each_metre : ndarray, shape (ny, nx)
        What a metre on each cell costs, more than 0; a step costs the mean of the cells it touches. [-]
    cell : float
        Side of a cell. [m]
    links : sequence of Link, default ()
        Other ways; they are gone both ways.

    Returns
    -------
    csr_array, shape (N, N)
        Costs, each once: for `ways_over`.
    """
    ny, nx = is_open.shape
    cost = np.where(is_open, each_metre, np.inf)
    rows, columns, weights = [], [], []
    for down, right in STEPS:
        side = abs(right)
        # Seen from the left end of the step where it goes left, so that all slices are plain.
        here = (slice(0, ny - down), slice(0, nx - side) if right >= 0 else slice(side, nx))
        there = (slice(down, ny), slice(side, nx) if right >= 0 else slice(0, nx - side))
        touched = [cost[here], cost[there]]
        if down + side == 3:
            sign = 1 if right > 0 else -1
            for mid_down, mid_right in ((0, 1), (1, 1)) if side == 2 else ((1, 0), (1, 1)):
                start = 0 if right >= 0 else side
                first = start + sign * mid_right
                touched.append(cost[mid_down : mid_down + ny - down, first : first + nx - side])
        mean: FloatArray = np.mean(touched, axis=0)
        found = np.isfinite(mean)
        number = np.arange(ny * nx).reshape(ny, nx)
        rows.append(number[here][found])
        columns.append(number[there][found])
        weights.append(mean[found] * (cell * float(np.hypot(down, right))))
    rows.append(np.array([one.first for one in links], dtype=np.int64))
    columns.append(np.array([one.second for one in links], dtype=np.int64))
    weights.append(np.array([one.cost for one in links], dtype=np.float64))
    joined = (np.concatenate(weights), (np.concatenate(rows), np.concatenate(columns)))
    return csr_array(joined, shape=(ny * nx, ny * nx))


def ways_over(web: csr_array, starts: IntArray) -> Ways:
    """Find the ways of least cost from some cells to all others.

    Parameters
    ----------
    web : csr_array, shape (N, N)
        As `web_of_cells` gives it.
    starts : ndarray of int, shape (S,)
        Cells that nothing has been paid for at; one at least. [-]

    Returns
    -------
    Ways
        To every cell.
    """
    cost, before, _ = dijkstra(web, directed=False, indices=starts, min_only=True, return_predecessors=True)
    return Ways(np.asarray(cost, dtype=np.float64), np.asarray(before, dtype=np.int64))
