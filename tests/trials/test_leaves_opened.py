"""How leaves stand that somebody comes by, and which they open."""

from __future__ import annotations

from common.night_house import night_house
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.household_walk import walk
from wardwright.trials.leaves_opened import doors_to_open, state_in

CATALOGUE = load_catalogue()


def test_how_a_leaf_stands_by_day_by_night_and_at_its_most() -> None:
    house = night_house(leaves="shut", ever="open").bare
    door = house.opening("kitchen-door")
    assert [state_in(leaves)(door) for leaves in ("usual", "night", "most")] == ["open", "shut", "open"]
    assert state_in("most", frozenset({"kitchen-door"}))(door) == "shut"


def test_only_leaves_that_are_not_open_are_opened_in_the_order_of_the_walk() -> None:
    house = night_house(leaves="shut", ever="open").bare
    route = walk(house, CATALOGUE, Spot("ground", 8.2, 3.0), goal=Spot("ground", 2.0, 3.0))
    assert route is not None
    at_night = doors_to_open(house, route, "night")
    assert [door for _, door in at_night] == ["study-door", "kitchen-door"]
    assert at_night[0][0] < at_night[1][0]
    assert doors_to_open(house, route, "usual") == ()
    kept = doors_to_open(house, route, "most", kept_shut=frozenset({"kitchen-door"}))
    assert [door for _, door in kept] == ["kitchen-door"]
