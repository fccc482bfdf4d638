"""Somebody of the household comes in: what notices when, and whether the alarm is unset before it rings.

The likely case only. What the radio needs is left out, since it is the same for every device. A movement detector is
taken to notice as soon as it possibly may.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fabric import Space
from wardwright.model.floor import lets_through
from wardwright.model.household import Person
from wardwright.model.placement import sides_of_opening, space_at
from wardwright.model.programme import Behaviour
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Route, Spot
from wardwright.rules.kit import FULL_SET
from wardwright.trials.home_goals import middle_of
from wardwright.trials.household_walk import leaf_of, noticed_on, opened_on, walk, walked
from wardwright.trials.leaves_opened import Leaves
from wardwright.trials.paces import walking_pace
from wardwright.trials.trips import Trip, ends_of, taken
from wardwright.trials.watchers import heard_in
from wardwright.trials.ways_on_foot import Progress
from wardwright.trials.zone_response import Happening, Signal, respond


class Played(NamedTuple):
    """One arrival, played on the control unit."""

    timeline: tuple[Happening, ...]
    """What happens until the alarm is unset; the last line is `unset` if it is."""
    alarm_s: float
    """When the alarm starts; infinite if it is unset before. [s]"""
    by: str | None
    """Id of the device that gives it, or whose entry time ends."""
    unset_s: float
    """Infinite if nobody unsets it. [s]"""
    message_due_s: float
    """When the alarm's message may leave, any abort delay being over. [s]"""


class WrongTurn(NamedTuple):
    """A room that somebody might turn into instead of going to the keypad."""

    space: Space
    played: Played


def arrive(
    site: Site,
    catalogue: Catalogue,
    trip: Trip,
    *,
    person: Person,
    leaves: Leaves = "usual",
    knows_code: bool = True,
) -> Played:
    """Play one person's ordinary arrival, with shopping.

    Parameters
    ----------
    site : Site
        The house, its devices and its programme.
    catalogue : Catalogue
        Sheets and figures.
    trip : Trip
        The way in.
    person : Person
        Who comes.
    leaves : {"usual", "most"}, default "usual"
        How leaves stand that nobody opens.
    knows_code : bool, default True
        False: the code is forgotten, and nobody unsets the alarm.

    Returns
    -------
    Played
        The timeline.
    """
    unset = float(taken(catalogue, trip.legs, person).arriving[0]) if knows_code else math.inf
    start, goal = ends_of(site, trip)
    return _played(
        site, signals_on(site, catalogue, trip, person=person, start=start, goal=goal, leaves=leaves), unset
    )


def wrong_turns(
    site: Site, catalogue: Catalogue, trip: Trip, *, person: Person, leaves: Leaves = "usual"
) -> tuple[WrongTurn, ...]:
    """Play turns into each room that the way in passes, up to its middle, by the rooms' ids.

    Parameters
    ----------
    site : Site
        The house, its devices and its programme.
    catalogue : Catalogue
        Sheets and figures.
    trip : Trip
        The way in.
    person : Person
        Who comes.
    leaves : {"usual", "most"}, default "usual"
        How leaves stand that nobody opens.

    Returns
    -------
    tuple of WrongTurn
        Each with the alarm that it gives on the way into the room, if any.
    """
    found = []
    start, _ = ends_of(site, trip)
    for space in rooms_beside(site, trip):
        goal = middle_of(space)
        if walk(site.bare, catalogue, start, goal=goal) is None:
            continue
        signals = signals_on(site, catalogue, trip, person=person, start=start, goal=goal, leaves=leaves)
        played = _played(site, signals, math.inf)
        if all(one.what != "alarm" for one in played.timeline):
            # Only the entry time ends: the turn by itself gives no alarm.
            played = played._replace(alarm_s=math.inf, by=None)
        found.append(WrongTurn(space, played))
    return tuple(found)


def signals_on(  # noqa: PLR0917 - who, where from, where to
    site: Site,
    catalogue: Catalogue,
    trip: Trip,
    person: Person,
    start: Spot,
    goal: Spot,
    leaves: Leaves,
) -> tuple[Signal, ...]:
    """The first signal of every device that is heard on somebody's way from an entry door."""
    route = walk(site.bare, catalogue, start, goal=goal)
    progress = walked(site.bare, catalogue, start, goal=goal)
    clock = np.zeros(0) if progress is None else clock_in(catalogue, trip, person, progress=progress)
    found = []
    for device, behaviour in heard_devices(site):
        kind = catalogue.sheet(device.sheet).kind
        time: float | None = None
        if kind == "movement-detector" and route is not None:
            noticed = noticed_on(site.bare, catalogue, device, start=start, goal=goal, leaves=leaves)
            time = float(clock[int(noticed.argmax())]) if noticed.any() else None
        elif kind == "opening-contact":
            time = _opened_s(device, trip, route, clock=clock)
        if time is not None:
            found.append(Signal(time, behaviour, device.id))
    return tuple(found)


def heard_devices(site: Site) -> tuple[tuple[Device, Behaviour], ...]:
    """The devices that are heard when nobody is in, with how their zones behave, by id."""
    heard = heard_in(site, FULL_SET)
    devices = sorted(site.devices, key=lambda one: one.id)
    return tuple((device, heard[device.id]) for device in devices if device.id in heard)


def clock_in(catalogue: Catalogue, trip: Trip, person: Person, *, progress: Progress) -> FloatArray:
    """The clock at each point of a walk from an entry door, from its leaf opening. [s]"""
    figure = catalogue.figure
    pace = walking_pace(catalogue, person.pace).value * figure("load-share").value
    on_foot = (
        progress.flat / pace
        + progress.stairs / (pace * figure("stairs-share").value)
        + progress.doors * figure("pass-door").value
    )
    in_the_door = trip.legs.threshold_m / pace
    clock: FloatArray = in_the_door + figure("shut-door").value + on_foot
    clock[0] = in_the_door  # seen before the door is shut behind
    return clock


def _opened_s(device: Device, trip: Trip, route: Route | None, *, clock: FloatArray) -> float | None:
    leaf = leaf_of(device)
    if leaf == trip.door.id:
        return 0.0 if trip.door.habit == "shut" else None
    if route is None:
        return None
    return next((float(clock[at]) for at, door in opened_on(route) if door == leaf), None)


def _played(site: Site, signals: tuple[Signal, ...], unset_s: float) -> Played:
    answer = respond([one for one in signals if one.time_s < unset_s], site.programme)
    lines = tuple(one for one in answer.timeline if one.time_s < unset_s)
    if answer.alarm_s < unset_s:
        starts = next(one for one in lines if one.what in ("alarm", "entry time ends"))
        return Played(lines, answer.alarm_s, starts.subject, unset_s, answer.message_due_s)
    return Played((*lines, Happening(unset_s, "unset", "")), math.inf, None, unset_s, math.inf)


def rooms_beside(site: Site, trip: Trip) -> tuple[Space, ...]:
    """Rooms that open off the rooms of a way in, by door, gap, open edge or stairs, by id."""
    if trip.route is None:
        return ()
    points = zip(trip.route.storeys[::5], trip.route.points[::5].tolist(), strict=True)
    on_way = {space.id for s, (x, y) in points if (space := space_at(site, s, (x, y))) is not None}
    return _rooms_beside(site.bare, frozenset(on_way))


@lru_cache(maxsize=256)
def _rooms_beside(site: Site, on_way: frozenset[str]) -> tuple[Space, ...]:
    beside: set[str] = set()
    for edge in site.open_edges:
        if on_way & set(edge.spaces):
            beside.update(edge.spaces)
    for opening in site.openings:
        sides = {side for side in sides_of_opening(site, opening) if side is not None}
        if lets_through(opening) and sides & on_way:
            beside |= sides
    for stair in site.stairs:
        ends = [
            space_at(site, storey, point)
            for storey, point in ((stair.lower, stair.line_m[0]), (stair.upper, stair.line_m[-1]))
        ]
        names = {space.id for space in ends if space is not None}
        if names & on_way:
            beside |= names
    found = (site.space(name) for name in sorted(beside - on_way))
    return tuple(space for space in found if space.is_protected)
