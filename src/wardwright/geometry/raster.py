"""A regular grid of square cells on the plan, and areas painted on it."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

BoolArray = NDArray[np.bool_]
FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]


class Grid(NamedTuple):
    """A regular grid of square cells; row 0 is the lowest y, column 0 the lowest x."""

    x0: float
    """Left edge. [m]"""
    y0: float
    """Lower edge. [m]"""
    cell: float
    """Side of a cell. [m]"""
    nx: int
    ny: int

    @property
    def shape(self) -> tuple[int, int]:
        """Rows (y) and columns (x)."""
        return (self.ny, self.nx)

    def centres(self) -> FloatArray:
        """Middles of all cells, shape (ny, nx, 2). [m]"""
        x = self.x0 + (np.arange(self.nx) + 0.5) * self.cell
        y = self.y0 + (np.arange(self.ny) + 0.5) * self.cell
        return np.stack(np.meshgrid(x, y), axis=-1)

    def cells_of(self, points: FloatArray) -> tuple[IntArray, IntArray]:
        """Row and column of the cell that holds each point, clipped to the grid; points shape (..., 2). [m]"""
        column = np.floor((points[..., 0] - self.x0) / self.cell).astype(np.int64)
        row = np.floor((points[..., 1] - self.y0) / self.cell).astype(np.int64)
        return np.clip(row, 0, self.ny - 1), np.clip(column, 0, self.nx - 1)


def grid_over(bounds: tuple[float, float, float, float], *, cell: float, margin: float = 0.0) -> Grid:
    """Cover a rectangle with a grid whose cell edges lie on whole multiples of the cell.

    Parameters
    ----------
    bounds : tuple of float
        Lowest x, lowest y, highest x, highest y. [m]
    cell : float
        Side of a cell. [m]
    margin : float, default 0.0
        Added on every side. [m]

    Returns
    -------
    Grid
        The smallest such grid.

    Examples
    --------
    >>> grid_over((0.0, 0.0, 1.0, 0.5), cell=0.25).shape
    (2, 4)
    """
    x_low = math.floor((bounds[0] - margin) / cell + 1e-9)
    y_low = math.floor((bounds[1] - margin) / cell + 1e-9)
    x_high = math.ceil((bounds[2] + margin) / cell - 1e-9)
    y_high = math.ceil((bounds[3] + margin) / cell - 1e-9)
    return Grid(x_low * cell, y_low * cell, cell, max(1, x_high - x_low), max(1, y_high - y_low))


def painted(grid: Grid, area: shapely.Geometry) -> BoolArray:
    """Cells whose middle lies in an area.

    Parameters
    ----------
    grid : Grid
        The cells.
    area : shapely geometry
        Polygon or polygons. [m]

    Returns
    -------
    ndarray of bool, shape (ny, nx)
        True inside.
    """
    if area.is_empty:
        return np.zeros(grid.shape, dtype=np.bool_)
    shapely.prepare(area)
    centres = grid.centres()
    inside: BoolArray = shapely.contains_xy(area, centres[..., 0], centres[..., 1])
    return inside


def outlines(
    grid: Grid, mask: BoolArray, *, tolerance: float = 0.0
) -> tuple[tuple[tuple[float, float], ...], ...]:
    """Outlines of the True cells, for drawing.

    Parameters
    ----------
    grid : Grid
        The cells.
    mask : ndarray of bool, shape (ny, nx)
        Which of them.
    tolerance : float, default 0.0
        How far the outline may be smoothed. [m]

    Returns
    -------
    tuple of rings
        Each a tuple of corners, first not repeated; outer rings anticlockwise, holes clockwise. [m]

    Examples
    --------
    >>> one = np.zeros((3, 3), dtype=bool)
    >>> one[1, 1] = True
    >>> len(outlines(Grid(0.0, 0.0, 1.0, 3, 3), one)[0])
    4
    """
    if not mask.any():
        return ()
    loops = _loops(mask)
    rings = [np.array([grid.x0, grid.y0]) + np.array(loop) * grid.cell for loop in loops]
    if tolerance > 0.0:
        smoothed = [shapely.simplify(shapely.linearrings(ring), tolerance) for ring in rings]
        rings = [shapely.get_coordinates(ring)[:-1] for ring in smoothed]
    return tuple(tuple((float(x), float(y)) for x, y in ring) for ring in rings)


def _loops(mask: BoolArray) -> list[list[tuple[int, int]]]:
    """Corners of the outlines of True cells, in cells, inside on the left; cells that touch at a corner are apart."""
    padded = np.pad(mask, 1)
    inside = padded[1:-1, 1:-1]
    onward: dict[tuple[int, int], list[tuple[int, int]]] = {}
    sides = (
        (padded[:-2, 1:-1], (0, 0), (1, 0)),  # below: to the right along the lower edge
        (padded[1:-1, 2:], (1, 0), (1, 1)),
        (padded[2:, 1:-1], (1, 1), (0, 1)),
        (padded[1:-1, :-2], (0, 1), (0, 0)),
    )
    for beside, start, end in sides:
        rows, columns = np.nonzero(inside & ~beside)
        for row, column in zip(rows.tolist(), columns.tolist(), strict=True):
            onward.setdefault((column + start[0], row + start[1]), []).append((column + end[0], row + end[1]))
    loops = []
    while onward:
        loops.append(_loop(onward))
    return loops


def _loop(onward: dict[tuple[int, int], list[tuple[int, int]]]) -> list[tuple[int, int]]:
    """Take one closed loop out of directed edges, corners only."""
    first = min(onward)
    here, step = first, (0, 0)
    corners: list[tuple[int, int]] = []
    while True:
        ends = onward[here]
        chosen = ends[0]
        for end in ends:
            turn = step[0] * (end[1] - here[1]) - step[1] * (end[0] - here[0])
            if turn > 0:  # to the left: round the same cell
                chosen = end
        ends.remove(chosen)
        if not ends:
            del onward[here]
        way = (chosen[0] - here[0], chosen[1] - here[1])
        if way != step:
            corners.append(here)
        here, step = chosen, way
        if here == first:
            return corners
