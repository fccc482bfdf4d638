"""The floor of a trip from bed, and how far a detector's floor is from it."""

from __future__ import annotations

import pytest

from common.arrival_house import HALL, KITCHEN
from common.night_house import night_house
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.home_goals import middle_of
from wardwright.trials.trip_floor import Ends, clearance, floor_seen, room_floor, trip_floor

CATALOGUE = load_catalogue()
HOUSE = night_house().bare
STUDY_ROOM, KITCHEN_ROOM = HOUSE.space("study"), HOUSE.space("kitchen")
TO_KITCHEN = Ends(middle_of(STUDY_ROOM), middle_of(KITCHEN_ROOM), (STUDY_ROOM, KITCHEN_ROOM))
IN_HALL = Ends(middle_of(STUDY_ROOM), Spot("ground", 5.1, 2.0), (STUDY_ROOM,))


def test_the_floor_of_a_trip_is_the_band_and_both_rooms() -> None:
    floor = trip_floor(HOUSE, CATALOGUE, TO_KITCHEN)["ground"]
    for room in (STUDY_ROOM, KITCHEN_ROOM):
        assert (floor & room_floor(HOUSE, room)).sum() == room_floor(HOUSE, room).sum()
    hall = room_floor(HOUSE, HOUSE.space("hall"))
    # A body's middle keeps 0.22 m off walls, but in the doorways; the band is 0.6 m to each side of the walk.
    assert 0.01 * (floor & hall).sum() == pytest.approx(1.56 * 1.2 + 2 * 0.22 * 0.36, rel=0.1)


def test_what_a_detector_sees_of_a_trip_is_floor_of_it() -> None:
    seen, floor = (
        floor_seen(HOUSE, CATALOGUE, HALL, ends=TO_KITCHEN),
        trip_floor(HOUSE, CATALOGUE, TO_KITCHEN),
    )
    assert seen["ground"].any()
    assert not (seen["ground"] & ~floor["ground"]).any()
    away = HALL.model_copy(update={"heading_deg": 90.0})  # it looks into its wall
    assert not floor_seen(HOUSE, CATALOGUE, away, ends=TO_KITCHEN)["ground"].any()


def test_clearance_is_nought_where_it_is_seen_and_infinite_where_nothing_looks() -> None:
    assert clearance(HOUSE, CATALOGUE, HALL, ends=TO_KITCHEN) == 0.0
    # Only the shut door keeps the kitchen's detector from the hall's floor.
    assert clearance(HOUSE, CATALOGUE, KITCHEN, ends=IN_HALL) == 0.0
    away = HALL.model_copy(update={"heading_deg": 90.0})  # it looks into its wall
    assert clearance(HOUSE, CATALOGUE, away, ends=TO_KITCHEN) > 0.0


def test_no_way_has_no_floor() -> None:
    walled = HOUSE.model_copy(update={"openings": ()}).bare
    assert trip_floor(walled, CATALOGUE, TO_KITCHEN) == {}
