"""Which devices hear somebody on a way through the house, and the zones they belong to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, OpeningMount
from wardwright.model.programme import Behaviour, Zone
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import Walks, noticed_along
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.rules import kit
from wardwright.rules.at_the_opening import notices_at_the_opening
from wardwright.trials.ways_in import WayIn
from wardwright.trials.ways_on_foot import on_foot, starts_of, walks_from

REACH_SHARES = (0.8, 0.9, 1.0, 1.1, 1.2)
"""Shares of a detector's reach at which its noticing is worked out; a draw takes the nearest. [-]"""


class Noticed(NamedTuple):
    """How a movement detector notices on one way, as plain numbers, so that a race can be remembered by it."""

    entered_m: float
    """Walked before the high-side shape is first entered. [m]"""
    noticed_m: tuple[float, ...]
    """Walked before it notices, at each of `REACH_SHARES`. [m]"""


class Watcher(NamedTuple):
    """A device that may notice on a route, and the zone that hears it."""

    device: Device
    behaviour: Behaviour
    noticing: Noticed | None
    """For a movement detector."""
    at_index: int | None
    """For a device at an opening: the point of the route where it is opened or broken; -1: the way in itself."""


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
        told = zone.behaviour if part in (None, kit.FULL_SET) else zone.behaviour_part_set
        behaviour = by_id[told or zone.behaviour]
        if part is None or part in zone.parts or behaviour.is_always_active:
            for device in zone.devices:
                found.setdefault(device, behaviour)
    return found


def watchers_on(
    house: Site,
    catalogue: Catalogue,
    heard: Sequence[tuple[Device, Behaviour]],
    *,
    way: WayIn,
    goal: Spot,
) -> tuple[Watcher, ...]:
    """Every device that might notice somebody on the fastest way to a goal.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets and figures.
    heard : sequence of (Device, Behaviour)
        The detectors that are heard, with how their zones behave, in the order of ids.
    way : WayIn
        Where the intruder comes in.
    goal : Spot
        Where the intruder goes.

    Returns
    -------
    tuple of Watcher
        In the same order.
    """
    found: list[Watcher] = []
    for device, behaviour in heard:
        notices = notices_on(house, catalogue, device, way=way, goal=goal)
        if notices is not None:
            found.append(Watcher(device, behaviour, *notices))
    return tuple(found)


@lru_cache(maxsize=4096)
def notices_on(
    house: Site, catalogue: Catalogue, device: Device, *, way: WayIn, goal: Spot
) -> tuple[Noticed | None, int | None] | None:
    """Where one device notices on the fastest way to a goal, as a `Watcher` has it; None: nowhere."""
    start = way_in_spot(house, way.opening)
    if catalogue.sheet(device.sheet).kind == "movement-detector":
        usual = starts_of(house, catalogue)
        starts = usual if start in usual else (start,)
        noticing = _noticings(house, catalogue, goal, starts=starts).of(device).get(start)
        return None if noticing is None else (noticing, None)
    index = _opened_at(house, catalogue, device, way=way, start=start, goal=goal)
    return None if index is None else (None, index)


def notice_together(house: Site, catalogue: Catalogue, devices: Sequence[Device], *, goal: Spot) -> None:
    """Work out at once how movement detectors notice on all ways to a goal, before they are asked one by one.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets and figures.
    devices : sequence of Device
        Movement detectors.
    goal : Spot
        Where the ways go.
    """
    _noticings(house, catalogue, goal, starts=starts_of(house, catalogue)).know(devices)


_MOST_KNOWN = 256
# Detectors that are remembered for one goal. [-]


class _Noticings:
    """How movement detectors notice on the ways to one goal: on all ways at once, since a move changes all."""

    def __init__(self, house: Site, catalogue: Catalogue, ways: tuple[tuple[Spot, ...], Walks]) -> None:
        self._house, self._catalogue = house, catalogue
        self._starts, self._walks = ways
        self._found: dict[Device, dict[Spot, Noticed]] = {}

    def know(self, devices: Sequence[Device]) -> None:
        """Work out those that are not known yet, in one pass."""
        new = [one for one in dict.fromkeys(devices) if one not in self._found]
        if len(self._found) > _MOST_KNOWN:
            self._found.clear()
            new = list(dict.fromkeys(devices))
        noticings = noticed_along(
            self._house, self._catalogue, new, walks=self._walks, reach_shares=REACH_SHARES
        )
        for device, each in zip(new, noticings, strict=True):
            self._found[device] = {
                start: Noticed(one.entered_m, tuple(one.noticed_m.tolist()))
                for start, one in zip(self._starts, each, strict=True)
                if np.isfinite(one.noticed_m).any()
            }

    def of(self, device: Device) -> dict[Spot, Noticed]:
        """By where one comes from; the ways that are not there it does not notice on."""
        if device not in self._found:
            self.know([device])
        return self._found[device]


@lru_cache(maxsize=64)
def _noticings(house: Site, catalogue: Catalogue, goal: Spot, *, starts: tuple[Spot, ...]) -> _Noticings:
    return _Noticings(house, catalogue, walks_from(house, catalogue, goal, starts=starts))


def at_the_way_in(
    site: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, way: WayIn
) -> tuple[Device, ...]:
    """Those of some devices that notice at once that somebody comes in."""
    house, opening, manner = site.bare, way.opening, way.manner
    return tuple(
        one
        for one in devices
        if notices_at_the_opening(house, catalogue, one, opening=opening, manner=manner)
    )


def _opened_at(
    house: Site, catalogue: Catalogue, device: Device, *, way: WayIn, start: Spot, goal: Spot
) -> int | None:
    """The point of a way where a device at an opening notices; -1 for the way in itself; None: never."""
    if notices_at_the_opening(house, catalogue, device, opening=way.opening, manner=way.manner):
        return -1
    # Doors inside are opened, not forced: of them only contacts tell.
    if catalogue.sheet(device.sheet).kind != "opening-contact" or not isinstance(device.mount, OpeningMount):
        return None
    name = device.mount.opening
    if name == way.opening.id:
        return None
    found = on_foot(house, catalogue, start=start, goal=goal)
    index = None if found is None else found.passes.get(name)
    opening = None if index is None else house.opening(name)
    is_shut = opening is not None and opening.kind != "gap" and opening.habit == "shut"
    return index if is_shut else None
