"""Floor of all storeys as cells: what can be walked, and what hangs together."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from scipy import ndimage

from wardwright.geometry.raster import BoolArray, Grid, IntArray, outlines
from wardwright.model.record import Ring
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, TimeMap

NEAR_CELLS = 8
"""A stair's end or a goal that is not on a free cell is looked for this many cells about. [-]"""

EIGHT = np.ones((3, 3), dtype=bool)
"""Cells hang together over their corners too: an error only toward more ways, never fewer."""

Floors = Mapping[str, BoolArray]
"""Storey -> cells, on the grids of the time maps they go with."""


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


class Regions:
    """Open floor of all storeys, parted into regions that hang together over cells and stairs.

    Parameters
    ----------
    site : Site
        For its stairs.
    grids : mapping of storey to Grid
        The cells.
    open_floor : mapping of storey to ndarray of bool
        Which of them may be walked.
    """

    def __init__(self, site: Site, grids: Mapping[str, Grid], open_floor: Floors) -> None:
        self.grids = grids
        self._numbers = _numbered(open_floor)
        self._rings: dict[int, dict[str, tuple[Ring, ...]]] = {}
        for stair in site.stairs:
            ends = [
                self.region_at(Spot(storey, *point))
                for storey, point in ((stair.lower, stair.line_m[0]), (stair.upper, stair.line_m[-1]))
            ]
            if 0 not in ends and ends[0] != ends[1]:
                for numbers in self._numbers.values():
                    numbers[numbers == ends[1]] = ends[0]

    def region_at(self, spot: Spot) -> int:
        """The number of the region about a spot; 0 where there is no open floor."""
        if spot.storey not in self._numbers:
            return 0
        numbers = self._numbers[spot.storey]
        at = nearest_cell(numbers > 0, self.grids[spot.storey], (spot.x, spot.y))
        return 0 if at is None else int(numbers[at])

    def numbers_in(self, floors: Floors) -> frozenset[int]:
        """The numbers of the regions that share cells with some floor."""
        found: set[int] = set()
        for storey, mask in floors.items():
            found.update(np.unique(self._numbers[storey][mask]).tolist())
        return frozenset(found - {0})

    def cells_of(self, numbers: frozenset[int], storey: str) -> BoolArray:
        """The cells of some regions on one storey."""
        cells: BoolArray = np.isin(self._numbers[storey], sorted(numbers))
        return cells

    def floors(self, region: int) -> Floors:
        """The cells of one region; region 0 has none."""
        return {storey: (numbers == region) & (numbers > 0) for storey, numbers in self._numbers.items()}

    def rings(self, region: int) -> dict[str, tuple[Ring, ...]]:
        """Outlines of one region by storey, for drawing; worked out once. [m]"""
        if region not in self._rings:
            self._rings[region] = rings_of(self.grids, self.floors(region))
        return self._rings[region]


def _numbered(open_floor: Floors) -> dict[str, IntArray]:
    """Regions of each storey, numbered on through the storeys; 0 is closed floor."""
    found: dict[str, IntArray] = {}
    used = 0
    for storey in sorted(open_floor):
        labels, count = ndimage.label(open_floor[storey], structure=EIGHT)
        numbers = np.asarray(labels, dtype=np.int64)
        found[storey] = np.where(numbers > 0, numbers + used, 0)
        used += int(count)
    return found


def rings_of(grids: Mapping[str, Grid], floors: Floors) -> dict[str, tuple[Ring, ...]]:
    """Outlines of the True cells of each storey, for drawing. [m]"""
    found = {}
    for storey, mask in floors.items():
        rings = outlines(grids[storey], mask, tolerance=grids[storey].cell)
        if rings:
            found[storey] = rings
    return found


def farthest(maps: Mapping[str, TimeMap], floors: Floors) -> float:
    """The largest value of the maps over the True cells; 0 where there are none."""
    best = 0.0
    for storey, mask in floors.items():
        values = maps[storey].times[mask]
        known = values[np.isfinite(values)]
        if known.size:
            best = max(best, float(known.max()))
    return best
