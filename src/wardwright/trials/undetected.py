"""How far somebody gets from a way in before anything notices, and before a second thing does.

The floor that a detector watches is taken away; what still hangs together with the way in is the undetected
floor. Distances over it are those of the straight way as if nothing watched: never too long, so any error is
toward an intruder who gets there sooner.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray, painted
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import watch
from wardwright.physics.walking.from_site import (
    Paces,
    Spot,
    TimeMap,
    premises_network,
    time_maps,
    way_in_spot,
)
from wardwright.trials.floors import Floors, farthest, free_floors, hanging_together, nearest_cell, on_grid
from wardwright.trials.timely import doorway_floor
from wardwright.trials.watchers import behaviour_of, opens_contact
from wardwright.trials.ways_in import WayIn

Side = Literal["surely", "likely", "possibly"]
"""Which floor counts as watched: only where somebody is surely noticed; the sheet's own shape; anywhere at all."""

UNIT_PACE = Paces(1.0, 1.0, 0.0)
"""At 1 m/s and with doors that cost nothing, a time map is a map of metres."""


class Undetected(NamedTuple):
    """What can be reached from one way in before a number of devices have noticed."""

    distance_m: float
    """Along the way to the farthest point of it. [m]"""
    floors: Floors
    """The undetected floor, on the grids of `metres`."""
    metres: dict[str, TimeMap]
    """Distance from the way in to everywhere. [m]"""


def walked_metres(site: Site, way: WayIn) -> dict[str, TimeMap]:
    """Distance on foot from a way in to everywhere, on grids of 0.1 m. [m]"""
    return time_maps(premises_network(site), way_in_spot(site, way.opening), paces=UNIT_PACE)


def active_devices(site: Site, catalogue: Catalogue, part: str) -> tuple[Device, ...]:
    """Detectors whose zone is active and can alarm, in the order of ids."""
    found = []
    for device in sorted(site.devices, key=lambda one: one.id):
        behaviour = behaviour_of(site, device, part)
        kind = catalogue.sheet(device.sheet).kind
        if behaviour is not None and behaviour.alarms and kind in ("movement-detector", "opening-contact"):
            found.append(device)
    return tuple(found)


def watched_floor(
    site: Site, catalogue: Catalogue, device: Device, *, maps: dict[str, TimeMap], side: Side
) -> Floors:
    """The floor on which a device notices somebody, on the grids of the maps."""
    if catalogue.sheet(device.sheet).kind == "opening-contact":
        return doorway_floor(site, device, maps=maps)
    seen = watch(site, catalogue, device)
    if seen.storey not in maps:
        return {}
    mask = {"surely": seen.core, "likely": seen.low, "possibly": seen.high}[side]
    return {seen.storey: on_grid(mask, of=seen.grid, onto=maps[seen.storey].grid)}


def undetected(
    site: Site,
    catalogue: Catalogue,
    *,
    way: WayIn,
    devices: Sequence[Device],
    side: Side,
    others_allowed: int = 0,
) -> Undetected:
    """What can be reached from a way in before the devices have noticed.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets.
    way : WayIn
        Where the intruder comes in.
    devices : sequence of Device
        Those that count.
    side : str
        Which floor counts as watched.
    others_allowed : int, default 0
        0: until the first notices. 1: until a second one does, whichever the first was.

    Returns
    -------
    Undetected
        The floor and how far it goes.
    """
    metres = walked_metres(site, way)
    start = way_in_spot(site, way.opening)
    free = free_floors(metres)
    on_way_in = [one.id for one in devices if opens_contact(one, way)]
    if len(on_way_in) > others_allowed:
        return Undetected(0.0, {storey: np.zeros_like(mask) for storey, mask in free.items()}, metres)
    left = others_allowed - len(on_way_in)
    counting = [one for one in devices if one.id not in on_way_in]
    watched = {one.id: watched_floor(site, catalogue, one, maps=metres, side=side) for one in counting}
    runs = [[one for one in counting if one.id != skipped.id] for skipped in counting] if left else [counting]
    reached: dict[str, BoolArray] = {storey: np.zeros_like(mask) for storey, mask in free.items()}
    for run in runs or [[]]:
        open_floor = {storey: mask.copy() for storey, mask in free.items()}
        for one in run:
            for storey, mask in watched[one.id].items():
                open_floor[storey] &= ~mask
        for storey, mask in hanging_together(site, metres, open_floor, start=start).items():
            reached[storey] |= mask
    distance, _ = farthest(metres, reached)
    return Undetected(distance, reached, metres)


def reaches_space(found: Undetected, site: Site, space_id: str) -> float | None:
    """Distance at which the undetected floor first enters a space; None where it does not. [m]"""
    space = site.space(space_id)
    if space.storey not in found.floors:
        return None
    one = found.metres[space.storey]
    inside = found.floors[space.storey] & _space_mask(site, space_id, one)
    return float(one.times[inside].min()) if inside.any() else None


def reaches_spot(found: Undetected, spot: Spot) -> float | None:
    """Distance at which a spot is reached undetected; None where it is not. [m]"""
    if spot.storey not in found.floors:
        return None
    one = found.metres[spot.storey]
    at = nearest_cell(np.isfinite(one.times), one.grid, (spot.x, spot.y))
    return float(one.times[at]) if at is not None and found.floors[spot.storey][at] else None


def _space_mask(site: Site, space_id: str, one: TimeMap) -> BoolArray:
    return painted(one.grid, shapely.Polygon(site.space(space_id).outline_m))
