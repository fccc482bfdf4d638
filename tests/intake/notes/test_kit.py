from __future__ import annotations

import pytest

from common.cottage import add, read
from wardwright.errors import NotesError
from wardwright.intake.notes.reading import read_notes
from wardwright.model.catalogue import Catalogue


def test_a_device_has_a_name_of_floor_room_and_what() -> None:
    site = read(
        "movement-detector hall corner north-west\n"
        "movement-detector hall corner south-west\n"
        "contact front-door\n"
        "keypad landing west"
    )
    assert [(device.id, device.name) for device in site.devices] == [
        ("hall-movement", "Ground hall movement"),
        ("hall-movement-2", "Ground hall movement 2"),
        ("front-door-contact", "Ground front door contact"),
        ("landing-keypad", "First landing keypad"),
    ]
    (named,) = read('keypad hall east as way-in named "By the door"').devices
    assert (named.id, named.name) == ("way-in", "By the door")


def test_the_sheet_is_told_or_the_first_that_fits() -> None:
    inside, outside, told = read(
        "sounder hall west, 0.5 from south\n"
        "sounder hall outside west\n"
        "movement-detector hall corner north-west sheet movement-12m-pet"
    ).devices
    assert (inside.sheet, outside.sheet, told.sheet) == (
        "sounder-inside",
        "sounder-outside",
        "movement-12m-pet",
    )
    assert (inside.basis_of("sheet"), told.basis_of("sheet")) == ("guessed", "told")


def test_where_it_looks() -> None:
    devices = read(
        "movement-detector hall west, 1 from south, 2.2 m\n"
        "movement-detector hall west, 1 from south, 2.2 m, looking south-east, tilt 5\n"
        "movement-detector hall west, 1 from south, 2.2 m, heading 30 deg, existing\n"
        "movement-detector hall corner north-west 2.2 m"
    ).devices
    assert [device.heading_deg for device in devices] == [None, -45.0, 30.0, -45.0]
    assert [device.basis_of("heading_deg") for device in devices] == ["default", "told", "told", "guessed"]
    assert (devices[1].tilt_deg, devices[2].is_existing) == (5, True)


def test_measured_marks_what_was_told_and_no_guess() -> None:
    (device,) = read("keypad hall east, 0.5 from south, 1.4 m, measured").devices
    assert (device.basis_of("mount"), device.basis_of("sheet")) == ("measured", "guessed")


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("keypad hall east sheet movement-12m", "there is no keypad sheet 'movement-12m'"),
        ("keypad hall east looking up", "'up' is not a word for 'looking'"),
        ("keypad hall east looking south heading 30", "where it looks is given twice"),
        ("contact front-door instant entry-exit", "two behaviours are given"),
        ("contact front-door parts nihgt", "there is no part 'nihgt'. Did you mean 'night'"),
        ("keypad hall east as front\nkeypad hall west as front", "there is a 'front' already"),
        ("keypad hall east tilt 120", "tilt_deg cannot be so"),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        add(line)


def test_a_catalogue_without_the_kind_is_said() -> None:
    with pytest.raises(NotesError, match="the catalogue has no keypad"):
        read_notes("storey g\nhall 2 x 2\nkeypad hall east\n", where="x", catalogue=Catalogue())
