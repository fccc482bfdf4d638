"""Where one stands to repeat each test."""

from __future__ import annotations

from common.changed_pairs import CATALOGUE, house
from common.houses import one_room, opening, person, pet
from wardwright.questions.round_spots import round_begins_at
from wardwright.questions.round_spots import test_spots as spots_of


def test_there_is_a_place_for_devices_doors_sleepers_and_pets_that_have_a_room() -> None:
    people = (person("Father", bed="study"), person("Guest"))
    found = spots_of(house(people=people, pets=(pet("cat", spaces=("hall",)), pet("bird"))))
    assert {"unit", "study-movement", "front-contact", "front-door", "father", "cat"} <= found.keys()
    assert not {"guest", "bird", "kitchen-window"} & found.keys()
    assert 6.2 < found["father"].x < 10.2
    assert 4.1 < found["cat"].x < 6.1


def test_the_round_begins_at_the_keypad_then_the_unit_then_a_door_then_nowhere() -> None:
    assert round_begins_at(house(), CATALOGUE) == "keypad"
    assert round_begins_at(house(devices=(), zones=()), CATALOGUE) == "front-door"
    assert round_begins_at(one_room(), CATALOGUE) == ""
    one = one_room(openings=(opening("door", "south", 2.0, is_entry_door=True),))
    assert round_begins_at(one, CATALOGUE) == "door"
