"""Notes of where somebody may be while a part is set."""

from __future__ import annotations

import pytest

from wardwright.errors import NotesError
from wardwright.intake.notes.reading import read_notes
from wardwright.model.household import Pass
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
HOUSE = """
house "Hut"
storey ground 2.4 high
hall 2.0 x 4.0 at 0, 0
kitchen 3.0 x 4.0 against hall east
person mother usual bed hall
person cleaner visits no-code
"""


def read(*lines: str) -> tuple[Pass, ...]:
    text = HOUSE + "\n".join(lines)
    return read_notes(text, where="hut.notes", catalogue=CATALOGUE).people[0].passes


def test_where_somebody_may_be_and_not() -> None:
    assert read("pass mother night, may hall, not kitchen") == (
        Pass(part="night", may=("hall",), may_not=("kitchen",)),
    )
    assert read("pass mother night, not kitchen") == (Pass(part="night", may_not=("kitchen",)),)
    assert read(
        'part evening "evening set"', "pass mother evening may hall", "pass mother night may hall"
    ) == (
        Pass(part="evening", may=("hall",)),
        Pass(part="night", may=("hall",)),
    )


def test_who_visits_and_who_has_no_code() -> None:
    mother, cleaner = read_notes(HOUSE, where="hut.notes", catalogue=CATALOGUE).people
    assert (mother.comes, mother.knows_code) == ("lives", True)
    assert (cleaner.comes, cleaner.knows_code) == ("visits", False)


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("pass mother night", "the pass names no room"),
        ("pass uncle night, may hall", "there is no person 'uncle'"),
        ("pass mother evening, may hall", "there is no part 'evening'"),
        ("pass mother night, may attic", "there is no room 'attic'"),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(line)


def test_one_line_for_each_part() -> None:
    with pytest.raises(NotesError, match="has a pass for night part set already"):
        read("pass mother night, may hall", "pass mother night, not kitchen")
