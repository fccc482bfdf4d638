"""Walks from bed: their clock, and the first moment at which a detector notices."""

from __future__ import annotations

import math

import pytest

from common.arrival_house import HALL, KITCHEN, STUDY
from common.night_house import night_house
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.home_goals import middle_of
from wardwright.trials.household_walk import walk
from wardwright.trials.night_walk import (
    Moment,
    first_noticed,
    noticed_in_room,
    steps_on,
    walked_until,
)
from wardwright.trials.trip_floor import Ends

CATALOGUE = load_catalogue()
HOUSE = night_house().bare
STUDY_ROOM, KITCHEN_ROOM = HOUSE.space("study"), HOUSE.space("kitchen")
TO_KITCHEN = Ends(middle_of(STUDY_ROOM), middle_of(KITCHEN_ROOM), (STUDY_ROOM, KITCHEN_ROOM))
IN_HALL = Ends(middle_of(STUDY_ROOM), Spot("ground", 5.1, 2.0), (STUDY_ROOM,))
# By the taut line: from (8.2, 3) to the jamb of the study door, a body's radius above it, and on the same way.
WALKED_M = 2.0 * math.hypot(2.05 - 0.05, 0.82) + 2.2


def last_point(ends: Ends) -> int:
    route = walk(HOUSE, CATALOGUE, ends.start, goal=ends.goal)
    assert route is not None
    return len(route.points) - 1


def test_what_is_walked_there_and_back() -> None:
    steps = steps_on(HOUSE, CATALOGUE, TO_KITCHEN)
    assert steps is not None
    there = walked_until(steps, Moment(last_point(TO_KITCHEN)))
    assert there == (pytest.approx(WALKED_M, rel=0.03), 0.0, 2.0)
    home = walked_until(steps, Moment(0, is_back=True))
    # Both leaves stand open on the way back.
    assert home == (pytest.approx(2.0 * there[0]), 0.0, 2.0)


def test_a_leaf_that_stands_open_at_night_takes_no_time() -> None:
    house = night_house(leaves="open", ever="shut").bare
    steps = steps_on(house, CATALOGUE, TO_KITCHEN)
    assert steps is not None
    assert steps.doors.max() == 0.0
    shut_at_night = steps_on(night_house(leaves="shut", ever="open").bare, CATALOGUE, TO_KITCHEN)
    assert shut_at_night is not None
    assert shut_at_night.doors.max() == 2.0


def test_no_way_is_no_walk() -> None:
    walled = HOUSE.model_copy(update={"openings": ()}).bare
    assert steps_on(walled, CATALOGUE, TO_KITCHEN) is None
    assert first_noticed(walled, CATALOGUE, HALL, ends=TO_KITCHEN) is None


def test_the_halls_detector_notices_once_the_study_door_is_open() -> None:
    found = first_noticed(HOUSE, CATALOGUE, HALL, ends=TO_KITCHEN)
    steps = steps_on(HOUSE, CATALOGUE, TO_KITCHEN)
    assert found is not None
    assert steps is not None
    assert not found.is_back
    # At the door, 2.1 m from bed, or a step behind it.
    assert 1.6 < walked_until(steps, found)[0] < 2.6


def test_a_detector_in_the_bedroom_notices_before_anybody_has_gone() -> None:
    assert first_noticed(HOUSE, CATALOGUE, STUDY, ends=TO_KITCHEN) == Moment(0)


def test_a_whole_room_counts_at_the_end_of_the_walk() -> None:
    # The kitchen's detector hangs at its south end: it sees the kitchen door opened, or at the latest the room.
    found = first_noticed(HOUSE, CATALOGUE, KITCHEN, ends=TO_KITCHEN)
    assert found is not None
    assert not found.is_back
    assert found.point <= last_point(TO_KITCHEN)


def test_a_shut_door_hides_what_an_open_one_shows() -> None:
    shut = first_noticed(HOUSE, CATALOGUE, KITCHEN, ends=IN_HALL)
    ever_open = night_house(leaves="shut", ever="open").bare
    usual = first_noticed(ever_open, CATALOGUE, KITCHEN, ends=IN_HALL)
    most = first_noticed(ever_open, CATALOGUE, KITCHEN, ends=IN_HALL, leaves="most")
    kept = first_noticed(
        ever_open, CATALOGUE, KITCHEN, ends=IN_HALL, leaves="most", kept_shut=frozenset({"kitchen-door"})
    )
    assert (shut, usual, kept) == (None, None, None)
    assert most is not None


def test_staying_in_a_room() -> None:
    hall = HOUSE.space("hall")
    assert noticed_in_room(HOUSE, CATALOGUE, HALL, room=hall)
    assert not noticed_in_room(HOUSE, CATALOGUE, KITCHEN, room=HOUSE.space("study"))
