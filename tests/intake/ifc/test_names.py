from __future__ import annotations

from types import SimpleNamespace

from wardwright.intake.ifc.names import name_of, no_room


def space(name: str | None, words: str | None = None, **fields: str) -> SimpleNamespace:
    return SimpleNamespace(Name=name, LongName=words, id=lambda: 7, **fields)


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
