from __future__ import annotations

from common.fitted import fitted
from wardwright.documents.content.forms.living import (
    entry_doors,
    keypad_rooms,
    rooms_with,
    signal_words,
    watched_rooms,
)
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def test_the_entry_door_is_the_one_that_is_programmed_so() -> None:
    site = fitted()
    assert entry_doors(site, CATALOGUE) == ("Front door",)
    told = tuple(one.model_copy(update={"is_entry_door": one.id == "garden-door"}) for one in site.openings)
    unprogrammed = site.model_copy(update={"zones": (), "openings": told})
    assert entry_doors(unprogrammed, CATALOGUE) == ("Garden door",)


def test_rooms_are_those_that_the_devices_stand_in() -> None:
    site = fitted()
    assert keypad_rooms(site, CATALOGUE) == ("Hall",)
    assert rooms_with(site, CATALOGUE, "camera") == ()
    assert "Landing" in rooms_with(site, CATALOGUE, "movement-detector")


def test_at_night_only_the_rooms_of_the_part_are_watched() -> None:
    site = read_sample("terrace-better")
    assert set(watched_rooms(site, CATALOGUE, "night")) < set(watched_rooms(site, CATALOGUE, "full"))
    assert "Landing" not in watched_rooms(site, CATALOGUE, "night")


def test_states_in_which_nothing_happens_are_left_out() -> None:
    rows = signal_words(read_sample("terrace-better"))
    assert {row[0] for row in rows} == {"intruder", "tamper", "fault"}
    assert not [row for row in rows if row[0] == "intruder" and row[1] == "unset"]
    assert all(row[2] != "none" or row[3] != "nobody" for row in rows)
