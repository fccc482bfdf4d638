"""One thing broken, blocked or without power: what still has power, sounds, sends and notices, and for how long.

A walk over power (mains, batteries, cells), links (what the control unit carries) and paths (broadband, mobile data).
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache
from typing import NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.estimate import Estimate
from wardwright.model.fixture import Outlet
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.rules.kit import devices_of
from wardwright.rules.power.standby_shorter_than_the_grade_asks import standby_hours
from wardwright.trials.alarm import Heard, alarm_of
from wardwright.trials.watchers import control_units, notices_on
from wardwright.trials.ways_in import WayIn, ways_in
from wardwright.trials.ways_on_foot import spot_of

SAME_ROUTER_M = 1.0
"""A router that is drawn as a point and as a device within this distance is one router. [m] (assumption)"""
FOR_GOOD = math.inf
"""It does not hang on the mains. [h]"""


class Hours(NamedTuple):
    """How long a thing goes on without mains, with an old battery and with a new one; infinite: for good. [h]"""

    low: float
    high: float
    unknown: tuple[str, ...] = ()
    """Names of the things whose sheets are silent; then the hours are not known."""


class Router(NamedTuple):
    """A router, as a device or as a point of the house."""

    id: str
    name: str
    device: Device | None
    outlet: Outlet | None


class MessagePath(NamedTuple):
    """One way in which a message leaves the house."""

    transmitter: Device
    by: str
    """`broadband` or `mobile`."""


def hours_of(device: Device, catalogue: Catalogue, *, pack: str) -> Hours:
    """How long a device goes on when the mains fails.

    Parameters
    ----------
    device : Device
        Any device.
    catalogue : Catalogue
        Sheets and figures.
    pack : str
        The rule pack, for the allowance for ageing.

    Returns
    -------
    Hours
        For good on cells; not known where a mains device's sheet says nothing of a battery.
    """
    sheet = catalogue.sheet(device.sheet)
    if sheet.power != "mains" and sheet.standby is None:
        # A control unit, a router or a message path on cells is none: its sheet is silent about its power.
        return Hours(0.0, 0.0, (device.name,)) if _is_fed(sheet) else Hours(FOR_GOOD, FOR_GOOD)
    hours: Estimate | None = standby_hours(sheet, catalogue, pack=pack)
    if hours is None:
        return Hours(0.0, 0.0, () if sheet.kind == "router" else (device.name,))
    return Hours(hours.low, hours.high)


def _is_fed(sheet: DeviceSheet) -> bool:
    return sheet.kind in ("control-unit", "router", "transmitter") and sheet.cells is None


def routers(site: Site, catalogue: Catalogue) -> tuple[Router, ...]:
    """All routers by id: devices, and points of the house that no device stands for."""
    found = [Router(one.id, one.name, one, None) for one, _ in devices_of(site, catalogue, "router")]
    places = [standing(site, one.device) for one in found if one.device is not None]
    for outlet in site.outlets:
        is_drawn_twice = any(
            at.storey == outlet.storey
            and math.hypot(at.x_m - outlet.at_m[0], at.y_m - outlet.at_m[1]) <= SAME_ROUTER_M
            for at in places
        )
        if outlet.kind == "router" and not is_drawn_twice:
            found.append(Router(outlet.id, outlet.name, None, outlet))
    return tuple(sorted(found, key=lambda one: one.id))


def message_paths(site: Site, catalogue: Catalogue) -> tuple[MessagePath, ...]:
    """All ways in which a message leaves, by the transmitters' ids."""
    return tuple(
        MessagePath(device, by)
        for device, sheet in devices_of(site, catalogue, "transmitter")
        if sheet.transmitter is not None
        for by in sheet.transmitter.paths
    )


def together(*each: Hours) -> Hours:
    """How long all of some things go on: as long as the first that ends."""
    unknown = tuple(dict.fromkeys(name for one in each for name in one.unknown))
    return Hours(min(one.low for one in each), min(one.high for one in each), unknown)


def any_of(each: tuple[Hours, ...]) -> Hours:
    """How long at least one of some things goes on."""
    known = [one for one in each if not one.unknown]
    if not known:
        return Hours(0.0, 0.0, tuple(dict.fromkeys(name for one in each for name in one.unknown)))
    return Hours(max(one.low for one in known), max(one.high for one in known))


def message_hours(site: Site, catalogue: Catalogue, *, unit: Device, but: str = "") -> Hours | None:
    """How long messages still leave when the mains fails.

    Parameters
    ----------
    site : Site
        The devices and routers.
    catalogue : Catalogue
        Sheets.
    unit : Device
        The control unit, which every message comes from.
    but : str, default ""
        Id of a transmitter or router that is lost as well.

    Returns
    -------
    Hours or None
        None where there is no way left on which a message could leave.
    """
    hours: Callable[[Device], Hours] = lambda device: hours_of(  # noqa: E731 - one word for a long call
        device, catalogue, pack=site.place.rule_pack
    )
    known = [one for one in routers(site, catalogue) if one.id != but]
    found = []
    for path in message_paths(site, catalogue):
        if path.transmitter.id == but:
            continue
        own = together(hours(unit), hours(path.transmitter))
        if path.by == "mobile":
            found.append(own)
        elif known:
            # A router that is drawn as a point has no sheet: it is as found, without a battery.
            by_router = [Hours(0.0, 0.0) if one.device is None else hours(one.device) for one in known]
            found.append(together(own, any_of(tuple(by_router))))
    return any_of(tuple(found)) if found else None


def is_self_powered(device: Device, catalogue: Catalogue) -> bool:
    """Whether a sounder sounds by itself when it loses the control unit."""
    sheet = catalogue.sheet(device.sheet)
    return sheet.sounder is not None and sheet.sounder.is_self_powered


class Noticing(NamedTuple):
    """Which devices notice on each way in, on the fastest way to the control unit."""

    goal: Spot
    heard: Heard
    by_way: tuple[tuple[WayIn, frozenset[str]], ...]


def noticing(site: Site, catalogue: Catalogue) -> Noticing | None:
    """Who notices on which way in; None where there is no control unit.

    Parameters
    ----------
    site : Site
        The house, its detectors and its zones.
    catalogue : Catalogue
        Sheets and figures.

    Returns
    -------
    Noticing or None
        Of the devices that alarm while nobody is in; others notice for nothing.
    """
    units = control_units(site, catalogue)
    if not units:
        return None
    goal, heard = spot_of(site, units[0]), alarm_of(site, catalogue).heard
    return _noticing(site.bare, catalogue, heard, goal=goal)


@lru_cache(maxsize=32)
def _noticing(house: Site, catalogue: Catalogue, heard: Heard, *, goal: Spot) -> Noticing:
    by_way = tuple(
        (
            way,
            frozenset(
                device.id
                for device, behaviour in heard
                if behaviour.alarms and notices_on(house, catalogue, device, way=way, goal=goal) is not None
            ),
        )
        for way in ways_in(house, catalogue)[0]
    )
    return Noticing(goal, heard, by_way)


def no_longer_noticed(of: Noticing, lost: str) -> tuple[WayIn, ...]:
    """Ways in that one device alone notices on, by opening and manner."""
    return tuple(way for way, by in of.by_way if by == {lost})
