from __future__ import annotations

import pytest

from common.cottage import add, read
from wardwright.errors import NotesError

KIT = "movement-detector hall corner north-west 2.2 m\ncontact front-door\nkeypad hall east\nsounder landing west\n"


def test_each_detector_and_contact_gets_a_zone_if_none_is_stated() -> None:
    site = read(KIT)
    assert [(zone.number, zone.name, zone.devices, zone.behaviour) for zone in site.zones] == [
        (1, "Ground hall movement", ("hall-movement",), "instant"),
        (2, "Ground front door contact", ("front-door-contact",), "instant"),
    ]
    for zone in site.zones:
        assert {field for field, basis in zone.basis if basis == "guessed"} == {
            "behaviour",
            "devices",
            "name",
            "number",
        }


def test_a_behaviour_on_a_devices_line_is_told() -> None:
    (zone,) = read("contact front-door entry-exit parts full night").zones
    assert (zone.behaviour, zone.parts, zone.basis_of("behaviour")) == (
        "entry-exit",
        ("full", "night"),
        "told",
    )


def test_stated_zones_are_all_there_are() -> None:
    site = read(KIT + 'zone 7 "Front" front-door-contact entry-exit parts full night')
    (zone,) = site.zones
    assert (zone.id, zone.number, zone.name, zone.behaviour, zone.parts) == (
        "zone-7",
        7,
        "Front",
        "entry-exit",
        ("full", "night"),
    )
    assert zone.basis == ()


def test_a_zone_may_leave_its_name_and_behaviour_to_be_guessed() -> None:
    (zone,) = read(KIT + "zone 1 hall-movement front-door-contact").zones
    assert (zone.name, zone.behaviour, zone.devices) == (
        "Ground hall movement",
        "instant",
        ("hall-movement", "front-door-contact"),
    )
    assert dict(zone.basis) == {"name": "guessed", "behaviour": "guessed"}


def test_zones_are_added_to_those_of_a_site() -> None:
    base = read("contact front-door")
    site = add("contact kitchen-window", base=base)
    assert [(zone.number, zone.devices[0]) for zone in site.zones] == [
        (1, "front-door-contact"),
        (2, "kitchen-window-contact"),
    ]


def test_how_long_the_sounders_go_on() -> None:
    assert read("programme sounding 15 min").programme.sounding_time_s == 900.0


def test_times_parts_and_behaviours() -> None:
    site = read(
        'part up "upstairs set"\nbehaviour quiet "quiet entry" starts-entry allowed-after-entry delays-message\n'
        "behaviour note silent\nprogramme entry 0.5 min, abort 10 s\ncontact front-door quiet parts up"
    )
    programme = site.programme
    assert (programme.entry_time_s, programme.abort_delay_s, programme.basis_of("exit_time_s")) == (
        30,
        10,
        "default",
    )
    quiet, note = site.behaviours[-2:]
    assert (quiet.starts_entry, quiet.allowed_after_entry, quiet.delays_message, quiet.alarms) == (
        True,
        True,
        True,
        True,
    )
    assert (note.alarms, note.name) == (False, "note")
    assert (site.parts[-1].id, site.zones[0].parts, site.zones[0].behaviour) == ("up", ("up",), "quiet")


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("zone 1.5 hall-movement", "1.5 is no zone number"),
        ("zone 1", "the zone has no device"),
        ("zone 1 hall-movment", "Did you mean 'hall-movement'"),
        ("zone 1 hall-movement\nzone 1 front-door-contact", "there is a zone 1 already"),
        ("zone 1 hall-movement\nzone 2 hall-movement", "hall-movement is in zone 1 already"),
        ("zone 1 hall-movement instant entry-route", "two behaviours are given"),
        ("zone 1 hall-movement parts evening", "there is no part 'evening'"),
        ("programme", "no time is given"),
        ("programme entry 2 m", "'2 m' does not fit here. Write a time there"),
        ("programme entry 9999", "entry_time_s cannot be so"),
        ("part full", "there is a 'full' already"),
        ("behaviour instant silent", "there is a 'instant' already"),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(KIT + line)
