"""Two states of a house as lines and as JSON."""

from __future__ import annotations

import json

import pytest

from common.changed_pairs import CATALOGUE, detector_moved, house, state
from wardwright.documents.content.comparison import Comparison, comparison
from wardwright.documents.content.signed import DifferentAnswer, ProgramTold
from wardwright.documents.writers.comparison_text import comparison_json, comparison_text
from wardwright.questions.changes_since import Changes, changes_since

PROGRAM = ProgramTold(
    what=("the program is version 2 now; it was 1",),
    answers=(
        DifferentAnswer(
            key="6/keypad", title="Radio: keypad", was="met: 20 dB", today="met: 21 dB", cause="program"
        ),
    ),
)


@pytest.fixture(scope="module")
def both() -> tuple[Changes, Comparison]:
    before, after = state(house()), state(detector_moved())
    found = changes_since(before, after, CATALOGUE)
    return found, comparison(before, after, CATALOGUE, found=found)


def test_lines_tell_the_house_the_answers_the_rules_and_the_tests(both: tuple[Changes, Comparison]) -> None:
    text = comparison_text(both[1], names=("before", "after"))
    parts = ("THE HOUSE: 1 changed", "ANSWERS THAT FAIL NOW", "RULES THAT FAIL NOW", "TESTS TO REPEAT")
    places = [text.index(part) for part in parts]
    assert places == sorted(places)
    assert text.startswith("before -> after")
    assert "PROGRAM" not in text
    assert text.isascii() or all(ord(sign) < 256 for sign in text)


@pytest.mark.parametrize("width", [40, 100])
def test_lines_are_folded(both: tuple[Changes, Comparison], width: int) -> None:
    lines = comparison_text(both[1], names=("before", "after"), width=width).splitlines()
    assert max(map(len, lines)) <= width


def test_what_of_the_program_is_another_stands_apart(both: tuple[Changes, Comparison]) -> None:
    text = comparison_text(both[1], names=("a", "b"), program=PROGRAM)
    place = text.index("THE PROGRAM AND ITS ROWS OF DATA")
    assert "the program is version 2 now; it was 1" in text[place:]
    assert "Radio: keypad: met: 20 dB -> met: 21 dB" in text[place:]
    assert "as they were signed" in comparison_text(
        both[1], names=("a", "b"), program=ProgramTold(what=(), answers=())
    )


def test_json_holds_numbers_as_they_are_and_every_test(both: tuple[Changes, Comparison]) -> None:
    found, told = both
    data = json.loads(comparison_json(found, told, program=PROGRAM))
    assert list(data) == ["house", "program", "answers", "findings", "tests"]
    assert data["program"] == PROGRAM.model_dump(mode="json")
    assert len(data["answers"]) == len(found.answers)
    kinds = {one["kind"] for stop in data["tests"]["stops"] for one in stop["tests"]}
    assert kinds == {one.kind for stop in found.tests.stops for one in stop.tests}
    assert data["tests"]["minutes"]["value"] == found.tests.minutes.value
