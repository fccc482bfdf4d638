"""Words, displays, and names made of floor, room and thing."""

from __future__ import annotations

from itertools import islice

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, person, two_rooms_and_hall, zone
from wardwright.model.fabric import Storey
from wardwright.model.site import Site
from wardwright.rules.zone_names import as_shown, faults_of_words, floor_names, proposed_names, words_of

UPSTAIRS = Storey(id="up", name="Dachgeschoss", elevation_m=2.7)
CELLAR = Storey(id="cellar", name="Keller", elevation_m=-2.4)
FAN = on_wall("fan", "fan", "study-wall", 1.0, side="right")


def house(**parts: object) -> Site:
    return two_rooms_and_hall(**({"devices": (FAN, on_opening("front", "front-door"))} | parts))


def proposals(site: Site, device: str, length: int, count: int = 3) -> list[str]:
    named = proposed_names(site, CATALOGUE, zone=zone(1, "x", device), length=length)
    return list(islice(named, count))


def test_words_are_letters_only() -> None:
    assert words_of("  Anna\N{RIGHT SINGLE QUOTATION MARK}s  K\u00fcche-2, a101 ") == (
        "anna",
        "k\u00fcche",
        "a101",
    )


@pytest.mark.parametrize(
    ("name", "length", "shown"),
    [("Front  Door", None, "front door"), ("Front door", 6, "front"), ("a", 4, "a")],
)
def test_a_display_cuts_names(name: str, length: int | None, shown: str) -> None:
    assert as_shown(name, length) == shown


def test_floors_are_counted_from_the_ground() -> None:
    ground = two_rooms_and_hall().storeys[0]
    site = house(storeys=(UPSTAIRS, ground, CELLAR))
    assert [floor_names(site, name)[0] for name in ("cellar", "ground", "up")] == [
        "Cellar",
        "Ground",
        "First",
    ]


def test_the_floor_is_left_out_of_a_house_with_one() -> None:
    assert proposals(house(), "fan", 16) == ["Study movement", "Study movement 2", "Study movement 3"]


@pytest.mark.parametrize(
    ("length", "name"),
    [
        (24, "Ground Study movement"),
        (19, "Gnd Study movement"),
        (16, "Ground Study mov"),
        (14, "Gnd Study mov"),
        (12, "Gnd Stud mov"),
        (11, None),
    ],
)
def test_the_fullest_form_that_fits_is_taken(length: int, name: str | None) -> None:
    site = house(storeys=(two_rooms_and_hall().storeys[0], UPSTAIRS))
    assert proposals(site, "fan", length, 1) == ([] if name is None else [name])


def test_the_word_room_goes_before_the_others_are_cut() -> None:
    rooms = tuple(
        room.model_copy(update={"name": "Living room"}) if room.id == "study" else room
        for room in house().spaces
    )
    site = house(spaces=rooms, storeys=(two_rooms_and_hall().storeys[0], UPSTAIRS))
    assert proposals(site, "fan", 16, 1) == ["Gnd Living mov"]
    assert proposals(site, "fan", 27, 1) == ["Ground Living room movement"]


def test_a_contact_is_named_by_its_room_and_leaf() -> None:
    assert proposals(house(), "front", 16, 1) == ["Hall door"]


def test_a_room_called_after_a_person_is_named_by_its_use() -> None:
    rooms = tuple(
        room.model_copy(update={"name": "Anna's room"}) if room.id == "study" else room
        for room in house().spaces
    )
    site = house(spaces=rooms, people=(person("Anna"),))
    assert proposals(site, "fan", 16, 1) == ["study movement"]


def test_the_words_of_the_plan_say_where() -> None:
    rooms = tuple(room.model_copy(update={"name": "Wohnzimmer"}) for room in house().spaces)
    assert faults_of_words(house(spaces=rooms), "Wohnzimmer Fenster", length=16) == ()
    assert faults_of_words(house(), "Wohnzimmer Fenster", length=16) == ("does not say where",)
