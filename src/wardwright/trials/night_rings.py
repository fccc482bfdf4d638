"""Trips from bed played on the control unit with the night part set: which device rings, and when.

The likely case only, as for coming in. What the radio needs is left out.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.household import Person
from wardwright.model.programme import Behaviour
from wardwright.model.site import Site
from wardwright.rules.kit import NIGHT
from wardwright.trials.household_walk import leaf_of, walk
from wardwright.trials.leaves_between import states_of
from wardwright.trials.leaves_opened import Leaves, doors_to_open
from wardwright.trials.night_trips import NightTrip
from wardwright.trials.night_walk import Moment, first_noticed, steps_on, walked_until
from wardwright.trials.paces import walking_pace
from wardwright.trials.trip_floor import Ends
from wardwright.trials.watchers import heard_in
from wardwright.trials.zone_response import Signal, respond


class Ring(NamedTuple):
    """An alarm on a trip."""

    device: Device
    """The one that gives it, or whose entry time ends."""
    behaviour: Behaviour
    moment: Moment
    """When that device notices, or its leaf is opened."""
    waits_s: float
    """From then on until the alarm: the entry time, or nothing. [s]"""


@lru_cache(maxsize=128)
def active_in(site: Site, part: str) -> tuple[tuple[Device, Behaviour], ...]:
    """The devices that give an alarm while a part is set, with how their zones behave, by id.

    Parameters
    ----------
    site : Site
        The site.
    part : str
        Id of the part.

    Returns
    -------
    tuple of (Device, Behaviour)
        Empty where the site has no such part.
    """
    if all(one.id != part for one in site.parts):
        return ()
    heard = heard_in(site, part)
    return tuple(
        (device, heard[device.id])
        for device in sorted(site.devices, key=lambda one: one.id)
        if device.id in heard and heard[device.id].alarms
    )


def clock_of(catalogue: Catalogue, person: Person, walked: tuple[float, float, float]) -> float:
    """How long somebody needs for so many metres on the flat, metres on stairs, and leaves, without hurry. [s]"""
    figure, (flat, stairs, doors) = catalogue.figure, walked
    pace = walking_pace(catalogue, person.pace).value
    return flat / pace + stairs / (pace * figure("stairs-share").value) + doors * figure("pass-door").value


def unset_s(site: Site, catalogue: Catalogue, trip: NightTrip) -> float:
    """When the alarm is unset on a trip; infinite where nobody unsets it. [s]"""
    if trip.goal != "out":
        return math.inf
    if trip.ends is None:
        return catalogue.figure("keyfob-press").value
    if trip.control is None:
        return math.inf
    steps = steps_on(site.bare, catalogue, trip.ends)
    if steps is None:
        return math.inf
    there = walked_until(steps, Moment(len(steps.flat) - 1))
    return clock_of(catalogue, trip.person, there) + catalogue.figure("code-entry").value


def noticed_by(
    site: Site,
    catalogue: Catalogue,
    trip: NightTrip,
    *,
    leaves: Leaves = "night",
    kept_shut: frozenset[str] = frozenset(),
) -> tuple[tuple[Device, Behaviour, Moment], ...]:
    """The devices of the night part that notice on a trip, each with its first moment, by id.

    Parameters
    ----------
    site : Site
        The house, its devices and its zones.
    catalogue : Catalogue
        Sheets and figures.
    trip : NightTrip
        The trip.
    leaves : {"night", "most"}, default "night"
        How leaves stand that nobody opens; with `most` a leaf that is ever shut is opened, too.
    kept_shut : frozenset of str, default none
        Ids of openings whose leaves are taken to be shut whatever their habit.

    Returns
    -------
    tuple of (Device, Behaviour, Moment)
        Movement detectors, and contacts on leaves that are opened.
    """
    if trip.ends is None:
        return ()
    house, ends = site.bare, trip.ends
    route = walk(house, catalogue, ends.start, goal=ends.goal)
    if route is None:
        return ()
    opened = _opened_on(house, catalogue, ends, leaves=leaves, kept_shut=kept_shut)
    found = []
    for device, behaviour in active_in(site, NIGHT):
        kind = catalogue.sheet(device.sheet).kind
        moment: Moment | None = None
        if kind == "movement-detector":
            moment = first_noticed(house, catalogue, device, ends=ends, leaves=leaves, kept_shut=kept_shut)
        elif kind == "opening-contact":
            leaf = leaf_of(device)
            moment = Moment(opened[leaf]) if leaf in opened else None
            # A door is opened at the end of a walk to it that nobody unsets the alarm on.
            if leaf == trip.place.id and trip.goal == "out" and trip.control is None:
                moment = Moment(len(route.points) - 1)
        if moment is not None:
            found.append((device, behaviour, moment))
    return tuple(found)


@lru_cache(maxsize=512)
def _opened_on(
    house: Site, catalogue: Catalogue, ends: Ends, *, leaves: Leaves, kept_shut: frozenset[str]
) -> dict[str, int]:
    """The leaves that are opened on a walk, each with the point at which it is."""
    route = walk(house, catalogue, ends.start, goal=ends.goal)
    if route is None:
        return {}
    if leaves != "most":
        return {door: point for point, door in doors_to_open(house, route, leaves, kept_shut=kept_shut)}
    return {
        leg.subject: leg.first
        for leg in reversed(route.legs)
        if leg.kind == "door" and leg.subject and "shut" in states_of(house.opening(leg.subject))
    }


@lru_cache(maxsize=1024)
def ring_on(
    site: Site,
    catalogue: Catalogue,
    trip: NightTrip,
    *,
    leaves: Leaves = "night",
    kept_shut: frozenset[str] = frozenset(),
) -> Ring | None:
    """The alarm that a trip gives.

    Parameters
    ----------
    site : Site
        The house, its devices, its zones and its programme.
    catalogue : Catalogue
        Sheets and figures.
    trip : NightTrip
        The trip.
    leaves : {"night", "most"}, default "night"
        How leaves stand that nobody opens.
    kept_shut : frozenset of str, default none
        Ids of openings whose leaves are taken to be shut whatever their habit.

    Returns
    -------
    Ring or None
        None: it does not ring.
    """
    noticed = noticed_by(site, catalogue, trip, leaves=leaves, kept_shut=kept_shut)
    steps = None if trip.ends is None else steps_on(site.bare, catalogue, trip.ends)
    if not noticed or steps is None:
        return None
    until = unset_s(site, catalogue, trip)
    times = {
        device.id: clock_of(catalogue, trip.person, walked_until(steps, moment))
        for device, _, moment in noticed
    }
    signals = [Signal(times[one.id], behaviour, one.id) for one, behaviour, _ in noticed]
    answer = respond([one for one in signals if one.time_s < until], site.programme)
    if answer.alarm_s >= until:
        return None
    by = next(one.subject for one in answer.timeline if one.what in ("alarm", "entry time ends"))
    device, behaviour, moment = next(one for one in noticed if one[0].id == by)
    return Ring(device, behaviour, moment, answer.alarm_s - times[by])
