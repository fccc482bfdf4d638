"""Somebody of the household walks in steps of a fiftieth of a second past its own detectors: what really rings.

The trials say what may possibly ring: by detectors that see a little further and wider, on somebody who strays 0.6 m
to each side of the way. So nobody who really walks the way may be noticed before the trials say so, nor where they
say that nobody is. Times and leaves the walker works out by itself, and they are the same to the last digit.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from common.slow_race import legs_of
from common.slow_sight import Sight
from common.slow_walker import Leg, Moment, SlowWalker, behaviours_heard, control_unit
from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.household import Person
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.rules.entry_routes import place_before
from wardwright.trials.arrival import arrive, signals_on
from wardwright.trials.household_trips import play_night_trip
from wardwright.trials.household_walk import walk
from wardwright.trials.leaving import leave
from wardwright.trials.night_trips import night_trips
from wardwright.trials.trips import Trip, trips

STEP_S = 0.15
"""Of three steps of a point of the way at a slow pace: 0.05 m / 0.64 m/s each, rounded down. [s]"""
PACES = {"slow": "pace-slow", "usual": "pace-normal", "quick": "pace-quick"}
BODY_M, STEP_IN_M = 0.22, 0.05


class SlowHousehold:
    """One house with all its ways of coming and going."""

    def __init__(self, site: Site, catalogue: Catalogue) -> None:
        self.site, self.catalogue = site, catalogue
        self.by_day = SlowWalker(site, catalogue, sight=Sight(site))
        at_night = site.model_copy(update={"openings": tuple(_as_at_night(one) for one in site.openings)})
        self.by_night = SlowWalker(at_night, catalogue, part="night", sight=Sight(at_night))

    def apart(self, person: Person) -> list[str]:
        """Where the trials of one person lie outside what the walker allows, in words."""
        found: list[str] = []
        try:
            ways = trips(self.site, self.catalogue)
        except NotComputable:
            ways = ()  # nobody can set it: there are the nights alone
        for trip in ways:
            if trip.control is not None and trip.route is not None:
                found += [f"{person.id} in by {trip.door.id}: {one}" for one in self._arrival(trip, person)]
                found += [f"{person.id} out by {trip.door.id}: {one}" for one in self._leaving(trip, person)]
        return found + list(self._nights(person))

    def _arrival(self, trip: Trip, person: Person) -> Iterator[str]:
        start, goal = way_in_spot(self.site, trip.door), self._place(trip)
        pace = self._figure(PACES[person.pace]) * self._figure("load-share")
        wall = self.site.wall(trip.door.wall)
        in_door = (wall.thickness_m + 2.0 * (BODY_M + STEP_IN_M)) / pace
        moments, doors, _ = self.by_day.timed(
            self._legs(start, goal), in_door + self._figure("shut-door"), pace=pace
        )
        unset = moments[-1].time + self._figure("put-down") + self._figure("code-entry")
        played = arrive(self.site, self.catalogue, trip, person=person)
        yield from _same("unset", played.unset_s if played.by is None else unset, unset)
        told = signals_on(
            self.site, self.catalogue, trip, person=person, start=start, goal=goal, leaves="usual"
        )
        quick = {one.subject: one.time_s for one in told}
        yield from self._contacts(quick, self.by_day, {**doors, trip.door.id: 0.0}, trip.door)
        yield from self._noticed(quick, self.by_day, moments, doors)
        most = signals_on(
            self.site, self.catalogue, trip, person=person, start=start, goal=goal, leaves="most"
        )
        with_most = {one.subject: one.time_s for one in most}
        for name, when in quick.items():
            if with_most.get(name, math.inf) > when + 1e-9:
                yield f"{name} is told at {when}, and with more leaves open at {with_most.get(name)}"
        known = [(when, name) for name, when in quick.items() if when < unset]
        rings, due = control_unit(known, self.site, behaviours_heard(self.site, "full"))
        is_rung = rings < unset
        yield from _same("alarm", played.alarm_s, rings if is_rung else math.inf)
        yield from _same("message", played.message_due_s, due if is_rung else math.inf)

    def _leaving(self, trip: Trip, person: Person) -> Iterator[str]:
        start, goal = way_in_spot(self.site, trip.door), self._place(trip)
        pace = self._figure(PACES[person.pace]) * self._figure("load-share")
        legs = _backwards(self._legs(start, goal))
        moments, doors, _ = self.by_day.timed(legs, 0.0, pace=pace)
        wall = self.site.wall(trip.door.wall)
        shut = moments[-1].time + self._figure("unlock-door") + self._figure("shut-door")
        shut += (wall.thickness_m + 2.0 * (BODY_M + STEP_IN_M)) / pace
        left = leave(self.site, self.catalogue, trip, person=person)
        ends = self.site.programme.exit_time_s
        keeps = self._first_instant(moments, doors)
        if left.outcome != "kept from setting" and min(keeps, shut) > ends + STEP_S:
            yield from _same("the door open too long", left.at_s if left.outcome != "set" else math.inf, ends)
        if keeps < ends - STEP_S and left.outcome != "kept from setting":
            yield f"{left.outcome}, but a detector notices at {keeps}"
        if left.outcome == "kept from setting" and left.at_s > keeps + STEP_S:
            yield f"kept from setting at {left.at_s}, by the walker at {keeps}"
        if left.outcome == "door open too long" and shut < ends - 1e-6:
            yield f"the door is told to be open until {ends}, by the walker until {shut}"

    def _first_instant(self, moments: list[Moment], doors: dict[str, float]) -> float:
        """When something that is no part of the way in notices, infinite where never. [s]"""
        kinds = {one.id: one for one in self.site.behaviours}
        found = math.inf
        for zones in self.by_day.zones:
            kind = kinds[self.by_day.heard[zones.device]]
            if kind.alarms and not kind.starts_entry and not kind.allowed_after_entry:
                found = min(found, self.by_day.first_notice(zones, moments, doors))
        return found

    def _nights(self, person: Person) -> Iterator[str]:
        for trip in night_trips(self.site, self.catalogue):
            if trip.person.id != person.id or trip.ends is None or trip.goal == "out":
                continue
            if walk(self.site.bare, self.catalogue, trip.ends.start, goal=trip.ends.goal) is None:
                continue
            legs = self._legs(trip.ends.start, trip.ends.goal)
            moments, doors, _ = self.by_night.timed(legs, 0.0, pace=self._figure(PACES[person.pace]))
            signals = [
                (self.by_night.first_notice(zones, moments, doors), zones.device)
                for zones in self.by_night.zones
            ]
            known = [one for one in signals if math.isfinite(one[0])]
            rings, _ = control_unit(known, self.site, self.by_night.heard)
            played = play_night_trip(self.site, self.catalogue, trip, leaves="night")
            if played.second > rings + STEP_S:
                yield (
                    f"{person.id} at night to {trip.place.id}: rings at {rings} by one of {sorted(known)}, "
                    f"told is {played.second} by {played.device}"
                )

    def _noticed(
        self, quick: dict[str, float], walker: SlowWalker, moments: list[Moment], doors: dict[str, float]
    ) -> Iterator[str]:
        """What movement detectors notice, against the soonest that is told."""
        for zones in walker.zones:
            really, told = walker.first_notice(zones, moments, doors), quick.get(zones.device, math.inf)
            if told > really + STEP_S:
                yield f"{zones.device} notices at {really:.3f}, told is {told:.3f}"

    def _contacts(
        self, quick: dict[str, float], walker: SlowWalker, come_to: dict[str, float], door: Opening
    ) -> Iterator[str]:
        """Contacts on leaves that are opened on the way; one that is ajar counts as opened, as it may be shut."""
        for device in self.site.devices:
            for name, when in come_to.items():
                leaf = self.site.opening(name)
                if device.id in walker.heard and walker.is_contact_on(device, leaf):
                    is_told = leaf.habit == "shut" or (name != door.id and leaf.habit == "ajar")
                    yield from _same(device.id, quick.get(device.id, math.inf), when if is_told else math.inf)

    def _place(self, trip: Trip) -> Spot:
        assert trip.control is not None
        return place_before(self.site, trip.control)

    def _legs(self, start: Spot, goal: Spot) -> tuple[Leg, ...]:
        route = walk(self.site.bare, self.catalogue, start, goal=goal)
        assert route is not None
        return legs_of(route)

    def _figure(self, name: str) -> float:
        return self.catalogue.figure(name).value


def _backwards(legs: tuple[Leg, ...]) -> tuple[Leg, ...]:
    return tuple(
        leg._replace(points=leg.points[::-1], storeys=(leg.storeys[1], leg.storeys[0])) for leg in legs[::-1]
    )


def _as_at_night(opening: Opening) -> Opening:
    """The opening with its leaf as at night, told if that is."""
    told = dict(opening.basis) | {"habit": opening.basis_of("habit_night")}
    return opening.model_copy(update={"habit": opening.habit_night, "basis": tuple(told.items())})


def _same(what: str, quick: float, slow: float) -> Iterator[str]:
    """To a millionth of a second, but for a flight's rim."""
    if quick != slow and not abs(quick - slow) <= RIM_S:
        yield f"{what} at {quick}, by the walker at {slow}"


RIM_S = 0.32
"""A flight's upper end is stepped off by 0.1 m, at each of two flights, at 0.64 m/s. [s]"""
