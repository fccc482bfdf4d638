"""How deep inside a shape one has walked: the core that nobody reaches before being surely noticed.

Every error is toward a smaller core: a walk starts at the edge of the shape or a little inside it, steps are counted
as if they led straight, and cells that nothing leads to are left out.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from scipy import ndimage, sparse
from scipy.sparse import csgraph

from wardwright.geometry.raster import BoolArray, FloatArray, Grid, IntArray

CORE_DEPTH_M = 1.5
"""How far one walks inside the low-side shape before being surely noticed. [m] (assumption after the European
walk-test method, where a signal has to come before 1.5 m inside the claimed boundary)"""
SPECK_M2 = 0.15
"""An unwatched patch no larger than this, and at no way in, is no place to start from: it is reached over watched
floor, and whoever stands on it fills watched floor too. [m2] (derived: the area of a person of 0.22 m radius)"""
_KNIGHT = 1.0 / math.cos(math.atan(0.5) / 2.0)
# Steps to sixteen neighbours are at most this much longer than the straight way.
_SAMPLES = np.array([0.25, 0.5, 0.75])
# Where between the middles of two cells the edge of the shape is looked for.
_SLANT = math.cos(math.radians(22.5))
# The straight way in may run between the eight directions in which the edge is measured ...
_DETOUR = 0.1
# ... and past the middle of the first cell: this share of a cell is given away for it.
_BESIDE = np.array([(right, up) for up in (-1, 0, 1) for right in (-1, 0, 1) if right or up])
_SQUARE = np.ones((3, 3), dtype=np.bool_)


class Ground(NamedTuple):
    """The cells of a shape, and where one comes into it."""

    inside: BoolArray
    """Cells that are walked as if within the shape, specks filled, shape (ny, nx)."""
    outside: BoolArray
    """Free cells that one can come from, shape (ny, nx)."""


def core_cells(
    low: BoolArray,
    free: BoolArray,
    *,
    entries: FloatArray,
    grid: Grid,
    is_low: Callable[[FloatArray], BoolArray] | None = None,
) -> BoolArray:
    """Cells of a shape that cannot be reached without walking 1.5 m inside it.

    Parameters
    ----------
    low : ndarray of bool, shape (ny, nx)
        The shape.
    free : ndarray of bool, shape (ny, nx)
        Floor that can be walked.
    entries : ndarray, shape (ny, nx)
        How far each cell lies from where one can turn up without crossing floor, inf where none is near. [m]
    grid : Grid
        The cells.
    is_low : callable, optional
        Tells for places, shape (N, 2), whether they lie in the shape, to find its edge between cells; left out: the
        edge is taken to run through the middles of its outermost cells.

    Returns
    -------
    ndarray of bool, shape (ny, nx)
        The core, within the shape.

    Examples
    --------
    A room watched but for its first metre: the core starts 1.5 m farther in.

    >>> free = np.ones((9, 40), dtype=bool)
    >>> low = free & (np.arange(40) >= 10)
    >>> grid = Grid(0.0, 0.0, 0.1, 40, 9)
    >>> int(core_cells(low, free, entries=np.full(free.shape, np.inf), grid=grid)[4].argmax())
    26
    """
    ground = _ground(low, free, turned_up=np.isfinite(entries), cell=grid.cell)
    rows, columns, ways = _edges(ground)
    lengths = np.hypot(ways[:, 0], ways[:, 1]) * grid.cell
    steps = _steps(ground.inside.shape, ground.inside.tobytes())

    within = (
        np.zeros(len(rows)) if is_low is None else _shares(rows, columns, ways=ways, grid=grid, is_low=is_low)
    )
    first = np.where(ground.inside, entries, np.inf)
    np.minimum.at(first, (rows, columns), within * lengths)
    first = np.maximum(first * _SLANT - _DETOUR * grid.cell, 0.0)
    core = np.zeros(low.shape, dtype=np.bool_)
    core[ground.inside] = _is_far(steps, first[ground.inside] / grid.cell, least=CORE_DEPTH_M / grid.cell)
    return core & low


def _ground(low: BoolArray, free: BoolArray, *, turned_up: BoolArray, cell: float) -> Ground:
    inside, outside = low & free, free & ~low
    patches, number = ndimage.label(outside, _SQUARE)
    sizes = np.bincount(patches.ravel(), minlength=number + 1) * cell * cell
    entered = np.bincount(patches[turned_up], minlength=number + 1) > 0
    speck = outside & ((sizes <= SPECK_M2) & ~entered)[patches]
    return Ground(inside | speck, outside & ~speck)


def _edges(ground: Ground) -> tuple[IntArray, IntArray, FloatArray]:
    """Row and column of cells beside free floor outside, and which way that lies, in cells to the right and up."""
    outside = _padded(ground.outside, by=1)
    row, column = np.nonzero(ground.inside)
    across = outside.shape[1]
    here = (row + 1) * across + column + 1
    cell, way = np.nonzero(outside.ravel()[here[:, None] + (_BESIDE[:, 1] * across + _BESIDE[:, 0])])
    return row[cell], column[cell], _BESIDE[way].astype(np.float64)


def _padded(mask: BoolArray, *, by: int) -> BoolArray:
    """A mask with a border of False cells: numpy's own takes longer than all that follows."""
    wide: BoolArray = np.zeros((mask.shape[0] + 2 * by, mask.shape[1] + 2 * by), dtype=np.bool_)
    wide[by:-by, by:-by] = mask
    return wide


def _shares(
    row: IntArray,
    column: IntArray,
    *,
    ways: FloatArray,
    grid: Grid,
    is_low: Callable[[FloatArray], BoolArray],
) -> FloatArray:
    """How far inside the edge the middles of cells lie at least, as a share of the step outside, shape (E,)."""
    middles = np.stack([grid.x0 + (column + 0.5) * grid.cell, grid.y0 + (row + 0.5) * grid.cell], axis=1)
    samples = middles[:, None, :] + _SAMPLES[:, None] * (ways * grid.cell)[:, None, :]
    within = is_low(samples.reshape(-1, 2)).reshape(len(row), len(_SAMPLES))
    share: FloatArray = np.where(
        within.all(axis=1), _SAMPLES[-1], np.concatenate([[0.0], _SAMPLES])[within.argmin(axis=1)]
    )
    return share


class _Steps(NamedTuple):
    """Steps from each of the numbered cells, one after another, in cells."""

    begins: IntArray
    """Where the steps of each cell begin, shape (number + 1,). [-]"""
    there: IntArray
    lengths: FloatArray


_AWAY = np.array(
    [(down, right) for down in range(-2, 3) for right in range(-2, 3) if abs(down * right) in (1, 2)]
    + [(0, 1), (1, 0), (0, -1), (-1, 0)]
)
# Sixteen neighbours, and between which two a long step passes (for the others twice the neighbour itself):
_BETWEEN = np.stack([_AWAY // 2, -(-_AWAY // 2)]) * (np.abs(_AWAY).sum(axis=1) == 3)[:, None]
_BETWEEN += _AWAY * (np.abs(_AWAY).sum(axis=1) != 3)[:, None]
_LENGTHS = np.hypot(_AWAY[:, 0], _AWAY[:, 1])


@lru_cache(maxsize=32)
def _steps(shape: tuple[int, int], inside: bytes) -> _Steps:
    """Steps to sixteen neighbours; a long one needs both cells beside it. One shape is come into in several ways."""
    ny, nx = shape
    cells_inside = np.frombuffer(inside, dtype=np.bool_).reshape(shape)
    number = np.full((ny + 4, nx + 4), -1, dtype=np.int32)
    number[2:-2, 2:-2][cells_inside] = np.arange(np.count_nonzero(cells_inside))
    cells = number.ravel()
    here = np.nonzero(cells >= 0)[0][:, None]
    across = nx + 4
    there = cells[here + (_AWAY[:, 0] * across + _AWAY[:, 1])]
    beside = [cells[here + (pair[:, 0] * across + pair[:, 1])] for pair in _BETWEEN]
    passes = (there >= 0) & (beside[0] >= 0) & (beside[1] >= 0)
    begins = np.concatenate([[0], np.cumsum(np.count_nonzero(passes, axis=1))])
    return _Steps(begins.astype(np.int32), there[passes], np.broadcast_to(_LENGTHS, passes.shape)[passes])


def _is_far(steps: _Steps, first: FloatArray, *, least: float) -> BoolArray:
    """Which cells something leads to, but nothing shorter than the least way.

    One node more stands for where one starts: `first` is how far each cell lies from there, inf: not beside it.
    """
    number = len(first)
    start = np.nonzero(np.isfinite(first))[0]
    if not len(start):
        return np.zeros(number, dtype=np.bool_)
    # A step of no length would be no step.
    lengths = np.concatenate([steps.lengths, np.maximum(first[start], 1e-9)])
    there = np.concatenate([steps.there, start.astype(np.int32)])
    begins = np.concatenate([steps.begins, np.array([len(there)], dtype=np.int32)])
    graph = sparse.csr_matrix((lengths, there, begins), shape=(number + 1, number + 1))
    walked = csgraph.dijkstra(graph, indices=[number])[0, :-1]
    far: BoolArray = (walked >= least * _KNIGHT - 1e-9) & np.isfinite(walked)
    return far
