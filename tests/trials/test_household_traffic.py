"""How often the household sets off each detector."""

from __future__ import annotations

import math

from common.houses import on_opening, on_wall, person, two_rooms_and_hall
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.household_traffic import AT_HOME, DOORS, IN_ROOM, NOBODY_KNOWN, OUTINGS, traffic_of

CATALOGUE = load_catalogue()
KEYPAD = on_wall("keypad", "keypad-radio", "kitchen-wall", 5.0, side="right", height_m=1.4)
HALL = on_wall("hall-pir", "movement-12m", "north", 5.1)
ANN, BOB = person("Ann", bed="study"), person("Bob", bed="study")


def test_nobody_known_is_a_stated_default() -> None:
    site = two_rooms_and_hall(devices=(KEYPAD, HALL))
    traffic = traffic_of(site, CATALOGUE, HALL)
    assert (traffic.shares, traffic.is_known) == (((NOBODY_KNOWN, 1.0),), False)
    assert traffic.most == 16 * 3600 / 180


def test_two_people_pass_the_hall_out_and_in_and_from_bed_to_kitchen() -> None:
    site = two_rooms_and_hall(devices=(KEYPAD, HALL), people=(ANN, BOB))
    assert traffic_of(site, CATALOGUE, HALL).shares == ((OUTINGS, 4.0), (AT_HOME, 2.0))


def test_a_room_that_people_stay_in() -> None:
    kitchen = on_wall("kitchen-pir", "movement-12m", "west", 1.0)
    site = two_rooms_and_hall(devices=(KEYPAD, kitchen), people=(ANN,))
    assert (IN_ROOM, 1.0) in traffic_of(site, CATALOGUE, kitchen).shares


def test_contacts_tell_that_a_leaf_opens_and_shuts() -> None:
    front, window = on_opening("front", "front-door"), on_opening("pane", "kitchen-window")
    site = two_rooms_and_hall(devices=(front, window), people=(ANN, BOB))
    devices = {one.id: one.model_copy(update={"sheet": "contact-radio"}) for one in site.devices}
    assert traffic_of(site, CATALOGUE, devices["front"]).shares == ((OUTINGS, 8.0),)
    assert traffic_of(site, CATALOGUE, devices["pane"]).shares == ((DOORS, 0.5),)


def test_one_keypad_of_two_is_used_half_as_often() -> None:
    other = KEYPAD.model_copy(update={"id": "other"})
    site = two_rooms_and_hall(devices=(KEYPAD, other), people=(ANN,))
    assert traffic_of(site, CATALOGUE, KEYPAD).shares == ((OUTINGS, 1.0),)


def test_what_only_tells_of_trouble_sends_nothing_else() -> None:
    smoke = on_wall("smoke", "smoke-alarm-radio", "north", 5.1)
    traffic = traffic_of(two_rooms_and_hall(devices=(smoke,), people=(ANN,)), CATALOGUE, smoke)
    assert (traffic.shares, traffic.most) == ((), math.inf)
