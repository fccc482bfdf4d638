"""Which devices hear somebody on a way through the house, and the zones they belong to."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, OpeningMount
from wardwright.model.opening import Opening
from wardwright.model.programme import Behaviour, Zone
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import noticed_along
from wardwright.physics.walking.from_site import Spot
from wardwright.rules import kit
from wardwright.trials.ways_in import WayIn, once_in
from wardwright.trials.ways_on_foot import route_to

REACH_SHARES = (0.8, 0.9, 1.0, 1.1, 1.2)
"""Shares of a detector's reach at which its noticing is worked out; a draw takes the nearest. [-]"""


class Noticed(NamedTuple):
    """How a movement detector notices on one way, as plain numbers, so that a race can be remembered by it."""

    entered_m: float
    """Walked before the high-side shape is first entered. [m]"""
    surely_m: float
    """Walked before the core is reached. [m]"""
    noticed_m: tuple[float, ...]
    """Walked before it notices, at each of `REACH_SHARES`. [m]"""


class Watcher(NamedTuple):
    """A device that may notice on a route, and the zone that hears it."""

    device: Device
    behaviour: Behaviour
    noticing: Noticed | None
    """For a movement detector."""
    at_index: int | None
    """For a contact: the point of the route where its leaf is opened; -1: the way in itself."""


def devices_of(site: Site, catalogue: Catalogue, kind: DeviceKind) -> tuple[Device, ...]:
    """All devices of one kind, in the order of their ids."""
    return tuple(device for device, _ in kit.devices_of(site, catalogue, kind))


def control_units(site: Site, catalogue: Catalogue) -> tuple[Device, ...]:
    """The control units; a site usually has one."""
    return devices_of(site, catalogue, "control-unit")


def has_sounder(site: Site, catalogue: Catalogue) -> bool:
    """Whether anything sounds: a sounder, or one built into the control unit."""
    sheets = [catalogue.sheet(one.sheet) for one in site.devices]
    return any(s.kind == "sounder" or (s.control is not None and s.control.has_sounder) for s in sheets)


def heard_in(site: Site, part: str) -> Mapping[str, Behaviour]:
    """The behaviour of the zone that hears each device in one part; those that none hears are not there."""
    # A site that names its parts otherwise has no such part: then all its zones count.
    known = part if any(one.id == part for one in site.parts) else None
    return _heard_in(site.zones, site.behaviours, known)


@lru_cache(maxsize=256)
def _heard_in(
    zones: tuple[Zone, ...], behaviours: tuple[Behaviour, ...], part: str | None
) -> dict[str, Behaviour]:
    by_id = {one.id: one for one in behaviours}
    found: dict[str, Behaviour] = {}
    for zone in sorted(zones, key=lambda one: one.number):
        behaviour = by_id[zone.behaviour]
        if part is None or part in zone.parts or behaviour.is_always_active:
            for device in zone.devices:
                found.setdefault(device, behaviour)
    return found


def watchers_on(
    site: Site, catalogue: Catalogue, *, way: WayIn, goal: Spot, part: str = "full"
) -> tuple[Watcher, ...]:
    """Every device that might notice somebody on the fastest way to a goal, in the order of ids."""
    found: list[Watcher] = []
    heard = heard_in(site, part)
    for device in sorted(site.devices, key=lambda one: one.id):
        behaviour = heard.get(device.id)
        if behaviour is None:
            continue
        kind = catalogue.sheet(device.sheet).kind
        if kind == "movement-detector":
            noticing = _noticing(site.bare, catalogue, device, way=once_in(way), goal=goal)
            if noticing is not None:
                found.append(Watcher(device, behaviour, noticing, None))
        elif kind == "opening-contact":
            index = _opened_at(site.bare, catalogue, device, way=way, goal=goal)
            if index is not None:
                found.append(Watcher(device, behaviour, None, index))
    return tuple(found)


@lru_cache(maxsize=4096)
def _noticing(house: Site, catalogue: Catalogue, device: Device, *, way: WayIn, goal: Spot) -> Noticed | None:
    """How one movement detector notices on one way; None where it never may."""
    route = route_to(house, catalogue, way=way, goal=goal)
    if route is None:
        return None
    noticing = noticed_along(
        house,
        catalogue,
        device,
        points=route.points,
        storeys=route.storeys,
        clock=route.clock,
        reach_shares=REACH_SHARES,
    )
    if not np.isfinite(noticing.noticed_m).any():
        return None
    noticed = tuple(float(value) for value in noticing.noticed_m)
    return Noticed(float(noticing.entered_m), float(noticing.surely_m), noticed)


def is_on(device: Device, opening: Opening) -> bool:
    """Whether a device is fixed to an opening."""
    mount = device.mount
    return isinstance(mount, OpeningMount) and mount.opening == opening.id


def opens_contact(device: Device, way: WayIn) -> bool:
    """Whether coming in this way opens the leaf that a contact is on: one that stands open tells nothing."""
    is_shut = way.opening.habit == "shut" and way.opening.kind != "gap"
    return is_on(device, way.opening) and way.manner == "opened" and is_shut


def _opened_at(house: Site, catalogue: Catalogue, device: Device, *, way: WayIn, goal: Spot) -> int | None:
    """The point of a way where a contact's leaf is opened; -1 for the way in itself; None: never."""
    if not isinstance(device.mount, OpeningMount):
        return None
    opening = house.opening(device.mount.opening)
    if opening.id == way.opening.id:
        return -1 if opens_contact(device, way) else None
    if opening.kind == "gap" or opening.habit != "shut":
        return None
    route = route_to(house, catalogue, way=way, goal=goal)
    legs = () if route is None else route.legs
    return next((leg.first for leg in legs if leg.kind == "door" and leg.subject == opening.id), None)
