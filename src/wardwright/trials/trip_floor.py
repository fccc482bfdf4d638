"""The floor of a trip, and how far a movement detector's floor is from it.

It is the band to each side of the walk, and the whole of the rooms at its ends, where people keep to no line.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import shapely
from scipy import ndimage

from wardwright.geometry.raster import BoolArray, FloatArray, painted
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fabric import Space
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, premises_network
from wardwright.trials.barriers import grids_of
from wardwright.trials.household_walk import band_on
from wardwright.trials.leaves_between import possible_floor
from wardwright.trials.stacked_floors import Floors


class Ends(NamedTuple):
    """Where a walk begins and ends; hashable, so that what is found on it is remembered by it."""

    start: Spot
    goal: Spot
    rooms: tuple[Space, ...] = ()
    """The space it begins in, and the one where people stay at its end: a door has none."""


@lru_cache(maxsize=512)
def room_floor(house: Site, room: Space) -> BoolArray:
    """The floor of a room that somebody's middle can be on, on the house's own grid; not to be written to."""
    network = premises_network(house)
    free = network.free[network.storeys.index(room.storey)]
    return painted(grids_of(house)[room.storey], free.intersection(shapely.Polygon(room.outline_m).buffer(0)))


@lru_cache(maxsize=512)
def trip_floor(house: Site, catalogue: Catalogue, ends: Ends) -> Floors:
    """The floor of a trip: the band about its walk, and the whole of the rooms at its ends; not to be written to."""
    found = dict(band_on(house, catalogue, ends.start, goal=ends.goal))
    if not found:
        return {}
    for room in ends.rooms:
        cells = room_floor(house, room)
        found[room.storey] = found[room.storey] | cells if room.storey in found else cells
    return found


def floor_seen(house: Site, catalogue: Catalogue, device: Device, *, ends: Ends) -> Floors:
    """The part of a trip's floor that a movement detector possibly sees, every leaf away, by storey."""
    floor = trip_floor(house, catalogue, ends)
    seen = possible_floor(house, catalogue, device, storeys=tuple(sorted(floor)))
    return {storey: cells & floor[storey] for storey, cells in seen.items()}


@lru_cache(maxsize=512)
def _away(house: Site, catalogue: Catalogue, ends: Ends) -> dict[str, FloatArray]:
    """How far each cell of a storey is from the floor of a trip. [m]"""
    return {
        storey: ndimage.distance_transform_edt(~cells) * grids_of(house)[storey].cell
        for storey, cells in trip_floor(house, catalogue, ends).items()
        if cells.any()
    }


@lru_cache(maxsize=4096)
def clearance(house: Site, catalogue: Catalogue, device: Device, *, ends: Ends) -> float:
    """The least distance from the floor of a trip to where a movement detector may notice with every leaf away.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        For its sheet.
    device : Device
        The detector.
    ends : Ends
        The walk.

    Returns
    -------
    float
        Straight, from middle to middle of cells, whatever stands between; 0 where only a leaf keeps it from being
        noticed. Infinite: it sees no floor of the storeys that are passed. [m]
    """
    away = _away(house, catalogue, ends)
    floors = possible_floor(house, catalogue, device, storeys=tuple(sorted(away)))
    return min(
        (float(away[storey][cells].min()) for storey, cells in floors.items() if cells.any()),
        default=math.inf,
    )
