"""Floor of all storeys as cells: what can be walked, and what hangs together."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from wardwright.geometry.raster import BoolArray, Grid, IntArray, outlines
from wardwright.model.record import Ring
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.trials.stacked_floors import Floors, StackedFloors, one_of

NEAR_M = 0.83
"""Whoever is at a spot where nobody can stand, such as a stair's end or a shelf, stands this near at most. [m]
(assumption: a stride)"""

EVEN = 1e-6
"""Cells whose edges lie within this share of a cell of others' count as the same cells. [-]"""

EIGHT = np.ones((3, 3), dtype=bool)
"""Cells hang together over their corners too: an error only toward more ways, never fewer."""


def on_grid(mask: BoolArray, *, of: Grid, onto: Grid) -> BoolArray:
    """Carry a mask from one grid to another by the middles of the cells; outside is False."""
    if of == onto:
        return mask
    found: BoolArray = np.zeros(onto.shape, dtype=np.bool_)
    right, up = (onto.x0 - of.x0) / of.cell, (onto.y0 - of.y0) / of.cell
    if of.cell == onto.cell and max(abs(right - round(right)), abs(up - round(up))) < EVEN:
        rows, from_rows = _overlap(of.ny, onto.ny, round(up))
        columns, from_columns = _overlap(of.nx, onto.nx, round(right))
        found[rows, columns] = mask[from_rows, from_columns]
        return found
    centres = onto.centres()
    row = np.floor((centres[..., 1] - of.y0) / of.cell).astype(np.int64)
    column = np.floor((centres[..., 0] - of.x0) / of.cell).astype(np.int64)
    inside = (row >= 0) & (row < of.ny) & (column >= 0) & (column < of.nx)
    found[inside] = mask[row[inside], column[inside]]
    return found


def _overlap(old: int, new: int, shift: int) -> tuple[slice, slice]:
    """Where two rows of cells overlap, in the new one and in the old, whose first lies that far before it."""
    start, end = max(0, -shift), max(0, min(new, old - shift))
    return slice(start, end), slice(start + shift, max(start + shift, end + shift))


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
    """Open floor of all storeys, parted into regions that hang together over cells and stairs; not to be written to.

    Parameters
    ----------
    site : Site
        For its stairs.
    standing_cells : callable
        Finds the cells that somebody stands on who is at a spot, whether they may be walked or not: (n, 2).
    open_floor : StackedFloors
        The cells that may be walked.
    """

    def __init__(
        self,
        site: Site,
        *,
        standing_cells: Callable[[Spot], IntArray],
        open_floor: StackedFloors,
    ) -> None:
        self.standing_cells = standing_cells
        self.stack = open_floor.stack
        self._labels, count = _labelled(open_floor.cells)
        # The region that each patch of open floor belongs to: its least patch. 0 is closed floor.
        self._region_of = list(range(count + 1))
        self._floors: dict[frozenset[int], StackedFloors] = {}
        self._at: dict[Spot, frozenset[int]] = {}
        for stair in site.stairs:
            ends = [
                self.regions_at(Spot(storey, *point))
                for storey, point in ((stair.lower, stair.line_m[0]), (stair.upper, stair.line_m[-1]))
            ]
            if all(ends):
                self._join(frozenset.union(*ends))
                self._at.clear()

    def _join(self, regions: frozenset[int]) -> None:
        least = min(regions)
        self._region_of = [least if one in regions else one for one in self._region_of]

    def _named(self, patches: Iterable[int]) -> frozenset[int]:
        return frozenset(self._region_of[patch] for patch in patches if patch)

    def regions_at(self, spot: Spot) -> frozenset[int]:
        """The regions that somebody stands on who is at a spot; none where that is no open floor.

        Several where they come equally near, within half a cell: an error only toward more ways.
        """
        if spot not in self._at:
            self._at[spot] = self._regions_at(spot)
        return self._at[spot]

    def _regions_at(self, spot: Spot) -> frozenset[int]:
        part = self.stack.parts.get(spot.storey)
        if part is None:
            return frozenset()
        found = self.standing_cells(spot)
        return self._named(self._labels[part][found[:, 0], found[:, 1]].tolist())

    def numbers_in(self, floors: StackedFloors) -> frozenset[int]:
        """The numbers of the regions that share cells with some floor."""
        return self._named(np.bincount(self._labels[floors.cells]).nonzero()[0].tolist())

    def floors(self, regions: frozenset[int]) -> StackedFloors:
        """The cells of some regions; worked out once, not to be written to."""
        if regions not in self._floors:
            patches = [i for i, region in enumerate(self._region_of) if region in regions and i]
            if len(patches) == 1:
                cells: BoolArray = self._labels == patches[0]
            else:
                chosen = np.zeros(len(self._region_of), dtype=np.bool_)
                chosen[patches] = True
                cells = chosen[self._labels]
            self._floors[regions] = one_of(StackedFloors(self.stack, cells))
        return self._floors[regions]


def _labelled(mask: BoolArray) -> tuple[NDArray[np.int32], int]:
    """Number the patches of open floor that hang together, from 1; 0 is closed floor."""
    labels: NDArray[np.int32] = np.empty(mask.shape, dtype=np.int32)
    count = ndimage.label(mask, structure=EIGHT, output=labels)
    return labels, int(count)


def rings_of(grids: Mapping[str, Grid], floors: Floors) -> dict[str, tuple[Ring, ...]]:
    """Outlines of the True cells of each storey, for drawing. [m]"""
    found = {}
    for storey, mask in floors.items():
        rings = _rings_alike(grids[storey], mask.tobytes())
        if rings:
            found[storey] = rings
    return found


@lru_cache(maxsize=512)
def _rings_alike(grid: Grid, cells: bytes) -> tuple[Ring, ...]:
    """Remembered by the cells themselves: a move leaves most storeys as they were."""
    mask = np.frombuffer(cells, dtype=np.bool_).reshape(grid.shape)
    return outlines(grid, mask, tolerance=grid.cell)
