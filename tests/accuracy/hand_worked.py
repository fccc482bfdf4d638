"""Races and comings home of small houses that are worked out by hand, each with its arithmetic."""

from __future__ import annotations

import math
from collections.abc import Iterator

from accuracy.rows import Row
from hand_worked.household import ARRIVALS, NIGHTS
from hand_worked.intruders import INTRUDERS
from hand_worked.test_intruders import run
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.arrival import arrive
from wardwright.trials.household_trips import play_night_trip
from wardwright.trials.night_trips import night_trips
from wardwright.trials.trips import trips

ROUNDING = "straight legs and contacts: only rounding is left"
POINTS = "a detector is asked every 0.05 m of the way; a flight's upper end is stepped off by 0.1 m"
CELLS = "what a detector may possibly see is told by cells of 0.1 m"


def accuracy_rows() -> Iterator[Row]:
    """When things happen that do happen; what never does is held by the tests alone."""
    catalogue = load_catalogue()
    for one in INTRUDERS:
        found = run(one)
        why = ROUNDING if one.tolerance < 1e-3 else POINTS
        assert found.sounder is not None
        for what, expected, computed in (
            ("sounder", one.sounder, found.sounder),
            ("message left", one.message, found.message),
            ("at the unit", one.reached, found.reached),
        ):
            if math.isfinite(expected):
                name = f"{one.name}: {what} [s]"
                yield Row(
                    name, by_hand(one.working), expected, float(computed[0]), one.tolerance, why, "derived"
                )
    for home in ARRIVALS:
        trip = next(trip for trip in trips(home.site, catalogue) if trip.door.id == home.door)
        played = arrive(home.site, catalogue, trip, person=home.person, knows_code=home.knows_code)
        expected, computed = home.lines[-1][0], played.timeline[-1].time_s
        why = ROUNDING if home.tolerance < 1e-3 else CELLS
        name = f"coming home, {home.name}: {home.lines[-1][1]} [s]"
        yield Row(name, by_hand(home.working), expected, computed, home.tolerance, why, "derived")
    for night in NIGHTS:
        (way,) = (way for way in night_trips(night.site, catalogue) if way.goal == "toilet")
        second = play_night_trip(night.site, catalogue, way, leaves="night").second
        if math.isfinite(night.second):
            why = ROUNDING if night.tolerance < 1e-3 else CELLS
            name = f"up at night, {night.name}: alarm [s]"
            yield Row(name, by_hand(night.working), night.second, second, night.tolerance, why, "derived")


def by_hand(working: str) -> str:
    """Where the expected value comes from."""
    return f"by hand: {working}"
