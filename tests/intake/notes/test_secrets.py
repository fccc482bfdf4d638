from __future__ import annotations

import pytest

from common.cottage import read
from wardwright.errors import NotesError
from wardwright.intake.notes.secrets import holds_code, refuse_codes, starred_out


@pytest.mark.parametrize(
    "line",
    [
        "keypad hall east, code 4711",
        "keypad hall east # code: 4711",
        'zone 1 "PIN 0815 hall" hall-movement',
        "# the code of mother is 12 34",
        "# 987654 is the master code",
        "# pin=1-2-3-4",
        "# Kennwort Sonnenblume",
        "# password: sunflower",
        "# user_code 4711",
    ],
)
def test_a_line_with_a_code_is_refused_and_never_repeated(line: str) -> None:
    with pytest.raises(NotesError, match="never stored") as caught:
        refuse_codes(line, where="x line 9")
    assert caught.value.where == "x line 9"
    for word in ("4711", "0815", "12 34", "987654", "1-2-3-4", "Sonnenblume", "sunflower"):
        assert word not in str(caught.value)


@pytest.mark.parametrize(
    "line",
    [
        "# postcode 12345",
        "kitchen 3.2 x 4.1 against hall east",
        "# the keypad's code is set by the family",
        'zone 12 "Ground hall movement" hall-movement',
        "# the pin of the hinge is 8 mm thick",
    ],
)
def test_a_line_without_one_passes(line: str) -> None:
    refuse_codes(line, where="x")


def test_notes_refuse_it_wherever_it_stands() -> None:
    with pytest.raises(NotesError, match="never stored"):
        read("# front door code 2580")


@pytest.mark.parametrize(
    ("line", "kept"),
    [
        ("07:42 user_code 4711 entered", "07:42 user_code **** entered"),
        ("2026-11-26 07:42 code accepted", "2026-11-26 07:42 code accepted"),
        ("password: sunflower, then set", "password: *********, then set"),
        ("PIN 12 34 and pin=9876", "PIN ** ** and pin=****"),
        ("07:43 hall door", "07:43 hall door"),
    ],
)
def test_codes_in_somebody_elses_text_are_starred_out(line: str, kept: str) -> None:
    assert starred_out(line) == kept


def test_a_code_is_seen_by_either_list_of_words() -> None:
    assert holds_code("passcodes 471122")
    assert holds_code("# Kennwort Sonnenblume")
    assert not holds_code("2.40 m high")
