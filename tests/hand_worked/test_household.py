"""Coming home and leaving in houses that a reader can do by hand: each says its arithmetic."""

from __future__ import annotations

import math

import pytest

from hand_worked.household import ARRIVALS, LEAVINGS, NIGHTS, ORDINARY, TURN, Arrival, Leaving, Night
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.arrival import arrive, wrong_turns
from wardwright.trials.household_trips import play_night_trip
from wardwright.trials.leaving import leave
from wardwright.trials.night_trips import night_trips
from wardwright.trials.trips import trips

CATALOGUE = load_catalogue()


@pytest.mark.parametrize("one", ARRIVALS, ids=lambda one: one.name)
def test_the_arrival_is_as_by_hand(one: Arrival) -> None:
    """Line by line: what happens, by which device, in which second."""
    trip = next(trip for trip in trips(one.site, CATALOGUE) if trip.door.id == one.door)
    played = arrive(one.site, CATALOGUE, trip, person=one.person, knows_code=one.knows_code)
    told = [(line.what, line.subject) for line in played.timeline]
    assert told == [(what, subject) for _, what, subject in one.lines], one.working
    seconds = [line.time_s for line in played.timeline]
    assert seconds == pytest.approx([time for time, _, _ in one.lines], abs=one.tolerance), one.working
    assert played.by == one.by
    assert [played.alarm_s, played.message_due_s] == pytest.approx(
        [one.alarm, one.message_due], abs=one.tolerance
    )


@pytest.mark.parametrize("one", LEAVINGS, ids=lambda one: f"{one.name}: {one.outcome}")
def test_the_leaving_is_as_by_hand(one: Leaving) -> None:
    """What comes of it, when, and which device keeps it from being set."""
    left = leave(one.site, CATALOGUE, trips(one.site, CATALOGUE)[0], person=one.person)
    assert (left.outcome, left.by) == (one.outcome, one.by), one.working
    assert left.at_s == pytest.approx(one.at, abs=one.tolerance), one.working


@pytest.mark.parametrize("one", NIGHTS, ids=lambda one: one.name)
def test_the_trip_at_night_is_as_by_hand(one: Night) -> None:
    """To the toilet: silent, or by which device and in which second."""
    (trip,) = (trip for trip in night_trips(one.site, CATALOGUE) if trip.goal == "toilet")
    played = play_night_trip(one.site, CATALOGUE, trip, leaves="night")
    assert played.device == one.by, one.working
    assert played.second == pytest.approx(one.second, abs=one.tolerance), one.working


def test_a_wrong_turn_by_hand() -> None:
    """Into the second room instead of to the keypad: its door's contact rings at 8 + 4 = 12 s."""
    (turn,) = wrong_turns(TURN, CATALOGUE, trips(TURN, CATALOGUE)[0], person=ORDINARY)
    assert (turn.space.id, turn.played.by) == ("room-2", "door-1-contact")
    assert turn.played.alarm_s == pytest.approx(12.0, abs=1e-6)
    assert math.isinf(turn.played.unset_s)
