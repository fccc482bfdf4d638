"""A walk taken apart by storeys, and the floor about each stretch."""

from __future__ import annotations

import numpy as np

from common.arrival_house import KEYPAD, arrival_house
from wardwright.physics.walking.from_site import way_in_spot
from wardwright.rules.entry_routes import place_before
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.barriers import grids_of
from wardwright.trials.home_goals import middle_of
from wardwright.trials.household_walk import walk
from wardwright.trials.stretches import BAND_M, Stretch, floor_about, stretches_of

CATALOGUE = load_catalogue()
TERRACE = read_sample("terrace")


def downstairs(bed: str) -> tuple[Stretch, np.ndarray]:
    pad = next(one for one in TERRACE.devices if one.id == "hall-keypad")
    start, goal = middle_of(TERRACE.space(bed)), place_before(TERRACE, pad)
    route = walk(TERRACE.bare, CATALOGUE, start, goal=goal)
    assert route is not None
    found = stretches_of(TERRACE.bare, route)
    assert sorted(np.concatenate([numbers for _, numbers in found]).tolist()) == list(
        range(len(route.points))
    )
    for stretch, numbers in found:
        assert stretch.points().tolist() == route.points[numbers].tolist()
        assert {route.storeys[number] for number in numbers.tolist()} == {stretch.storey}
    return next((one, numbers) for one, numbers in found if one.storey == goal.storey)


def test_walks_from_two_beds_are_one_below() -> None:
    beds = sorted({one.bed for one in TERRACE.people if one.bed})
    assert len(beds) > 1
    (one, first), (other, second) = (downstairs(bed) for bed in beds[:2])
    assert one == other
    assert first[0] != second[0]  # the walks to the stairs are not equally long
    assert floor_about(TERRACE.bare, one) is floor_about(TERRACE.bare, other)


def test_the_floor_about_a_walk_is_near_it_and_behind_no_door_that_it_does_not_pass() -> None:
    site = arrival_house()
    house, start = site.bare, way_in_spot(site, site.opening("front-door"))
    route = walk(house, CATALOGUE, start, goal=place_before(site, KEYPAD))
    assert route is not None
    ((stretch, _),) = stretches_of(house, route)
    assert stretch.passed == frozenset()
    points = grids_of(house)["ground"].centres()[floor_about(house, stretch)]
    gaps = np.hypot(*(points[:, None] - route.points[None]).transpose(2, 0, 1)).min(axis=1)
    assert len(points)
    assert gaps.max() <= BAND_M + 0.01  # the walk's points lie 0.05 m apart
    for door in (one for one in house.openings if one.kind == "door"):
        through = floor_about(house, stretch._replace(passed=frozenset({door.id})))
        assert not (floor_about(house, stretch) & ~through).any()
