"""The legs of one scene against walking and detection asked directly."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE
from common.small_campaign import watched_hall
from wardwright.physics.detection.from_site import noticed_along
from wardwright.physics.walking.from_site import Spot
from wardwright.trials.campaign.legs import REACHES, STEP_M, legs_between
from wardwright.trials.ways_on_foot import on_foot, walks_along

SITE = watched_hall()
SPOTS = (Spot("ground", 1.0, 3.0), Spot("ground", 5.1, 1.0), Spot("ground", 9.5, 5.0))
FANS = tuple(one for one in SITE.devices if one.sheet == "fan")
LEGS = legs_between(
    SITE.bare, CATALOGUE, between=(SPOTS, SPOTS), movement=FANS, rooms_c=(20.0, 28.0), slower=5.0
)


def test_each_leg_is_the_fastest_way() -> None:
    """By beginning and end; none from a place to itself."""
    for a, start in enumerate(SPOTS):
        for b, goal in enumerate(SPOTS):
            leg, last = LEGS.legs[a * 3 + b], int(LEGS.last[a * 3 + b])
            if a == b:
                assert leg is None
                assert last == -1
                continue
            way = on_foot(SITE.bare, CATALOGUE, start=start, goal=goal)
            assert way is not None
            assert leg is not None
            assert LEGS.flat[last] == pytest.approx(way.progress.flat[-1])


def test_places_are_passed_in_turn() -> None:
    """Along each leg nothing goes back, and a place is at most a step on from the one before but for a door."""
    for first, last in zip(LEGS.first.tolist(), LEGS.last.tolist(), strict=True):
        if last >= 0:
            flat = LEGS.flat[first : last + 1]
            assert (flat[1:] >= flat[:-1] - 1e-9).all()
            assert LEGS.doors[last] >= LEGS.doors[first]


def test_noticing_is_the_engines_at_each_pace_and_temperature() -> None:
    """Asked one by one: at 2.5 m/s and five times slower, at 20 and at 28 degrees."""
    known = [leg for leg in LEGS.legs if leg is not None]
    for pace, slower in enumerate((1.0, 5.0)):
        walks = walks_along(known)
        walks = walks._replace(clock=walks.clock * slower)
        for room, room_c in enumerate((20.0, 28.0)):
            asked = noticed_along(
                SITE.bare, CATALOGUE, FANS, walks=walks, reach_shares=REACHES, room_c=room_c
            )
            for number, each in enumerate(asked):
                got = [
                    row.tolist()
                    for leg, row in zip(LEGS.legs, LEGS.noticed[pace, room, number], strict=True)
                    if leg
                ]
                assert got == [one.noticed_m.tolist() for one in each]


def test_a_leg_to_where_nobody_stands_is_none() -> None:
    found = legs_between(
        SITE.bare,
        CATALOGUE,
        between=(SPOTS[:1], (Spot("attic", 0.0, 0.0),)),
        movement=(),
        rooms_c=(20.0,),
        slower=5.0,
    )
    assert found.legs == [None]
    assert found.last.tolist() == [-1]
    assert len(found.flat) == 0


def test_steps_are_whole() -> None:
    """Each leg has a place for every 0.05 m walked and one for its end."""
    for leg, first, last in zip(LEGS.legs, LEGS.first.tolist(), LEGS.last.tolist(), strict=True):
        if leg is not None:
            assert last - first == math.ceil(leg.progress.plan[-1] / STEP_M - 1e-9)
