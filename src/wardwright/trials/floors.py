"""Floor of all storeys as cells: what can be walked, and what hangs together."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

import numpy as np
from scipy import ndimage

from wardwright.geometry.raster import BoolArray, Grid, IntArray, outlines
from wardwright.model.record import Ring
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, TimeMap

NEAR_M = 0.83
"""Whoever is at a spot where nobody can stand, such as a stair's end or a shelf, stands this near at most. [m]
(assumption: a stride)"""

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


def nearest_cells(mask: BoolArray, grid: Grid, point: tuple[float, float]) -> IntArray:
    """The True cells nearest to a point, within `NEAR_M`, ties within half a cell; rows and columns (n, 2)."""
    rows, columns = grid.cells_of(np.asarray(point, dtype=np.float64))
    about = math.ceil(NEAR_M / grid.cell) + 1
    low = np.array([max(0, int(rows) - about), max(0, int(columns) - about)])
    window = mask[low[0] : int(rows) + about + 1, low[1] : int(columns) + about + 1]
    found = np.argwhere(window) + low
    # From the point itself, so that a turn of the house changes nothing.
    middles = np.array([grid.x0, grid.y0]) + (found[:, ::-1] + 0.5) * grid.cell
    away = np.hypot(*(middles - np.asarray(point)).T)
    near = away <= min(NEAR_M, away.min(initial=np.inf) + grid.cell / 2)
    return np.asarray(found[near], dtype=np.int64)


class Regions:
    """Open floor of all storeys, parted into regions that hang together over cells and stairs.

    Parameters
    ----------
    site : Site
        For its stairs.
    grids : mapping of storey to Grid
        The cells.
    standing_cells : callable
        Finds the cells that somebody stands on who is at a spot, whether they may be walked or not: (n, 2).
    open_floor : mapping of storey to ndarray of bool
        The cells that may be walked.
    """

    def __init__(
        self,
        site: Site,
        grids: Mapping[str, Grid],
        *,
        standing_cells: Callable[[Spot], IntArray],
        open_floor: Floors,
    ) -> None:
        self.grids = grids
        self.standing_cells = standing_cells
        self._numbers = _numbered(open_floor)
        self._floors: dict[frozenset[int], Floors] = {}
        self._rings: dict[frozenset[int], dict[str, tuple[Ring, ...]]] = {}
        for stair in site.stairs:
            ends = [
                self.regions_at(Spot(storey, *point))
                for storey, point in ((stair.lower, stair.line_m[0]), (stair.upper, stair.line_m[-1]))
            ]
            if all(ends):
                self._join(frozenset.union(*ends))

    def _join(self, regions: frozenset[int]) -> None:
        for numbers in self._numbers.values():
            for region in regions - {min(regions)}:
                numbers[numbers == region] = min(regions)

    def regions_at(self, spot: Spot) -> frozenset[int]:
        """The regions that somebody stands on who is at a spot; none where that is no open floor.

        Several where they come equally near, within half a cell: an error only toward more ways.
        """
        if spot.storey not in self._numbers:
            return frozenset()
        numbers = self._numbers[spot.storey]
        found = self.standing_cells(spot)
        return frozenset(numbers[found[:, 0], found[:, 1]].tolist()) - {0}

    def numbers_in(self, floors: Floors) -> frozenset[int]:
        """The numbers of the regions that share cells with some floor."""
        found: set[int] = set()
        for storey, mask in floors.items():
            found.update(np.unique(self._numbers[storey][mask]).tolist())
        return frozenset(found - {0})

    def cells_of(self, regions: frozenset[int], storey: str) -> BoolArray:
        """The cells of some regions on one storey."""
        numbers = self._numbers[storey]
        cells: BoolArray = np.zeros(numbers.shape, dtype=np.bool_)
        for region in regions:
            cells |= numbers == region
        return cells

    def floors(self, regions: frozenset[int]) -> Floors:
        """The cells of some regions, by storey; worked out once, not to be written to."""
        if regions not in self._floors:
            self._floors[regions] = {storey: self.cells_of(regions, storey) for storey in self._numbers}
        return self._floors[regions]

    def rings(self, regions: frozenset[int]) -> dict[str, tuple[Ring, ...]]:
        """Outlines of some regions by storey, for drawing; worked out once. [m]"""
        if regions not in self._rings:
            self._rings[regions] = rings_of(self.grids, self.floors(regions))
        return self._rings[regions]


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
