"""A regular grid of square cells on the plan, and areas painted on it."""

from __future__ import annotations

import math
from functools import lru_cache
from itertools import pairwise
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
        """Middles of all cells, not to be written to, shape (ny, nx, 2). [m]"""
        return _centres(self)

    def cells_of(self, points: FloatArray) -> tuple[IntArray, IntArray]:
        """Row and column of the cell that holds each point, clipped to the grid; points shape (..., 2). [m]"""
        column = np.floor((points[..., 0] - self.x0) / self.cell).astype(np.int64)
        row = np.floor((points[..., 1] - self.y0) / self.cell).astype(np.int64)
        return np.clip(row, 0, self.ny - 1), np.clip(column, 0, self.nx - 1)


@lru_cache(maxsize=64)
def _centres(grid: Grid) -> FloatArray:
    x = grid.x0 + (np.arange(grid.nx) + 0.5) * grid.cell
    y = grid.y0 + (np.arange(grid.ny) + 0.5) * grid.cell
    centres = np.stack(np.meshgrid(x, y), axis=-1)
    centres.flags.writeable = False
    return centres


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
    inside: BoolArray = np.zeros(grid.shape, dtype=np.bool_)
    if area.is_empty:
        return inside
    shapely.prepare(area)
    # Only cells about the area are asked for; a cell more, so that no rounding leaves one out.
    corners = np.array(area.bounds).reshape(2, 2)
    (low_row, high_row), (low, high) = (np.sort(one) for one in grid.cells_of(corners))
    rows, columns = slice(max(0, low_row - 1), high_row + 2), slice(max(0, low - 1), high + 2)
    centres = grid.centres()[rows, columns]
    inside[rows, columns] = shapely.contains_xy(area, centres[..., 0], centres[..., 1])
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
    numbers = np.array([corner for loop in loops for corner in loop])
    corners = np.stack(np.divmod(numbers, mask.shape[0] + 1), axis=1) * grid.cell
    corners = np.array([grid.x0, grid.y0]) + corners
    whose = np.repeat(np.arange(len(loops)), [len(loop) for loop in loops])
    if tolerance > 0.0:
        smooth = shapely.simplify(shapely.linearrings(corners, indices=whose), tolerance)
        corners, whose = shapely.get_coordinates(smooth, return_index=True)
        is_last = np.append(whose[1:] != whose[:-1], True)  # a ring comes back closed
        corners, whose = corners[~is_last], whose[~is_last]
    points = [(x, y) for x, y in corners.tolist()]
    ends = np.searchsorted(whose, np.arange(len(loops) + 1)).tolist()
    return tuple(tuple(points[start:end]) for start, end in pairwise(ends))


_RIGHT, _UP, _LEFT, _DOWN = range(4)
# One more is a turn to the left.


def _loops(mask: BoolArray) -> list[list[int]]:
    """Corners of the outlines of True cells, inside on the left; cells that touch at a corner are apart.

    Each from its leftmost, then lowest corner on, and in the order of those. A corner's number is its column times
    the rows of corners, plus its row.
    """
    onward = _straight_pieces(mask)
    loops = []
    for start in sorted(onward):
        here, loop = start, list[int]()
        while here in onward:
            loop.append(here // 4)
            end = onward.pop(here) * 4
            # To the left where there is a choice: round the same cell.
            left = end + (here + 1) % 4
            here = left if left in onward or left == start else end + (here - 1) % 4
        if loop:
            loops.append(loop)
    return loops


def _straight_pieces(mask: BoolArray) -> dict[int, int]:
    """Edges of True cells in straight pieces: four times the corner at their start, plus their way -> their end."""
    rows, columns = mask.shape[0] + 1, mask.shape[1] + 1
    padded = np.zeros((rows + 1, columns + 1), dtype=np.int8)
    padded[1:-1, 1:-1] = mask
    found: dict[int, int] = {}
    for cells, ways in ((padded, (_RIGHT, _LEFT)), (np.ascontiguousarray(padded.T), (_DOWN, _UP))):
        is_across = cells is padded
        # Whether the lines between cells are an edge: 1 with the inside after the line, -1 with it before.
        edge = cells[1:] - cells[:-1]
        corners = np.nonzero((edge[:, 1:] != edge[:, :-1]).ravel())[0]
        sides = edge[:, 1:].ravel()[corners].tolist()
        line, place = np.divmod(corners, columns if is_across else rows)
        numbers = (place * rows + line if is_across else line * rows + place).tolist()
        for side, (one, other) in zip(sides[:-1], pairwise(numbers), strict=True):
            # Going down, the inside after an upright line is on the left; going right, that above a level one is.
            forward = side == (1 if is_across else -1)
            if side:
                start, end = (one, other) if forward else (other, one)
                found[4 * start + (ways[0] if side == 1 else ways[1])] = end
    return found
