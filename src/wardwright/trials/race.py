"""The race from one way in to one goal: first notice, sounder, message, against reach and break."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.placement import standing
from wardwright.model.programme import Behaviour, Programme
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import Noticing, noticed_along
from wardwright.physics.walking.from_site import (
    Paces,
    Route,
    Spot,
    fastest_route,
    premises_network,
    way_in_spot,
)
from wardwright.trials.draws import Cases, Input, cases_of
from wardwright.trials.ways_in import WayIn
from wardwright.trials.zone_response import response_times

FloatArray = NDArray[np.float64]

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


class Race(NamedTuple):
    """Times of one race in every row of `cases`; infinite where a thing never happens. [s]"""

    way: WayIn
    route: Route
    cases: Cases
    first_notice: FloatArray
    first_watcher: str | None
    """Id of the device that notices first in the likely case."""
    first_index: int | None
    """The point of the route where it does."""
    sounder: FloatArray | None
    """None: there is no sounder."""
    message: FloatArray
    reached: FloatArray
    broken: FloatArray
    message_waits: bool
    """Whether the abort delay counted in the likely case."""


def paces_of(catalogue: Catalogue) -> Paces:
    """An intruder's likely paces, for choosing the fastest way."""
    return Paces(
        catalogue.figure("pace-hurried").value,
        catalogue.figure("stairs-share").value,
        catalogue.figure("pass-door").value,
    )


def quickest_paces(catalogue: Catalogue) -> Paces:
    """The paces of the design case: hurried at the high end, doors at the low end."""
    return Paces(
        catalogue.figure("pace-hurried").high,
        catalogue.figure("stairs-share").high,
        catalogue.figure("pass-door").low,
    )


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


def spot_of(site: Site, device: Device) -> Spot:
    """Where somebody stands to lay hands on a device."""
    at = standing(site, device)
    return Spot(at.storey, at.x_m, at.y_m)


def behaviour_of(site: Site, device: Device, part: str) -> Behaviour | None:
    """The behaviour of the zone that hears a device in one part; None where no active zone does."""
    for zone in sorted(site.zones, key=lambda one: one.number):
        if device.id in zone.devices:
            behaviour = site.behaviour(zone.behaviour)
            if part in zone.parts or behaviour.is_always_active:
                return behaviour
    return None


def route_to(site: Site, catalogue: Catalogue, way: WayIn, goal: Spot) -> Route | None:
    """The fastest way from a way in to a goal; None where there is none."""
    return _route(premises_network(site), way_in_spot(site, way.opening), goal, paces_of(catalogue))


@lru_cache(maxsize=4096)
def _route(network: object, start: Spot, goal: Spot, paces: Paces) -> Route | None:
    return fastest_route(network, start, goal, paces=paces)  # type: ignore[arg-type] # a network is hashable by identity


def watchers_on(
    site: Site, catalogue: Catalogue, way: WayIn, route: Route, *, part: str = "full"
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
        elif kind == "opening-contact" and isinstance(device.mount, OpeningMount):
            if device.mount.opening == way.opening.id:
                if way.manner == "opened":
                    found.append(Watcher(device, behaviour, None, -1))
                continue
            for leg in route.legs:
                if leg.kind == "door" and leg.subject == device.mount.opening:
                    opening = site.opening(device.mount.opening)
                    if opening.kind != "gap" and opening.habit == "shut":
                        found.append(Watcher(device, behaviour, None, leg.first))
                    break
    return tuple(found)


class _Progress(NamedTuple):
    """How far along a route each of its points is."""

    flat: FloatArray
    """Walked on the flat. [m]"""
    stairs: FloatArray
    """Walked on stairs. [m]"""
    doors: FloatArray
    """Doors opened. [-]"""


def _progress(route: Route) -> _Progress:
    n = len(route.points)
    flat, stairs, doors = np.zeros(n), np.zeros(n), np.zeros(n)
    for leg in route.legs:
        if leg.kind == "door":
            doors[leg.last :] += 1.0
            continue
        share = np.zeros(n)
        steps = np.hypot(*np.diff(route.points[leg.first : leg.last + 1], axis=0).T)
        whole = float(steps.sum())
        if whole > 0.0:
            share[leg.first + 1 : leg.last + 1] = np.cumsum(steps) / whole
        share[leg.last :] = 1.0
        target = flat if leg.kind == "floor" else stairs
        target += share * leg.length
    return _Progress(flat, stairs, doors)


def _clock(progress: _Progress, index: NDArray[np.int64], cases: Cases, *, climbs: bool) -> FloatArray:
    rows = cases.rows
    pace = rows["intruder's pace"]
    start = rows["climbing in"] if climbs else 0.0
    return (
        start
        + progress.flat[index] / pace
        + progress.stairs[index] / (pace * rows["pace on stairs"])
        + progress.doors[index] * rows["opening inside doors"]
    )


def _inputs(way: WayIn, watchers: Sequence[Watcher], catalogue: Catalogue) -> tuple[Input, ...]:
    named = {
        "intruder's pace": "pace-hurried",
        "pace on stairs": "stairs-share",
        "opening inside doors": "pass-door",
        "breaking the control unit": "break-control-unit",
        "sounder's start": "sounder-start",
        "message leaving": "message-time",
    }
    if way.climbs:
        named["climbing in"] = "climb-in"
    if watchers:
        named["radio to the control unit"] = "radio-delay"
    inputs = [Input(name, catalogue.figure(figure), "default") for name, figure in named.items()]
    for watcher in watchers:
        if watcher.noticing is not None:
            for what, figure in (("reach of", "detector-reach"), ("walked before", "walked-to-notice")):
                name = f"{what} {watcher.device.name}"
                inputs.append(Input(name, catalogue.figure(figure), "default"))
    return tuple(inputs)


def _noticed_index(
    watcher: Watcher, walked: FloatArray, cases: Cases
) -> tuple[NDArray[np.int64], FloatArray]:
    """Index on the route where a movement detector notices in each row, and 0 or infinity to add."""
    noticing = watcher.noticing
    if noticing is None:
        raise ValueError(watcher.device.id)
    reach = cases.rows[f"reach of {watcher.device.name}"]
    nearest = np.abs(reach[:, np.newaxis] - np.asarray(REACH_SHARES)).argmin(axis=1)
    noticed = np.asarray(noticing.noticed_m, dtype=np.float64)[nearest]
    entered = min(noticing.entered_m, float(np.min(noticing.noticed_m)))
    lag = np.where(np.isfinite(noticed), noticed - entered, 0.0)
    place = entered + lag * cases.rows[f"walked before {watcher.device.name}"]
    # Beyond the end of the route it is never walked; at its very end it still counts.
    missed = ~np.isfinite(noticed) | (place > walked[-1] + 1e-9)
    index = np.clip(np.searchsorted(walked, np.where(missed, 0.0, place)), 0, len(walked) - 1)
    return index, np.where(missed, np.inf, 0.0)


def race(site: Site, catalogue: Catalogue, way: WayIn, goal: Spot, *, part: str = "full") -> Race:
    """Run one race over all rows of its uncertain inputs.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets and figures.
    way : WayIn
        Where the intruder comes in; the clock starts when it is open or the glass is out.
    goal : Spot
        Where the intruder goes, by the fastest way.
    part : str, default "full"
        What is set.

    Returns
    -------
    Race
        All times. [s]

    Raises
    ------
    NotComputable
        If no way on foot leads from the way in to the goal.
    """
    route = route_to(site, catalogue, way, goal)
    if route is None:
        raise NotComputable(f"no way on foot from {way.opening.name} to the place asked for")
    watchers = watchers_on(site, catalogue, way, route, part=part)
    behaviours = tuple(watcher.behaviour for watcher in watchers)
    cases = cases_of(_inputs(way, watchers, catalogue))
    progress = _progress(route)
    walked = progress.flat + progress.stairs
    last = np.full(cases.count, len(walked) - 1)
    reached = _clock(progress, last, cases, climbs=way.climbs)
    broken = reached + cases.rows["breaking the control unit"]
    signals = np.full((len(watchers), cases.count), np.inf)
    indexes = np.zeros((len(watchers), cases.count), dtype=np.int64)
    for i, watcher in enumerate(watchers):
        if watcher.at_index == -1:
            signals[i] = 0.0
            continue
        if watcher.at_index is not None:
            indexes[i] = watcher.at_index
            signals[i] = _clock(progress, indexes[i], cases, climbs=way.climbs)
            continue
        indexes[i], missed = _noticed_index(watcher, walked, cases)
        signals[i] = _clock(progress, indexes[i], cases, climbs=way.climbs) + missed
    return _judged(
        site, catalogue, way, route, cases, watchers, behaviours, signals, indexes, reached, broken
    )


def _judged(  # noqa: PLR0913, PLR0917 - the pieces of one race, private to this file
    site: Site,
    catalogue: Catalogue,
    way: WayIn,
    route: Route,
    cases: Cases,
    watchers: tuple[Watcher, ...],
    behaviours: tuple[Behaviour, ...],
    signals: FloatArray,
    indexes: NDArray[np.int64],
    reached: FloatArray,
    broken: FloatArray,
) -> Race:
    never = np.full(cases.count, np.inf)
    counted = [i for i, behaviour in enumerate(behaviours) if behaviour.alarms]
    first_notice, alarm, due = never, never, never
    first: int | None = None
    waits = False
    if counted:
        kept = signals[counted]
        first_notice = kept.min(axis=0)
        first = counted[int(kept[:, 0].argmin())] if np.isfinite(first_notice[0]) else None
        heard = kept + cases.rows["radio to the control unit"]
        chosen = [behaviours[i] for i in counted]
        alarm, due = response_times(heard, chosen, site.programme)
        at_once = site.programme.model_copy(update={"abort_delay_s": 0.0})
        waits = bool(due[0] > response_times(heard, chosen, at_once)[1][0])
    sounder = alarm + cases.rows["sounder's start"] if has_sounder(site, catalogue) else None
    return Race(
        way=way,
        route=route,
        cases=cases,
        first_notice=first_notice,
        first_watcher=None if first is None else watchers[first].device.id,
        first_index=None if first is None else int(indexes[first, 0]),
        sounder=sounder,
        message=due + cases.rows["message leaving"],
        reached=reached,
        broken=broken,
        message_waits=waits,
    )


def programme_without_abort(programme: Programme) -> Programme:
    """The same programme with no abort delay."""
    return programme.model_copy(update={"abort_delay_s": 0.0})
