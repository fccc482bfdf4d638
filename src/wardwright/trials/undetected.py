"""How far somebody gets from a way in before anything notices, and before a second thing does.

The floor that a detector watches is taken away; what still hangs together with the way in is the undetected
floor. Distances over it are those of the straight way as if nothing watched: never too long, so any error is
toward an intruder who gets there sooner.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.trials.alarm import DETECTORS
from wardwright.trials.barriers import (
    Side,
    standing_cells,
    unwatched_regions,
    watched_floor,
)
from wardwright.trials.floors import Regions
from wardwright.trials.independent import notices_of
from wardwright.trials.stacked_floors import StackedFloors
from wardwright.trials.undetected_floor import Undetected, undetected_in
from wardwright.trials.unnoticed import GuardedFloor, shape_of
from wardwright.trials.watchers import at_the_way_in, heard_in
from wardwright.trials.ways_in import WayIn


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
    on_way_in, groups = _notices(site, catalogue, way, part=part, confirms=others_allowed > 0)
    start = way_in_spot(site, way.opening)
    left = others_allowed - on_way_in
    return _undetected(site.bare, catalogue, start, groups=groups, side=side, left=left)


Groups = tuple[tuple[Device, ...], ...]


@lru_cache(maxsize=256)
def _notices(
    site: Site, catalogue: Catalogue, way: WayIn, *, part: str, confirms: bool
) -> tuple[int, Groups]:
    """How many notices coming in gives at once, and the devices that may give more, those of one notice together.

    Devices of one zone, or of one group of zones, are one notice; where one is to confirm another, those that confirm
    nothing are left out.
    """
    devices = active_devices(site, catalogue, part)
    names = notices_of(site, devices)
    if confirms:
        devices = tuple(one for one in devices if names[one.id] is not None)
    on_way_in = at_the_way_in(site, catalogue, devices, way=way)
    told = {names[one.id] or one.id for one in on_way_in}
    # A zone that has told already gives no second, independent notice.
    counting = tuple(one for one in devices if (names[one.id] or one.id) not in told)
    return len(_by_notice(names, on_way_in)), _by_notice(names, counting)


def _by_notice(names: Mapping[str, str | None], devices: tuple[Device, ...]) -> Groups:
    groups: dict[str, list[Device]] = {}
    for one in devices:
        groups.setdefault(names[one.id] or one.id, []).append(one)
    return tuple(tuple(group) for group in groups.values())


@lru_cache(maxsize=1024)
def _undetected(
    house: Site, catalogue: Catalogue, start: Spot, *, groups: Groups, side: Side, left: int
) -> Undetected:
    """The same, with `left` notices that may still come; fewer than none: one has come at once."""
    if not len(standing_cells(house, start)):
        raise NotComputable("there is no floor of ours inside it")
    if left < 0:
        return undetected_in(house, start, ())
    if side == "surely":
        floors = [_guarded_by(house, catalogue, groups).unnoticed_from(start)]
    else:
        floors = _floors(_regions_without(house, catalogue, (groups,), side=side), start)
    if left:
        runs = tuple(tuple(group for group in groups if group is not skipped) for skipped in groups)
        floors += _floors(_regions_without(house, catalogue, runs, side=side), start)
    return undetected_in(house, start, tuple(floors))


@lru_cache(maxsize=64)
def _regions_without(
    house: Site, catalogue: Catalogue, runs: tuple[Groups, ...], *, side: Side
) -> tuple[Regions, ...]:
    """What is left in each of some runs: cores are those for whoever turns up anywhere."""
    counting = [tuple(one for group in run for one in group) for run in runs]
    return tuple(unwatched_regions(house, catalogue, devices, side=side) for devices in counting)


def _floors(regions: Sequence[Regions], start: Spot) -> list[StackedFloors]:
    """What is reached from one place in each of some runs."""
    return [one.floors(one.regions_at(start)) for one in regions]


@lru_cache(maxsize=64)
def _guarded_by(house: Site, catalogue: Catalogue, groups: Groups) -> GuardedFloor:
    devices = [one for group in groups for one in group]
    shapes = [shape_of(house, catalogue, one) for one in devices if _is_movement(catalogue, one)]
    doorways = [
        watched_floor(house, catalogue, one, side="surely")
        for one in devices
        if not _is_movement(catalogue, one)
    ]
    return GuardedFloor(house, [shape for shape in shapes if shape is not None], closed=doorways)


def _is_movement(catalogue: Catalogue, device: Device) -> bool:
    return catalogue.sheet(device.sheet).kind == "movement-detector"
