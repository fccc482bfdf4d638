"""The trials beside the slow walker, on the same ways: who signals when, and what follows.

A detector that misses its edge by a hair may come a zone later, and a body that a flight of stairs hides for a while
comes in view as another. So the trials are held between four walkers: a little wider and warmer, with flights that
hide and with flights that do not; the middling one; a little narrower and colder, with whom nothing is seen through
wells or on flights.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from common.slow_sight import Sight
from common.slow_walker import (
    MIDDLING,
    SEEN_LATE,
    SEEN_SOON,
    Leg,
    SlowWalker,
    Told,
    behaviours_heard,
    control_unit,
)
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Route, Spot
from wardwright.trials.alarm import alarm_of
from wardwright.trials.course import told_by_contact, told_by_movement
from wardwright.trials.race import Race, race
from wardwright.trials.watchers import watchers_on
from wardwright.trials.ways_in import WayIn

STEP_S = 0.06
"""Both look every 0.02 s at most, the trials at points of the way and the walker at times: three steps. [s]"""
FLIGHT_S = 0.25
"""Where flights make a difference: the trials draw one 0.1 m longer, walked in the same time. [s]"""
REACHED_S = 0.05
"""A flight's upper end is stepped off by 0.1 m. [s]"""
WALKERS = (SEEN_SOON, SEEN_SOON._replace(flights="steps"), MIDDLING, SEEN_LATE)


class Compared(NamedTuple):
    """One way in, by both."""

    signals: int
    """How many devices signalled by either. [-]"""
    close: int
    """Of these, within `STEP_S` of the middling walker. [-]"""
    apart: tuple[str, ...]
    """Where the trials lie outside what the walkers allow, in words."""


def legs_of(route: Route) -> tuple[Leg, ...]:
    """A route as floor and stairs with corners and no times; the leaves between are left to the walker to find."""
    found: list[Leg] = []
    for leg in route.legs:
        if leg.kind == "door":
            continue
        points = tuple((float(x), float(y)) for x, y in route.points[leg.first : leg.last + 1])
        storeys = (route.storeys[leg.first], route.storeys[leg.last])
        if leg.kind == "floor" and found and found[-1].kind == "floor":
            found[-1] = found[-1]._replace(points=found[-1].points + points[1:])
        elif leg.kind == "floor":
            found.append(Leg("floor", points, (storeys[0], storeys[0])))
        else:
            found.append(Leg("stairs", points, storeys, leg.subject))
    return tuple(found)


class SlowHouse:
    """The four walkers of one house with one part set."""

    def __init__(self, site: Site, catalogue: Catalogue, *, part: str = "full") -> None:
        self.site, self.catalogue, self.part = site, catalogue, part
        sight = Sight(site)
        self.walkers = [SlowWalker(site, catalogue, part=part, slack=one, sight=sight) for one in WALKERS]

    def compared(self, way: WayIn, goal: Spot) -> Compared:
        """Hold one race against the walkers.

        Parameters
        ----------
        way : WayIn
            The way in.
        goal : Spot
            Where the control unit is.

        Returns
        -------
        Compared
            What agrees, and what does not.
        """
        one = race(self.site, self.catalogue, way=way, goal=goal, part=self.part)
        legs = legs_of(one.route)
        slow = [walker.run(way.opening, way.manner, legs) for walker in self.walkers]
        quick = self._signals(one, way, goal)
        names = sorted(set(quick).union(*(found.signals for found in slow)))
        name_of = f"{self.site.name}, {way.opening.id} {way.manner}"
        words_apart = (*self._ends(one, slow[2]), *self._alarm(one, quick), *self._through_walls(legs))
        apart = [f"{name_of}: {words}" for words in words_apart]
        close = 0
        for name in names:
            found = quick.get(name, math.inf)
            each = [told.signals.get(name, math.inf) for told in slow]
            close += found == each[2] or abs(found - each[2]) <= STEP_S
            low, high = min(each), max(each)
            is_by_stairs = _is_on(slow[2].climbing, each[2]) or not _same(*each[:3], more=STEP_S)
            more = FLIGHT_S if is_by_stairs else STEP_S
            if not low - more <= found <= high + more:
                apart.append(f"{name_of}: {name} signals at {found:.3f}, by the walkers at {each}")
        return Compared(len(names), close, tuple(apart))

    def _signals(self, one: Race, way: WayIn, goal: Spot) -> dict[str, float]:
        """When each device signals in the likely case of the trials."""
        heard = alarm_of(self.site, self.catalogue, self.part).heard
        found = {}
        for watcher in watchers_on(self.site.bare, self.catalogue, heard, way=way, goal=goal):
            noticing, at = watcher.noticing, watcher.at_index or 0
            told = (
                told_by_contact(one.course, at)
                if noticing is None
                else told_by_movement(one.course, watcher.device.id, noticing)
            )
            if math.isfinite(told.signal[0]):
                found[watcher.device.id] = float(told.signal[0])
        return found

    def _through_walls(self, legs: tuple[Leg, ...]) -> list[str]:
        """Places of the way that lie in a wall a metre up; who climbs in over a bed may step on it."""
        found = []
        for leg in legs:
            storey = self.walkers[2].storeys[leg.storeys[0]]
            walls = [one for one in storey.slabs if one.high >= storey.ceiling - 1e-6]
            if leg.kind == "floor":
                through = (
                    one for one in leg.points if any(wall.holds(*one, storey.floor + 1.0) for wall in walls)
                )
                found += [f"it goes through a wall at {place}" for place in through]
        return found

    def _ends(self, one: Race, slow: Told) -> list[str]:
        quick = (float(one.reached[0]), float(one.broken[0]))
        if max(abs(quick[0] - slow.reached), abs(quick[1] - slow.broken)) <= REACHED_S:
            return []
        return [f"at the unit and broken at {quick}, by the walker at {slow.reached, slow.broken}"]

    def _alarm(self, one: Race, quick: dict[str, float]) -> list[str]:
        """What the walker's control unit makes of the trials' own signals: to the last digit."""
        radio = self.catalogue.figure("radio-delay").value
        heard = behaviours_heard(self.site, self.part)
        rings, due = control_unit([(when + radio, name) for name, when in quick.items()], self.site, heard)
        expected = due + self.catalogue.figure("message-time").value
        found = (
            [] if _same(float(one.message[0]), expected) else [f"message at {one.message[0]}, not {expected}"]
        )
        if one.sounder is not None:
            sounds = rings + self.catalogue.figure("sounder-start").value
            if not _same(float(one.sounder[0]), sounds):
                found.append(f"sounder at {one.sounder[0]}, not {sounds}")
        return found


def _is_on(climbing: tuple[tuple[float, float], ...], when: float) -> bool:
    return any(start <= when <= end + STEP_S for start, end in climbing)


def _same(*times: float, more: float = 1e-6) -> bool:
    """Whether times are one, but for rounding or what is said."""
    return all(one == times[0] or abs(one - times[0]) <= more for one in times)
