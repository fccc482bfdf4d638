"""Where detectors possibly notice the household on a walk."""

from __future__ import annotations

import numpy as np

from common.arrival_house import HALL, KEYPAD, KITCHEN, UNIT, arrival_house
from common.houses import on_opening
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.rules.entry_routes import place_before
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.household_walk import leaf_of, noticed_on, opened_on, walk

CATALOGUE = load_catalogue()
SITE = arrival_house(kitchen_door="shut")
HOUSE = SITE.bare
START = way_in_spot(SITE, SITE.opening("front-door"))
BEFORE_KEYPAD = place_before(SITE, KEYPAD)
IN_KITCHEN = Spot("ground", 2.0, 3.0)


def test_the_walk_is_the_way_in_and_none_where_there_is_none() -> None:
    route = walk(HOUSE, CATALOGUE, START, goal=BEFORE_KEYPAD)
    assert route is not None
    assert route.points[0].tolist() == [START.x, START.y]
    assert opened_on(route) == ()


def test_a_shut_leaf_on_the_way_is_looked_through_only_once_it_is_opened() -> None:
    route = walk(HOUSE, CATALOGUE, START, goal=IN_KITCHEN)
    assert route is not None
    ((at, door),) = opened_on(route)
    assert door == "kitchen-door"
    noticed = noticed_on(HOUSE, CATALOGUE, KITCHEN, start=START, goal=IN_KITCHEN)
    assert not noticed[: at + 1].any()
    assert noticed[-1]
    back = noticed_on(HOUSE, CATALOGUE, KITCHEN, start=START, goal=IN_KITCHEN, is_way_back=True)
    assert back[: at + 1].any()  # who leaves the kitchen has opened its door
    assert not (noticed & ~back).any()


def test_past_a_leaf_ajar_somebody_who_reaches_in_is_seen_before_it_is_pushed() -> None:
    ajar = arrival_house(kitchen_door="ajar").bare
    route = walk(ajar, CATALOGUE, START, goal=IN_KITCHEN)
    assert route is not None
    ((at, _),) = opened_on(route)
    noticed = noticed_on(ajar, CATALOGUE, KITCHEN, start=START, goal=IN_KITCHEN)
    plan = np.hypot(*(route.points - route.points[at]).T)
    reaches_in = np.flatnonzero((plan < 0.22) & (np.arange(len(plan)) <= at))
    assert noticed[reaches_in].any()


def test_leaves_that_may_stand_open_let_more_be_seen() -> None:
    house = arrival_house(kitchen_door=None).bare
    usual = noticed_on(house, CATALOGUE, KITCHEN, start=START, goal=BEFORE_KEYPAD)
    most = noticed_on(house, CATALOGUE, KITCHEN, start=START, goal=BEFORE_KEYPAD, leaves="most")
    assert not usual.any()
    assert most.any()


def test_the_halls_detector_notices_all_the_way() -> None:
    assert noticed_on(HOUSE, CATALOGUE, HALL, start=START, goal=BEFORE_KEYPAD).all()


def test_no_walk_is_no_notice() -> None:
    # Nobody gets into a house without doors.
    walled = HOUSE.model_copy(update={"openings": ()}).bare
    assert walk(walled, CATALOGUE, START, goal=IN_KITCHEN) is None
    assert noticed_on(walled, CATALOGUE, HALL, start=START, goal=IN_KITCHEN).shape == np.zeros(0).shape


def test_the_leaf_that_a_device_is_on() -> None:
    assert leaf_of(on_opening("c", "front-door")) == "front-door"
    assert leaf_of(UNIT) is None
