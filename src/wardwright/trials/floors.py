"""Floor of all storeys as cells: what can be walked, and what hangs together."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from wardwright.geometry.raster import BoolArray, FloatArray, Grid, outlines
from wardwright.model.record import Ring
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, TimeMap

NEAR_CELLS = 8
"""A stair's end or a goal that is not on a free cell is looked for this many cells about. [-]"""

EIGHT = np.ones((3, 3), dtype=bool)
"""Cells hang together over their corners too: an error only toward more ways, never fewer."""

Floors = Mapping[str, BoolArray]
"""Storey -> cells, on the grids of the time maps they go with."""


class Cell(NamedTuple):
    """One cell of one storey."""

    storey: str
    row: int
    column: int


def free_floors(maps: Mapping[str, TimeMap]) -> Floors:
    """The cells that can be reached at all."""
    return {storey: np.isfinite(one.times) for storey, one in maps.items()}


def on_grid(mask: BoolArray, *, of: Grid, onto: Grid) -> BoolArray:
    """Carry a mask from one grid to another by the middles of the cells; outside is False."""
    if of == onto:
        return mask
    centres = onto.centres()
    row = np.floor((centres[..., 1] - of.y0) / of.cell).astype(np.int64)
    column = np.floor((centres[..., 0] - of.x0) / of.cell).astype(np.int64)
    inside = (row >= 0) & (row < of.ny) & (column >= 0) & (column < of.nx)
    found: BoolArray = np.zeros(onto.shape, dtype=np.bool_)
    found[inside] = mask[row[inside], column[inside]]
    return found


def nearest_cell(mask: BoolArray, grid: Grid, point: tuple[float, float]) -> tuple[int, int] | None:
    """The True cell nearest to a point, within `NEAR_CELLS`; None where there is none."""
    rows, columns = grid.cells_of(np.asarray(point, dtype=np.float64))
    row, column = int(rows), int(columns)
    if mask[row, column]:
        return row, column
    low_row, low_column = max(0, row - NEAR_CELLS), max(0, column - NEAR_CELLS)
    window = mask[low_row : row + NEAR_CELLS + 1, low_column : column + NEAR_CELLS + 1]
    found = np.argwhere(window)
    if found.size == 0:
        return None
    away = ((found + np.array([low_row - row, low_column - column])) ** 2).sum(axis=1)
    best = found[int(away.argmin())]
    return int(best[0]) + low_row, int(best[1]) + low_column


def hanging_together(site: Site, maps: Mapping[str, TimeMap], open_floor: Floors, *, start: Spot) -> Floors:
    """The cells that can be reached from a start over open floor and the stairs.

    Parameters
    ----------
    site : Site
        For its stairs.
    maps : mapping of storey to TimeMap
        For their grids.
    open_floor : mapping of storey to ndarray of bool
        The cells that may be walked.
    start : Spot
        Where to start from; if it is not on open floor, nothing is reached.

    Returns
    -------
    mapping of storey to ndarray of bool
        The cells reached, same shapes.
    """
    labels = {storey: ndimage.label(mask, structure=EIGHT)[0] for storey, mask in open_floor.items()}
    reached: dict[str, set[int]] = {storey: set() for storey in labels}
    if start.storey in labels:
        at = nearest_cell(open_floor[start.storey], maps[start.storey].grid, (start.x, start.y))
        if at is not None:
            reached[start.storey].add(int(labels[start.storey][at]))
    joins = _joins(site, maps, open_floor, labels=labels)
    grew = True
    while grew:
        grew = False
        for (storey, label), (next_storey, next_label) in joins:
            if label in reached[storey] and next_label not in reached[next_storey]:
                reached[next_storey].add(next_label)
                grew = True
    return {storey: np.isin(labels[storey], sorted(reached[storey])) for storey in labels}


def _joins(
    site: Site, maps: Mapping[str, TimeMap], open_floor: Floors, *, labels: Mapping[str, NDArray[np.int32]]
) -> list[tuple[tuple[str, int], tuple[str, int]]]:
    """Pairs of labelled floor that a stair joins, each in both directions."""
    found: list[tuple[tuple[str, int], tuple[str, int]]] = []
    for stair in site.stairs:
        ends = []
        for storey, point in ((stair.lower, stair.line_m[0]), (stair.upper, stair.line_m[-1])):
            at = nearest_cell(open_floor[storey], maps[storey].grid, point) if storey in labels else None
            if at is not None:
                ends.append((storey, int(labels[storey][at])))
        if len(ends) == 2:
            found.extend(((ends[0], ends[1]), (ends[1], ends[0])))
    return found


def rings_of(maps: Mapping[str, TimeMap], floors: Floors) -> dict[str, tuple[Ring, ...]]:
    """Outlines of the True cells of each storey, for drawing."""
    found = {}
    for storey, mask in floors.items():
        grid = maps[storey].grid
        rings = outlines(grid, mask, tolerance=grid.cell)
        if rings:
            found[storey] = rings
    return found


def farthest(maps: Mapping[str, TimeMap], floors: Floors) -> tuple[float, Cell | None]:
    """The largest value of the maps over the True cells, and where; 0 and None where there are none."""
    best, where = 0.0, None
    for storey in sorted(floors):
        values: FloatArray = np.where(floors[storey], maps[storey].times, -np.inf)
        values = np.where(np.isnan(values), -np.inf, values)
        if values.size and values.max() > best:
            row, column = np.unravel_index(int(values.argmax()), values.shape)
            best, where = float(values.max()), Cell(storey, int(row), int(column))
    return best, where
