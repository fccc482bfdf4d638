"""Floor that nobody crosses unnoticed, device by device, and the regions it leaves."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from functools import lru_cache, partial
from typing import Literal

import numpy as np
import shapely

from wardwright.geometry.raster import Grid, IntArray, grid_over, painted
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.placement import opening_footprint
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import watch
from wardwright.physics.walking.from_site import Paces, Spot, TimeMap, premises_network, time_maps
from wardwright.trials.floors import Regions, nearest_cells, on_grid
from wardwright.trials.stacked_floors import (
    Distances,
    Floors,
    Stack,
    StackedFloors,
    distances_of,
    one_of,
    stack_for,
    stacked,
)

Side = Literal["surely", "likely", "possibly"]
"""Which floor counts as watched: only where somebody is surely noticed; the low-side shape whole; anywhere at all
that somebody may be noticed."""

CELL_M = 0.1
"""Side of the cells that floor is told apart by. [m] (derived here: a third of the least gap between two walks on
either side of a wall)"""
HALF_DIAGONAL_M = CELL_M * math.sqrt(0.5)
"""Floor is widened by this before its cells are told: a line through a cell passes within it of its middle. [m]
(derived here)"""

UNIT_PACE = Paces(1.0, 1.0, 0.0)
"""At 1 m/s and with doors that cost nothing, a time map is a map of metres."""


def walked_metres(house: Site, start: Spot) -> dict[str, TimeMap]:
    """Distance on foot from a spot to everywhere, on cells of `CELL_M`. [m]"""
    return time_maps(premises_network(house), start, paces=UNIT_PACE, cell=CELL_M)


@lru_cache(maxsize=512)
def watched_floor(house: Site, catalogue: Catalogue, device: Device, *, side: Side) -> Floors:
    """The floor on which a device notices somebody, on the house's own grids.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets.
    device : Device
        A movement detector or an opening contact; others watch no floor: a blow or a breaking pane is noticed once,
        where somebody comes in.
    side : str
        Which floor counts.

    Returns
    -------
    mapping of storey to ndarray of bool
        Shared; not to be written to.
    """
    grids = grids_of(house)
    kind = catalogue.sheet(device.sheet).kind
    if kind == "opening-contact":
        return _doorway(house, device, grids)
    if kind != "movement-detector":
        return {}
    seen = watch(house, catalogue, device)
    if seen.storey not in grids:
        return {}
    mask = seen.core if side == "surely" else {"likely": seen.low, "possibly": seen.high}[side]
    return {seen.storey: on_grid(mask, of=seen.grid, onto=grids[seen.storey])}


@lru_cache(maxsize=64)
def standing_floor(house: Site) -> StackedFloors:
    """Where a person's middle can be, by storey, on the grids of `grids_of`; no way is too narrow for its cells."""
    network = premises_network(house)
    floors = {}
    for storey, grid in grids_of(house).items():
        free = network.free[network.storeys.index(storey)]
        floors[storey] = painted(grid, free.buffer(HALF_DIAGONAL_M))
    return one_of(stacked(stack_of(house), floors))


@lru_cache(maxsize=64)
def walked_floor(house: Site) -> StackedFloors:
    """The cells whose middle a person's middle can be on: those whose distances are exact."""
    network = premises_network(house)
    floors = {
        storey: painted(grid, network.free[network.storeys.index(storey)])
        for storey, grid in grids_of(house).items()
    }
    return one_of(stacked(stack_of(house), floors))


@lru_cache(maxsize=64)
def exact_metres(house: Site, start: Spot) -> Distances:
    """Distance on foot from a spot to the cells whose distances are exact and known."""
    walked = walked_floor(house)
    found = np.full(walked.stack.shape, np.nan)
    for storey, one in walked_metres(house, start).items():
        found[walked.stack.parts[storey]] = one.times
    return distances_of(found, walked.cells & np.isfinite(found))


@lru_cache(maxsize=64)
def grids_of(house: Site) -> dict[str, Grid]:
    """The cells of each storey with floor of ours; the same as those of its time maps."""
    network = premises_network(house)
    pairs = zip(network.storeys, network.rooms, strict=True)
    return {storey: grid_over(room.bounds, cell=CELL_M) for storey, room in pairs if not room.is_empty}


@lru_cache(maxsize=64)
def stack_of(house: Site) -> Stack:
    """The stack of the storeys of `grids_of`."""
    return stack_for(grids_of(house))


def _doorway(house: Site, device: Device, grids: Mapping[str, Grid]) -> Floors:
    """The doorway that a contact is on, if its leaf is usually shut and is walked through."""
    if not isinstance(device.mount, OpeningMount):
        return {}
    opening = house.opening(device.mount.opening)
    wall = house.wall(opening.wall)
    if opening.kind == "gap" or opening.habit != "shut" or wall.storey not in grids:
        return {}
    doorway = shapely.Polygon(opening_footprint(wall, opening)).buffer(HALF_DIAGONAL_M, join_style="mitre")
    return {wall.storey: painted(grids[wall.storey], doorway)}


@lru_cache(maxsize=512)
def unwatched_regions(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, side: Side
) -> Regions:
    """The regions that are left of the floor once all watched floor is taken away.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets.
    devices : tuple of Device
        Those that count.
    side : str
        Which floor of theirs counts.

    Returns
    -------
    Regions
        Shared.
    """
    watched = [watched_floor(house, catalogue, device, side=side) for device in devices]
    return regions_without(house, watched)


def regions_without(house: Site, closed: Sequence[Floors]) -> Regions:
    """The regions that are left of the standing floor once some floor is closed."""
    standing = standing_floor(house)
    open_floor = StackedFloors(standing.stack, standing.cells.copy())
    for one in closed:
        for storey, mask in one.items():
            there = open_floor[storey]
            # Open and not closed, in one go.
            np.greater(there, mask, out=there)
    return _regions_of(house, one_of(open_floor))


@lru_cache(maxsize=512)
def _regions_of(house: Site, open_floor: StackedFloors) -> Regions:
    """Remembered by the cells themselves: floor is closed alike again and again."""
    at = partial(standing_cells, house)
    return Regions(house, standing_cells=at, open_floor=open_floor)


@lru_cache(maxsize=4096)
def standing_cells(house: Site, spot: Spot) -> IntArray:
    """The cells that somebody stands on who is at a spot, as the walking engine has it; rows and columns, (n, 2)."""
    grids = grids_of(house)
    if spot.storey not in grids:
        return np.zeros((0, 2), dtype=np.int64)
    network = premises_network(house)
    x, y = network.snapped(network.storeys.index(spot.storey), np.array([spot.x, spot.y])).tolist()
    return nearest_cells(standing_floor(house)[spot.storey], grids[spot.storey], (x, y))


def union_of(floors: Sequence[StackedFloors]) -> StackedFloors:
    """The cells that are in any of some floors of one stack, of one at least."""
    return StackedFloors(floors[0].stack, np.logical_or.reduce([one.cells for one in floors]))
