"""Which devices hear somebody on a way through the house, and the zones they belong to."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.programme import Behaviour
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import Noticing, noticed_along
from wardwright.physics.walking.from_site import Route
from wardwright.trials.ways_in import WayIn

REACH_SHARES = (0.8, 0.9, 1.0, 1.1, 1.2)
"""Shares of a detector's reach at which its noticing is worked out; a draw takes the nearest. [-]"""


class Watcher(NamedTuple):
    """A device that may notice on a route, and the zone that hears it."""

    device: Device
    behaviour: Behaviour
    noticing: Noticing | None
    """For a movement detector."""
    at_index: int | None
    """For a contact: the point of the route where its leaf is opened; -1: the way in itself."""


def devices_of(site: Site, catalogue: Catalogue, kind: str) -> tuple[Device, ...]:
    """All devices of one kind, in the order of their ids."""
    found = [one for one in site.devices if catalogue.sheet(one.sheet).kind == kind]
    return tuple(sorted(found, key=lambda one: one.id))


def control_units(site: Site, catalogue: Catalogue) -> tuple[Device, ...]:
    """The control units; a site usually has one."""
    return devices_of(site, catalogue, "control-unit")


def has_sounder(site: Site, catalogue: Catalogue) -> bool:
    """Whether anything sounds: a sounder, or one built into the control unit."""
    sheets = [catalogue.sheet(one.sheet) for one in site.devices]
    return any(s.kind == "sounder" or (s.control is not None and s.control.has_sounder) for s in sheets)


def behaviour_of(site: Site, device: Device, part: str) -> Behaviour | None:
    """The behaviour of the zone that hears a device in one part; None where no active zone does."""
    for zone in sorted(site.zones, key=lambda one: one.number):
        if device.id in zone.devices:
            behaviour = site.behaviour(zone.behaviour)
            if part in zone.parts or behaviour.is_always_active:
                return behaviour
    return None


def watchers_on(
    site: Site, catalogue: Catalogue, *, way: WayIn, route: Route, part: str = "full"
) -> tuple[Watcher, ...]:
    """Every device that might notice somebody on a route, in the order of ids."""
    found: list[Watcher] = []
    for device in sorted(site.devices, key=lambda one: one.id):
        behaviour = behaviour_of(site, device, part)
        if behaviour is None:
            continue
        kind = catalogue.sheet(device.sheet).kind
        if kind == "movement-detector":
            noticing = noticed_along(
                site,
                catalogue,
                device,
                points=route.points,
                storeys=route.storeys,
                clock=route.clock,
                reach_shares=REACH_SHARES,
            )
            if np.isfinite(noticing.noticed_m).any():
                found.append(Watcher(device, behaviour, noticing, None))
        elif kind == "opening-contact":
            index = _opened_at(site, device, way=way, route=route)
            if index is not None:
                found.append(Watcher(device, behaviour, None, index))
    return tuple(found)


def opens_contact(device: Device, way: WayIn) -> bool:
    """Whether coming in this way opens the leaf that a contact is on."""
    mount = device.mount
    return isinstance(mount, OpeningMount) and mount.opening == way.opening.id and way.manner == "opened"


def _opened_at(site: Site, device: Device, *, way: WayIn, route: Route) -> int | None:
    """The point of a route where a contact's leaf is opened; -1 for the way in itself; None: never."""
    if not isinstance(device.mount, OpeningMount):
        return None
    opening = site.opening(device.mount.opening)
    if opening.id == way.opening.id:
        return -1 if opens_contact(device, way) else None
    if opening.kind == "gap" or opening.habit != "shut":
        return None
    return next((leg.first for leg in route.legs if leg.kind == "door" and leg.subject == opening.id), None)
