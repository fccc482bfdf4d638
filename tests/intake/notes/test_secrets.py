from __future__ import annotations

import pytest

from common.cottage import read
from wardwright.errors import NotesError
from wardwright.intake.notes.secrets import refuse_codes


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
