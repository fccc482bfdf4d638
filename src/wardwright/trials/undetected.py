"""How far somebody gets from a way in before anything notices, and before a second thing does.

The floor that a detector watches is taken away; what still hangs together with the way in is the undetected
floor. Distances over it are those of the straight way as if nothing watched: never too long, so any error is
toward an intruder who gets there sooner.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.errors import NotComputable
from wardwright.geometry.raster import BoolArray, painted
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.record import Ring
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, TimeMap, way_in_spot
from wardwright.trials.barriers import (
    Side,
    grids_of,
    standing_cells,
    union_of,
    unwatched_regions,
    walked_floor,
    walked_metres,
    watched_floor,
)
from wardwright.trials.floors import Floors, farthest
from wardwright.trials.unnoticed import shape_of, unnoticed_floor
from wardwright.trials.watchers import heard_in, opens_contact
from wardwright.trials.ways_in import WayIn


class Undetected(NamedTuple):
    """What can be reached from one way in before a number of devices have noticed."""

    distance_m: float
    """Along the way to the farthest point of it. [m]"""
    floors: Floors
    """The undetected floor, half a cell's diagonal beyond where a person's middle can be."""
    exact: Floors
    """Those of its cells whose distances are exact."""
    metres: dict[str, TimeMap]
    """Distance from the way in to everywhere. [m]"""


def active_devices(site: Site, catalogue: Catalogue, part: str) -> tuple[Device, ...]:
    """Detectors whose zone is active and can alarm, in the order of ids."""
    found = []
    heard = heard_in(site, part)
    for device in sorted(site.devices, key=lambda one: one.id):
        behaviour = heard.get(device.id)
        kind = catalogue.sheet(device.sheet).kind
        if behaviour is not None and behaviour.alarms and kind in ("movement-detector", "opening-contact"):
            found.append(device)
    return tuple(found)


def undetected(
    site: Site, catalogue: Catalogue, *, way: WayIn, side: Side, part: str = "full", others_allowed: int = 0
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
    side : str
        Which floor counts as watched.
    part : str, default "full"
        What is set.
    others_allowed : int, default 0
        0: until the first notices. 1: until a second one does, whichever the first was.

    Returns
    -------
    Undetected
        The floor and how far it goes.
    """
    devices = active_devices(site, catalogue, part)
    on_way_in = tuple(one for one in devices if opens_contact(one, way))
    counting = tuple(one for one in devices if one not in on_way_in)
    start = way_in_spot(site, way.opening)
    # Devices that are wired into one zone are one notice.
    groups = _by_zone(site, counting)
    left = others_allowed - len(_by_zone(site, on_way_in))
    return _undetected(site.bare, catalogue, start, groups=groups, side=side, left=left)


Groups = tuple[tuple[Device, ...], ...]


def _by_zone(site: Site, devices: tuple[Device, ...]) -> Groups:
    groups: dict[str, list[Device]] = {}
    zone_of = {device: zone.id for zone in site.zones for device in zone.devices}
    for one in devices:
        groups.setdefault(zone_of.get(one.id, one.id), []).append(one)
    return tuple(tuple(group) for group in groups.values())


@lru_cache(maxsize=1024)
def _undetected(
    house: Site, catalogue: Catalogue, start: Spot, *, groups: Groups, side: Side, left: int
) -> Undetected:
    """The same, with `left` notices that may still come; fewer than none: one has come at once."""
    if not len(standing_cells(house, start)):
        raise NotComputable("there is no floor of ours inside it")
    metres = walked_metres(house, start)
    walked = walked_floor(house)
    if left < 0:
        nothing = {storey: np.zeros_like(mask) for storey, mask in walked.items()}
        return Undetected(0.0, nothing, nothing, metres)
    counting = tuple(one for group in groups for one in group)
    floors = [_floors(house, catalogue, counting, side=side, start=start)]
    if left:
        runs = [tuple(one for group in groups if group is not skipped for one in group) for skipped in groups]
        floors += [_floors_again(house, catalogue, run, side=side, start=start) for run in runs]
    reached = union_of(floors)
    exact = {storey: mask & walked[storey] for storey, mask in reached.items()}
    return Undetected(farthest(metres, exact), reached, exact, metres)


@lru_cache(maxsize=512)
def _floors_again(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, side: Side, start: Spot
) -> Floors:
    """The floor that is reached before a second device has noticed: cores for whoever turns up anywhere."""
    regions = unwatched_regions(house, catalogue, devices, side=side)
    return regions.floors(regions.regions_at(start))


@lru_cache(maxsize=512)
def _floors(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, side: Side, start: Spot
) -> Floors:
    """The floor that is reached before any of some devices has noticed."""
    if side != "surely":
        return _floors_again(house, catalogue, devices, side=side, start=start)
    shapes = [shape_of(house, catalogue, one) for one in devices if _is_movement(catalogue, one)]
    doorways = [
        watched_floor(house, catalogue, one, side="surely")
        for one in devices
        if not _is_movement(catalogue, one)
    ]
    found = [shape for shape in shapes if shape is not None]
    return unnoticed_floor(house, found, closed=doorways, start=start)


def _is_movement(catalogue: Catalogue, device: Device) -> bool:
    return catalogue.sheet(device.sheet).kind == "movement-detector"


def undetected_rings(
    site: Site, catalogue: Catalogue, *, way: WayIn, side: Side, part: str = "full"
) -> dict[str, tuple[Ring, ...]]:
    """Outlines, by storey, of the floor that is reached before the first notice. [m]"""
    devices = active_devices(site, catalogue, part)
    if any(opens_contact(one, way) for one in devices):
        return {}
    regions = unwatched_regions(site.bare, catalogue, devices, side=side)
    return regions.rings(regions.regions_at(way_in_spot(site, way.opening)))


def reaches_space(found: Undetected, site: Site, space_id: str) -> float | None:
    """Distance at which the undetected floor first enters a space; None where it does not. [m]

    Raises
    ------
    NotComputable
        If no way on foot leads there, watched or not.
    """
    space = site.space(space_id)
    if space.storey not in found.floors:
        raise NotComputable(f"no way on foot leads to {space.name}")
    one = found.metres[space.storey]
    inside = _painted_space(site.bare, space.id)
    if not np.isfinite(one.times[inside]).any():
        raise NotComputable(f"no way on foot leads to {space.name}")
    return _least(one, found.exact[space.storey] & inside)


def reaches_spot(found: Undetected, site: Site, spot: Spot) -> float | None:
    """Distance at which somebody on undetected floor stands at a spot; None where nobody does. [m]

    Raises
    ------
    NotComputable
        If no way on foot leads there, watched or not.
    """
    at = standing_cells(site.bare, spot)
    if not len(at) or not np.isfinite(found.metres[spot.storey].times[at[:, 0], at[:, 1]]).any():
        raise NotComputable("no way on foot leads to it")
    one = found.metres[spot.storey]
    there: BoolArray = np.zeros(one.times.shape, dtype=np.bool_)
    there[at[:, 0], at[:, 1]] = True
    return _least(one, found.floors[spot.storey] & there)


def _least(one: TimeMap, cells: BoolArray) -> float | None:
    values = one.times[cells & np.isfinite(one.times)]
    return float(values.min()) if values.size else None


@lru_cache(maxsize=256)
def _painted_space(house: Site, space_id: str) -> BoolArray:
    space = house.space(space_id)
    return painted(grids_of(house)[space.storey], shapely.Polygon(space.outline_m))
