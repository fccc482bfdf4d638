"""The floor that is reached undetected from one place, and what can be asked of it.

Distances over it are those of the straight way as if nothing watched: never too long, so any error is toward an
intruder who gets there sooner.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
import shapely

from wardwright.errors import NotComputable
from wardwright.geometry.raster import BoolArray, FloatArray, painted
from wardwright.model.record import Ring
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, TimeMap
from wardwright.trials.barriers import (
    exact_metres,
    grids_of,
    standing_cells,
    union_of,
    walked_floor,
    walked_metres,
)
from wardwright.trials.floors import rings_of
from wardwright.trials.stacked_floors import StackedFloors, farthest, stacked


@dataclass(frozen=True)
class Undetected:
    """What can be reached from one way in before a number of devices have noticed.

    One object while the floor stays the same, so that what is asked of it is remembered whatever was moved.
    """

    house: Site
    start: Spot
    runs: tuple[StackedFloors, ...]
    """The undetected floor, once for each device that may have been the first to notice; none: noticed at once."""

    @cached_property
    def metres(self) -> dict[str, TimeMap]:
        """Distance from the way in to everywhere. [m]"""
        return walked_metres(self.house, self.start)

    @cached_property
    def distance_m(self) -> float:
        """Along the way to the farthest point of it. [m]"""
        metres = exact_metres(self.house, self.start)
        return max((farthest(metres, run) for run in set(self.runs)), default=0.0)

    @cached_property
    def floors(self) -> StackedFloors:
        """The undetected floor, half a cell's diagonal beyond where a person's middle can be."""
        if not self.runs:
            return stacked(walked_floor(self.house).stack, {})
        return self.runs[0] if len(self.runs) == 1 else union_of(self.runs)

    @cached_property
    def area_m2(self) -> float:
        """Of the undetected floor. [m2]"""
        cells = ((storey, float(np.count_nonzero(mask))) for storey, mask in self.floors.items())
        return sum(number * self.metres[storey].grid.cell ** 2 for storey, number in cells)

    @cached_property
    def rings(self) -> dict[str, tuple[Ring, ...]]:
        """Its outlines by storey, for drawing. [m]"""
        return rings_of(grids_of(self.house), self.floors)

    @cached_property
    def exact(self) -> StackedFloors:
        """Those of its cells whose distances are exact."""
        return StackedFloors(self.floors.stack, self.floors.cells & walked_floor(self.house).cells)


@lru_cache(maxsize=512)
def undetected_in(house: Site, start: Spot, runs: tuple[StackedFloors, ...]) -> Undetected:
    """The one object for some floor that is reached from a start; the floors are those of `one_of`."""
    return Undetected(house, start, runs)


@lru_cache(maxsize=1024)
def reaches_space(found: Undetected, space_id: str) -> float | None:
    """Distance at which the undetected floor first enters a space; None where it does not. [m]

    Raises
    ------
    NotComputable
        If no way on foot leads there, watched or not.
    """
    space = found.house.space(space_id)
    if space.storey not in found.floors:
        raise NotComputable(f"no way on foot leads to {space.name}")
    if not np.isfinite(_metres_in(found.house, found.start, space_id)).any():
        raise NotComputable(f"no way on foot leads to {space.name}")
    return _least(_metres_in(found.house, found.start, space_id), found.exact[space.storey])


@lru_cache(maxsize=1024)
def reaches_spot(found: Undetected, spot: Spot) -> float | None:
    """Distance at which somebody on undetected floor stands at a spot; None where nobody does. [m]

    Raises
    ------
    NotComputable
        If no way on foot leads there, watched or not.
    """
    at = standing_cells(found.house, spot)
    if not len(at) or not np.isfinite(found.metres[spot.storey].times[at[:, 0], at[:, 1]]).any():
        raise NotComputable("no way on foot leads to it")
    there = found.floors[spot.storey][at[:, 0], at[:, 1]]
    return _least(found.metres[spot.storey].times[at[:, 0], at[:, 1]], there)


def _least(metres: FloatArray, cells: BoolArray) -> float | None:
    """The least of the known distances over the True cells; None where there is none."""
    least = float(np.fmin.reduce(metres[cells], initial=np.inf))
    return least if math.isfinite(least) else None


@lru_cache(maxsize=512)
def _metres_in(house: Site, start: Spot, space_id: str) -> FloatArray:
    """Distance from a start to the cells of a space, inf elsewhere and where no way leads. [m]"""
    space = house.space(space_id)
    times = walked_metres(house, start)[space.storey].times
    inside = painted(grids_of(house)[space.storey], shapely.Polygon(space.outline_m))
    return np.where(inside & np.isfinite(times), times, np.inf)
