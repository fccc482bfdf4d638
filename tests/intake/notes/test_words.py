from __future__ import annotations

from collections.abc import Callable

import pytest

from wardwright.errors import NotesError
from wardwright.intake.notes.lengths import cut
from wardwright.intake.notes.words import Line, nearest


def line(text: str) -> Line:
    return Line(cut(text, where="x line 3"), where="x line 3")


def test_pieces_are_taken_in_turn_and_fillers_passed_over() -> None:
    read = line("keypad the hall 0.4 from its south end")
    assert [read.name("a word") for _ in range(2)] == ["keypad", "hall"]
    assert read.number("a length") == 0.4
    assert (read.maybe("to"), read.maybe("from")) == (None, "from")
    assert read.choice("a side", ("north", "south")) == "south"
    assert read.maybe("end") == "end"
    assert read.at_end
    read.end()


@pytest.mark.parametrize(
    ("text", "take", "message"),
    [
        ("", lambda read: read.take("a room"), "the line ends where a room should follow"),
        ("hall", lambda read: read.number("a length"), "'hall' stands where a length should"),
        ("30 kg", lambda read: read.number("a length"), "'30 kg' does not fit here. Write a length there"),
        ("3", lambda read: read.name("a room"), "'3' stands where a room should"),
        ("sauth", lambda read: read.choice("a side", ("north", "south")), "Did you mean 'south'"),
        ("left", lambda read: read.end(), "'left' is left over"),
    ],
)
def test_what_does_not_fit_is_refused_with_its_line(
    text: str, take: Callable[[Line], object], message: str
) -> None:
    with pytest.raises(NotesError, match=message) as caught:
        take(line(text))
    assert caught.value.where == "x line 3"


def test_a_cure_names_the_nearest_and_no_far_one() -> None:
    assert nearest("kitchn", ["hall", "kitchen"]).startswith("Did you mean 'kitchen'?")
    assert nearest("zzz", ["hall"]) == "Known here: hall"
    assert "state it first" in nearest("hall", [])
    assert nearest("x", [f"room-{n}" for n in range(40)]).endswith("room-23, ...")
