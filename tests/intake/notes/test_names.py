from __future__ import annotations

import pytest

from wardwright.errors import NotesError
from wardwright.intake.notes.clauses import Clauses
from wardwright.intake.notes.names import find, new_id, spellings, words_of
from wardwright.intake.notes.words import Line
from wardwright.model.fabric import Space

LINE = Line((), where="x line 1")
SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0))


def room(identity: str, name: str, belongs: str = "ours") -> Space:
    return Space(id=identity, name=name, storey="g", outline_m=SQUARE, belongs=belongs)  # type: ignore[arg-type]


ROOMS = [
    room("kueche", "Küche"),
    room("bedroom-1-a202", "Bedroom 1 (A202)"),
    room("bedroom-1-b202", "Bedroom 1 (B202)", "neighbour"),
    room("stair", "Stair / Hallway"),
    room("wc-1", "WC"),
    room("wc-2", "WC"),
]


@pytest.mark.parametrize(
    ("written", "identity"),
    [
        ("kueche", "kueche"),
        ("Küche", "kueche"),
        ("KUCHE", "kueche"),
        ("Bedroom 1", "bedroom-1-a202"),
        ("bedroom-1", "bedroom-1-a202"),
        ("Bedroom 1 (B202)", "bedroom-1-b202"),
        ("stair-hallway", "stair"),
        ("wc-2", "wc-2"),
    ],
)
def test_a_room_is_found_by_id_or_name(written: str, identity: str) -> None:
    assert find(LINE, ROOMS, written, what="room").id == identity


def test_two_of_a_name_are_not_chosen_from() -> None:
    with pytest.raises(NotesError, match="'WC' could be any of wc-1, wc-2"):
        find(LINE, ROOMS, "WC", what="room")


def test_one_that_is_not_there_is_answered_with_the_nearest() -> None:
    with pytest.raises(NotesError, match=r"there is no room 'kuch'\. Did you mean 'kuche'"):
        find(LINE, ROOMS, "kuch", what="room")


def test_ids_are_given_or_counted_up() -> None:
    given = Clauses(LINE, words={"as": "big-room"})
    assert new_id(LINE, given, "hall", taken=ROOMS) == "big-room"
    assert new_id(LINE, Clauses(LINE), "hall", taken=ROOMS) == "hall"
    assert new_id(LINE, Clauses(LINE), "wc-1", taken=ROOMS) == "wc-1-2"
    with pytest.raises(NotesError, match="there is a 'stair' already"):
        new_id(LINE, Clauses(LINE, words={"as": "stair"}), "x", taken=ROOMS)
    with pytest.raises(NotesError, match="'Big' is no id"):
        new_id(LINE, Clauses(LINE, words={"as": "Big"}), "x", taken=ROOMS)


def test_spellings_hold_at_most_two() -> None:
    assert spellings("Straße (Süd)") == {"strasse-sued", "strasse-sud"}
    assert words_of("front-door") == "Front door"
