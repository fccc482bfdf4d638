from __future__ import annotations

from types import SimpleNamespace

import pytest

from wardwright.intake.ifc.names import name_of, no_room, use_of


def space(name: str | None, words: str | None = None, **fields: str) -> SimpleNamespace:
    return SimpleNamespace(Name=name, LongName=words, id=lambda: 7, **fields)


@pytest.mark.parametrize(
    ("name", "use"),
    [
        ("Flur", "hall"),
        ("Bad", "bathroom"),
        ("Küche", "kitchen"),
        ("Kueche", "kitchen"),
        ("Wohnen", "living"),
        ("Schlafzimmer", "bedroom"),
        ("Buero", "study"),
        ("Galerie", "loft"),
        ("Living Room", "living"),
        ("Stair / Hallway", "stairwell"),
        ("Bathroom 2", "bathroom"),
        ("Utility", "utility"),
        ("Foyer", "hall"),
        ("Room", "other"),
        ("Zimmer 4", "other"),
    ],
)
def test_uses_in_two_languages(name: str, use: str) -> None:
    assert use_of(name) == use


def test_readable_names() -> None:
    assert name_of(space("A102", "Living Room")) == "Living Room (A102)"
    assert name_of(space("6", "Küche")) == "Küche"
    assert name_of(space("1 - Living room", "Living room")) == "Living room"
    assert name_of(space("Loft")) == "Loft"
    assert name_of(space(None)) == "space 7"


def test_what_is_no_room() -> None:
    assert no_room(space("R301", "Roof")) == "not a room"
    assert no_room(space("4 - Roof", "4 - Roof")) == "not a room"
    assert no_room(space("8", "Terrasse")) == "outside the house"
    assert no_room(space("8", "Area 8", PredefinedType="EXTERNAL")) == "outside the house"
    assert no_room(space("1", "Flur", PredefinedType="INTERNAL")) is None
