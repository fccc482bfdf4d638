"""Distance-like values painted on a grid through the wedges of views."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.geometry.corners import cross
from wardwright.geometry.raster import FloatArray, Grid, IntArray
from wardwright.geometry.views import Views

EDGE = 1e-7
"""A cell whose middle is this near a wedge is in it. [m] (derived here: rounding of coordinates)"""


class Wedges(NamedTuple):
    """The cells that some sectors see, wedge by wedge: K wedges, N cells in all; not to be written to."""

    sectors: IntArray
    """Which of the sectors asked for each wedge is of, shape (K,). [-]"""
    crossings: IntArray
    """Crossing lines before each wedge, shape (K,). [-]"""
    wedges: IntArray
    """The wedge that holds each cell, shape (N,). [-]"""
    cells: IntArray
    """Number of each cell, row by row, shape (N,). [-]"""
    metres: FloatArray
    """How far each lies from its sector's origin, shape (N,). [m]"""


def wedges_of(grid: Grid, views: Views, *, sectors: IntArray, limits: FloatArray) -> Wedges:
    """Find the cells that sectors see.

    Parameters
    ----------
    grid : Grid
        The cells.
    views : Views
        The sectors with their wedges.
    sectors : ndarray of int, shape (A,)
        Which of them to paint, each once. [-]
    limits : ndarray, shape (A, 2)
        The part of each to paint, from its first side. [rad]

    Returns
    -------
    Wedges
        Their cells; a cell that several see is there several times.
    """
    row = np.full(len(views.origins), -1)
    row[sectors] = np.arange(len(sectors))
    picked = np.flatnonzero(row[views.owners] >= 0)
    active = row[views.owners[picked]]
    low = np.maximum(views.spans[picked, 0], limits[active, 0])
    high = np.minimum(views.spans[picked, 1], limits[active, 1])
    keep = high > low
    picked, active, low, high = picked[keep], active[keep], low[keep], high[keep]
    origins, shapes = _shapes(views, picked, np.stack([low, high]))
    piece, cell = _cells(grid, shapes)
    rows, columns = np.divmod(cell, grid.nx)
    x = grid.x0 + (columns + 0.5) * grid.cell - origins[piece, 0]
    y = grid.y0 + (rows + 0.5) * grid.cell - origins[piece, 1]
    return Wedges(active, views.crossings[picked], piece, cell, np.sqrt(x * x + y * y))


def paint_wedges(
    values: FloatArray, wedges: Wedges, *, base: FloatArray, per_metre: float, per_crossing: float
) -> None:
    """Lower the values of the cells that sectors see to what they cost from there, where that is less.

    Parameters
    ----------
    values : ndarray, shape (ny, nx)
        One value a cell; changed in place. [-]
    wedges : Wedges
        What A sectors see of these cells.
    base : ndarray, shape (A,)
        Value at each sector's origin. [-]
    per_metre : float
        Added for each metre. [-]
    per_crossing : float
        Added for each crossing line passed. [-]
    """
    cost = base[wedges.sectors] + wedges.crossings * per_crossing
    np.minimum.at(values.reshape(-1), wedges.cells, cost[wedges.wedges] + per_metre * wedges.metres)


def _shapes(views: Views, picked: IntArray, sides: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Origins and four corners of the pieces between two angles: near, far, far, near."""
    owners = views.owners[picked]
    origins, first = views.origins[owners], views.firsts[owners]
    corners = np.empty((len(picked), 4, 2))
    for side, (near_at, far_at) in enumerate(((0, 1), (3, 2))):
        cos, sin = np.cos(sides[side]), np.sin(sides[side])
        ray = np.stack([cos * first[:, 0] - sin * first[:, 1], sin * first[:, 0] + cos * first[:, 1]], axis=1)
        far = views.lines[views.far[picked]]
        corners[:, far_at] = origins + ray * _reach(origins, ray, far)[:, None]
        near = views.lines[np.maximum(views.near[picked], 0)]
        start = np.where(views.near[picked] < 0, 0.0, _reach(origins, ray, near))
        corners[:, near_at] = origins + ray * start[:, None]
    return origins, corners


def _reach(origins: FloatArray, ray: FloatArray, lines: FloatArray) -> FloatArray:
    """How far along each ray its line is met, never beyond the line's farther end. [m]"""
    along = lines[:, 1] - lines[:, 0]
    away = lines - origins[:, None]
    slope = cross(ray, along)
    farthest = np.sqrt((away**2).sum(axis=2)).max(axis=1)
    met = np.full(len(ray), np.inf)
    np.divide(cross(away[:, 0], along), slope, out=met, where=slope != 0.0)
    return np.clip(np.where(met < 0.0, farthest, met), 0.0, farthest)


def _cells(grid: Grid, shapes: FloatArray) -> tuple[IntArray, IntArray]:
    """Cells whose middle lies in each convex four-cornered shape: number of the shape, number of the cell."""
    y = shapes[:, :, 1]
    piece, row = _runs(
        (y.min(axis=1) - EDGE - grid.y0) / grid.cell, (y.max(axis=1) + EDGE - grid.y0) / grid.cell, grid.ny
    )
    level = grid.y0 + (row + 0.5) * grid.cell
    left, right = np.full(len(piece), np.inf), np.full(len(piece), -np.inf)
    for i in range(4):
        a, b = shapes[:, i], shapes[:, (i + 1) % 4]
        rise = b[:, 1] - a[:, 1]
        flat = np.abs(rise) < 1e-12
        slope = np.where(flat, 0.0, (b[:, 0] - a[:, 0]) / np.where(flat, 1.0, rise))
        low, high = np.minimum(a[:, 1], b[:, 1])[piece], np.maximum(a[:, 1], b[:, 1])[piece]
        x = a[piece, 0] + slope[piece] * (np.clip(level, low, high) - a[piece, 1])
        met = (level >= low - EDGE) & (level <= high + EDGE)
        left = np.where(met, np.minimum(left, x), left)
        right = np.where(met, np.maximum(right, x), right)
    span, column = _runs((left - EDGE - grid.x0) / grid.cell, (right + EDGE - grid.x0) / grid.cell, grid.nx)
    return piece[span], row[span] * grid.nx + column


def _runs(low: FloatArray, high: FloatArray, count: int) -> tuple[IntArray, IntArray]:
    """Whole numbers whose middle lies from low to high, within a count: which run, which number."""
    first = np.ceil(np.clip(low - 0.5, 0, count)).astype(np.int64)
    last = np.floor(np.clip(high - 0.5, -1, count - 1)).astype(np.int64)
    lengths = np.maximum(last - first + 1, 0)
    run = np.repeat(np.arange(len(low)), lengths)
    offset = np.arange(len(run)) - np.repeat(np.cumsum(lengths) - lengths, lengths)
    return run, first[run] + offset
