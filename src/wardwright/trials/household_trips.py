"""Every trip of the household played on the control unit, in one list: ordinary ones, wrong turns, forgotten codes.

A trip is a band of `BAND_M` to each side of the walk, and the whole of a space where people stay. Movement detectors
notice as soon as they possibly may (the high-side shape), contacts when a leaf on the way is opened. The likely paces
and times count. An ordinary trip that rings is a fault of the design; a wrong turn or a forgotten code is to ring,
and the list says by which device and in which second.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.household import Person
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.rules.kit import FULL_SET, NIGHT
from wardwright.trials.arrival import Played, arrive, clock_in, heard_devices, wrong_turns
from wardwright.trials.home_goals import middle_of
from wardwright.trials.household_walk import walk, walked
from wardwright.trials.leaves_opened import Leaves
from wardwright.trials.leaving import Left, leave
from wardwright.trials.night_rings import active_in, clock_of, ring_on
from wardwright.trials.night_trips import Goal, NightTrip, night_trips, wrong_turns_at_night
from wardwright.trials.night_walk import steps_on, walked_until
from wardwright.trials.stays import at_home_unset, stays
from wardwright.trials.trip_played import HouseholdTrip, Kind
from wardwright.trials.trips import Trip, ends_of, household, trips


def household_trips(site: Site, catalogue: Catalogue) -> tuple[HouseholdTrip, ...]:
    """Play every trip of the household with the part that is set on it.

    Parameters
    ----------
    site : Site
        The house, its people, devices, zones and programme.
    catalogue : Catalogue
        Sheets and figures.

    Returns
    -------
    tuple of HouseholdTrip
        Sorted by kind, person, place and leaves. Trips that cannot be played, such as coming in where there is no
        entry door, are not there.
    """
    found = [
        *_at_the_doors(site, catalogue),
        *_at_night(site, catalogue),
        *stays(site, catalogue),
        *at_home_unset(site, catalogue),
    ]
    return tuple(sorted(found, key=lambda one: (one.kind, one.person, one.part, one.place, one.leaves)))


def _at_the_doors(site: Site, catalogue: Catalogue) -> Iterator[HouseholdTrip]:
    try:
        ways = trips(site, catalogue)
    except NotComputable:
        return
    kinds: tuple[Leaves, ...] = ("usual", "most")
    for trip in ways:
        if trip.control is not None and trip.route is None:
            continue
        for person in household(site):
            for leaves in kinds:
                yield from _coming_and_going(site, catalogue, trip, person=person, leaves=leaves)


def _coming_and_going(
    site: Site, catalogue: Catalogue, trip: Trip, *, person: Person, leaves: Leaves
) -> Iterator[HouseholdTrip]:
    start, goal = ends_of(site, trip)

    def told(kind: Kind, place: str, played: Played, *, to: Spot) -> HouseholdTrip:
        spot = _where(site, catalogue, trip, person=person, ends=(start, to), at_s=played.alarm_s)
        return HouseholdTrip(
            person.id, kind, FULL_SET, place, leaves, played.alarm_s, played.by,
            _behaviour(site, played.by), spot, played.message_due_s,
        )  # fmt: skip

    yield told("arrival", trip.door.id, arrive(site, catalogue, trip, person=person, leaves=leaves), to=goal)
    forgot = arrive(site, catalogue, trip, person=person, leaves=leaves, knows_code=False)
    yield told("forgotten code", trip.door.id, forgot, to=goal)
    for turn in wrong_turns(site, catalogue, trip, person=person, leaves=leaves):
        yield told("wrong turn", turn.space.id, turn.played, to=middle_of(turn.space))
    yield _left(
        site, trip, leave(site, catalogue, trip, person=person, leaves=leaves), person=person, leaves=leaves
    )


def _left(site: Site, trip: Trip, left: Left, *, person: Person, leaves: Leaves) -> HouseholdTrip:
    second = math.inf if left.outcome == "set" else left.at_s
    by = left.by if left.outcome != "set" else None
    return HouseholdTrip(
        person.id, "leaving", FULL_SET, trip.door.id, leaves, second, by, _behaviour(site, by), None
    )


def _behaviour(site: Site, device: str | None) -> str | None:
    return next((behaviour.id for one, behaviour in heard_devices(site) if one.id == device), None)


def _where(
    site: Site, catalogue: Catalogue, trip: Trip, *, person: Person, ends: tuple[Spot, Spot], at_s: float
) -> Spot | None:
    """Where somebody is on the way in at a second: at its end if that is later."""
    start, goal = ends
    route = walk(site.bare, catalogue, start, goal=goal)
    progress = walked(site.bare, catalogue, start, goal=goal)
    if route is None or progress is None or not math.isfinite(at_s):
        return None
    clock = clock_in(catalogue, trip, person, progress=progress)
    point = min(int(np.searchsorted(clock, at_s - 1e-9)), len(clock) - 1)
    return Spot(route.storeys[point], *route.points[point].tolist())


def _at_night(site: Site, catalogue: Catalogue) -> Iterator[HouseholdTrip]:
    if not active_in(site, NIGHT):
        return
    kinds: tuple[Leaves, ...] = ("night", "most")
    for trip in (*night_trips(site, catalogue), *wrong_turns_at_night(site)):
        for leaves in kinds:
            yield play_night_trip(site, catalogue, trip, leaves=leaves)


def play_night_trip(site: Site, catalogue: Catalogue, trip: NightTrip, *, leaves: Leaves) -> HouseholdTrip:
    """Play one trip from bed with the night part set.

    Parameters
    ----------
    site : Site
        The house, its devices, its zones and its programme.
    catalogue : Catalogue
        Sheets and figures.
    trip : NightTrip
        The trip.
    leaves : {"night", "most"}
        How leaves stand that nobody opens.

    Returns
    -------
    HouseholdTrip
        Its `spot` is where the device that rings notices.
    """
    kinds: dict[Goal, Kind] = {"out": "morning", "astray": "wrong turn"}
    kind = kinds.get(trip.goal, "night")
    silent = HouseholdTrip(
        trip.person.id, kind, NIGHT, trip.place.id, leaves, math.inf, None, None, None
    )  # fmt: skip
    ring = ring_on(site, catalogue, trip, leaves=leaves)
    steps = None if trip.ends is None else steps_on(site.bare, catalogue, trip.ends)
    if ring is None or steps is None or trip.ends is None:
        return silent
    second = clock_of(catalogue, trip.person, walked_until(steps, ring.moment)) + ring.waits_s
    route = walk(site.bare, catalogue, trip.ends.start, goal=trip.ends.goal)
    point = ring.moment.point
    spot = None if route is None else Spot(route.storeys[point], *route.points[point].tolist())
    wait = site.programme.abort_delay_s if ring.behaviour.delays_message else 0.0
    return silent._replace(
        second=second,
        device=ring.device.id,
        behaviour=ring.behaviour.id,
        spot=spot,
        message_due_s=second + wait,
    )
