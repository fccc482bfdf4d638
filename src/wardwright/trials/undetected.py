"""How far somebody gets from a way in before anything notices, and before a second thing does.

The floor that a detector watches is taken away; what still hangs together with the way in is the undetected
floor. Distances over it are those of the straight way as if nothing watched: never too long, so any error is
toward an intruder who gets there sooner.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
import shapely

from wardwright.errors import NotComputable
from wardwright.geometry.raster import BoolArray, FloatArray, painted
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.record import Ring
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, TimeMap, way_in_spot
from wardwright.trials.alarm import DETECTORS
from wardwright.trials.barriers import (
    Side,
    exact_metres,
    grids_of,
    standing_cells,
    union_of,
    unwatched_regions,
    walked_floor,
    walked_metres,
    watched_floor,
)
from wardwright.trials.stacked_floors import StackedFloors, farthest, stacked
from wardwright.trials.unnoticed import shape_of, unnoticed_floor
from wardwright.trials.watchers import at_the_way_in, heard_in
from wardwright.trials.ways_in import WayIn


@dataclass(frozen=True)
class Undetected:
    """What can be reached from one way in before a number of devices have noticed."""

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
        return max((farthest(metres, run) for run in self.runs), default=0.0)

    @cached_property
    def floors(self) -> StackedFloors:
        """The undetected floor, half a cell's diagonal beyond where a person's middle can be."""
        if not self.runs:
            return stacked(walked_floor(self.house).stack, {})
        return self.runs[0] if len(self.runs) == 1 else union_of(self.runs)

    @cached_property
    def exact(self) -> StackedFloors:
        """Those of its cells whose distances are exact."""
        return StackedFloors(self.floors.stack, self.floors.cells & walked_floor(self.house).cells)


@lru_cache(maxsize=64)
def active_devices(site: Site, catalogue: Catalogue, part: str) -> tuple[Device, ...]:
    """Detectors whose zone is active and can alarm, in the order of ids."""
    found = []
    heard = heard_in(site, part)
    for device in sorted(site.devices, key=lambda one: one.id):
        behaviour = heard.get(device.id)
        kind = catalogue.sheet(device.sheet).kind
        if behaviour is not None and behaviour.alarms and kind in DETECTORS:
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
    on_way_in, groups = _notices(site, catalogue, way, part=part)
    start = way_in_spot(site, way.opening)
    left = others_allowed - on_way_in
    return _undetected(site.bare, catalogue, start, groups=groups, side=side, left=left)


Groups = tuple[tuple[Device, ...], ...]


@lru_cache(maxsize=256)
def _notices(site: Site, catalogue: Catalogue, way: WayIn, *, part: str) -> tuple[int, Groups]:
    """How many notices coming in gives at once, and the devices that may give more, those of one notice together.

    Devices that are wired into one zone are one notice.
    """
    devices = active_devices(site, catalogue, part)
    on_way_in = at_the_way_in(site, catalogue, devices, way=way)
    counting = tuple(one for one in devices if one not in on_way_in)
    return len(_by_zone(site, on_way_in)), _by_zone(site, counting)


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
    if left < 0:
        return Undetected(house, start, ())
    counting = tuple(one for group in groups for one in group)
    floors = [_floors(house, catalogue, counting, side=side, start=start)]
    if left:
        runs = [tuple(one for group in groups if group is not skipped for one in group) for skipped in groups]
        floors += [_floors_again(house, catalogue, run, side=side, start=start) for run in runs]
    return Undetected(house, start, tuple(floors))


@lru_cache(maxsize=512)
def _floors_again(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, side: Side, start: Spot
) -> StackedFloors:
    """The floor that is reached before a second device has noticed: cores for whoever turns up anywhere."""
    regions = unwatched_regions(house, catalogue, devices, side=side)
    return regions.floors(regions.regions_at(start))


@lru_cache(maxsize=512)
def _floors(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, side: Side, start: Spot
) -> StackedFloors:
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
    if at_the_way_in(site, catalogue, devices, way=way):
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
    if not np.isfinite(_metres_in(found.house, found.start, space_id)).any():
        raise NotComputable(f"no way on foot leads to {space.name}")
    return _least(_metres_in(found.house, found.start, space_id), found.exact[space.storey])


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
