"""The slow walker in the houses that are worked out by hand: it, the hand and the trials say the same."""

from __future__ import annotations

import math

import pytest

from common.slow_household import SlowHousehold
from common.slow_race import REACHED_S, STEP_S, SlowHouse, legs_of
from common.slow_walker import times_the_least
from hand_worked.household import ARRIVALS, LEAVINGS, NIGHTS, Arrival, Leaving, Night
from hand_worked.intruders import CLIMB_S, INTRUDERS, Intruder
from hand_worked.test_intruders import CATALOGUE, goal_of, run, way_of


@pytest.mark.parametrize("one", INTRUDERS, ids=lambda one: one.name)
def test_the_walker_says_what_the_hand_says(one: Intruder) -> None:
    """Within three steps of time, and the 0.1 m that a flight's end is stepped off by."""
    walker = SlowHouse(one.site, CATALOGUE, part=one.part).walkers[2]
    told = walker.run(one.site.opening(one.way[0]), one.way[1], legs_of(run(one).route))
    first = min((when for when in told.signals.values()), default=math.inf)
    found = [told.sounder, told.message, told.reached, told.broken]
    assert found == pytest.approx([one.sounder, one.message, one.reached, one.broken], abs=STEP_S + REACHED_S)
    if one.first is not None:
        assert first == pytest.approx(one.notice, abs=STEP_S + REACHED_S)
        assert told.signals[one.first] == first


@pytest.mark.parametrize("one", INTRUDERS, ids=lambda one: one.name)
def test_the_trials_lie_between_the_walkers(one: Intruder) -> None:
    found = SlowHouse(one.site, CATALOGUE, part=one.part).compared(way_of(one), goal_of(one))
    assert not found.apart
    assert found.close == found.signals or one.tolerance == CLIMB_S


@pytest.mark.parametrize("one", [*ARRIVALS, *LEAVINGS], ids=lambda one: f"{type(one).__name__} {one.name}")
def test_who_comes_and_goes_is_told_of_in_time(one: Arrival | Leaving) -> None:
    """The walker's times and its control unit are the trials'; nothing that really notices is told later."""
    assert not SlowHousehold(one.site, CATALOGUE).apart(one.person)


@pytest.mark.parametrize("one", NIGHTS, ids=lambda one: one.name)
def test_whoever_is_up_at_night_is_told_of_in_time(one: Night) -> None:
    assert not SlowHousehold(one.site, CATALOGUE).apart(one.site.people[0])


def test_contrast_by_another_sum() -> None:
    """The person at 20 deg C has 0.65 x 14 = 9.1 K more than the room: 9.1 / 1.7 = 5.4 times 1.7 K, and a little more
    since radiance grows faster than temperature; in a room as warm as skin there is none."""
    assert 5.4 < times_the_least(20.0, 1.7) < 5.9
    assert times_the_least(34.0, 1.7) == pytest.approx(0.0, abs=1e-9)
