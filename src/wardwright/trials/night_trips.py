"""The household's trips while a part is set at night, played on the control unit: from bed, and out in the morning.

The likely case only, as for coming in. Nobody unsets the alarm on a trip in the night; in the morning it is unset at
the keypad that is reached first, or with a keyfob by the bed, before anybody goes to a door. What the radio needs is
left out.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import Literal, NamedTuple

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fabric import Space
from wardwright.model.household import Person
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in
from wardwright.model.programme import Behaviour
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.rules.entry_routes import place_before
from wardwright.trials.home_goals import TOILETS, middle_of, rooms_by
from wardwright.trials.household_walk import Leaves, doors_to_open, leaf_of, walk
from wardwright.trials.leaves_between import states_of
from wardwright.trials.night_walk import Ends, Moment, first_noticed, steps_on, walked_until
from wardwright.trials.paces import walking_pace
from wardwright.trials.trips import controls_of
from wardwright.trials.watchers import heard_in
from wardwright.trials.ways_in import leads_outside
from wardwright.trials.zone_response import Signal, respond

NIGHT = "night"
"""The part that is set while the household sleeps."""
Goal = Literal["toilet", "kitchen", "child", "out"]
"""What somebody gets up for; `out`: through a door in the morning."""


class NightTrip(NamedTuple):
    """One trip of one person from bed."""

    person: Person
    goal: Goal
    place: Space | Opening
    """The room that they go to, or the door that they go out by."""
    ends: Ends | None
    """The walk while the part is set; None: nothing is walked, the alarm is unset by the bed."""
    control: Device | None = None
    """In the morning the keypad that it ends at."""


class Ring(NamedTuple):
    """An alarm on a trip."""

    device: Device
    """The one that gives it, or whose entry time ends."""
    behaviour: Behaviour
    moment: Moment
    """When that device notices, or its leaf is opened."""
    waits_s: float
    """From then on until the alarm: the entry time, or nothing. [s]"""


def night_trips(site: Site, catalogue: Catalogue) -> tuple[NightTrip, ...]:
    """Every trip from bed of everybody who lives there, by person, goal and place.

    Parameters
    ----------
    site : Site
        The house, its people and its keypads.
    catalogue : Catalogue
        Sheets and figures.

    Returns
    -------
    tuple of NightTrip
        To the nearest toilet and kitchen, for who is no child to each child's bed, and out by each door. Where
        somebody is not to be by what is told of them is no trip of theirs.
    """
    found: list[NightTrip] = []
    for person in sorted(site.people, key=lambda one: one.id):
        bed = next((one for one in site.spaces if one.id == person.bed and one.is_protected), None)
        if person.comes == "lives" and bed is not None:
            found += _from_bed(site, catalogue, person, bed=bed)
    return tuple(found)


def _from_bed(site: Site, catalogue: Catalogue, person: Person, *, bed: Space) -> list[NightTrip]:
    start = middle_of(bed)

    def to_room(goal: Goal, room: Space) -> NightTrip:
        return NightTrip(person, goal, room, Ends(start, middle_of(room), (bed, room)))

    found = []
    wanted: tuple[tuple[Goal, tuple[str, ...]], ...] = (("toilet", TOILETS), ("kitchen", ("kitchen",)))
    for goal, uses in wanted:
        rooms = (one for one in rooms_by(site.bare, bed, uses) if person.may_be_in(one.id, NIGHT))
        found += [to_room(goal, room) for room in list(rooms)[:1] if room.id != bed.id]
    if not person.is_child:
        beds = {one.bed for one in site.people if one.is_child and one.bed != bed.id}
        rooms = (one for one in site.spaces if one.id in beds and one.is_protected)
        found += [to_room("child", one) for one in sorted(rooms, key=lambda one: one.id)]
    if person.knows_code:
        found += [_out(site, catalogue, person, bed=bed, door=door) for door in doors_out(site)]
    return found


def doors_out(site: Site) -> tuple[Opening, ...]:
    """The doors that somebody may go out by in the morning, by id: entry doors, and others that lead outside."""
    return tuple(
        one
        for one in sorted(site.openings, key=lambda one: one.id)
        if one.kind in ("door", "garage-door")
        and one.hinge != "fixed"
        and is_way_in(site, one)
        and leads_outside(site, one)
    )


def _out(site: Site, catalogue: Catalogue, person: Person, *, bed: Space, door: Opening) -> NightTrip:
    """In the morning: to the keypad that is reached first, by which the door is reached unset."""
    start = middle_of(bed)
    try:
        controls = controls_of(site, catalogue)
    except NotComputable:
        # Nobody can unset it: the door is walked to as it is.
        return NightTrip(person, "out", door, Ends(start, way_in_spot(site, door), (bed,)))
    nearest = _nearest(site.bare, catalogue, start, controls=controls)
    if nearest is None:
        return NightTrip(person, "out", door, None)
    keypad, place = nearest
    return NightTrip(person, "out", door, Ends(start, place, (bed,)), keypad)


@lru_cache(maxsize=256)
def _nearest(
    house: Site, catalogue: Catalogue, start: Spot, *, controls: tuple[Device, ...]
) -> tuple[Device, Spot] | None:
    """The keypad that is reached first, and where one stands before it; None where there are only keyfobs."""
    ways = []
    for one in controls:
        place = place_before(house, one)
        route = walk(house, catalogue, start, goal=place)
        if route is not None:
            ways.append((float(route.clock[-1]), one.id, one, place))
    if not ways:
        return (controls[0], place_before(house, controls[0])) if controls else None
    _, _, keypad, place = min(ways, key=lambda one: one[:2])
    return keypad, place


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
    opened = {
        leg.subject: leg.first
        for leg in reversed(route.legs)
        if leg.kind == "door" and leg.subject and "shut" in states_of(house.opening(leg.subject))
    }
    if leaves != "most":
        opened = {door: point for point, door in doors_to_open(house, route, leaves, kept_shut=kept_shut)}
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
