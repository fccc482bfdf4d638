"""What is timed on site, by the clock and at night: what was worked out, and room beside it for readings."""

from __future__ import annotations

from wardwright.documents.content.forms.slots import with_slots
from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Table
from wardwright.documents.content.proving_stops import TIMED as TIMED_TESTS
from wardwright.documents.content.quantities import value_words, with_range
from wardwright.documents.content.results_told import Results
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, PartAnswer

TIMES, NIGHTS = 3, 8
"""Numbers of the questions whose answers are set beside readings."""
TIMED = ("coming in", "leaving", "programmed", "spare")
"""How the names of parts end that one can time with a watch."""
READ, RESULT = Column("Read", share=1.2), Column("Good, or what was done", share=1.8)
EXPECTED = (Column("What", share=2.2), Column("Measure", share=2.6), Column("Expected", share=1.8))


def expected_words(one: Answer) -> str:
    """What an answer expects, or why nothing could be worked out."""
    return with_range(one.estimate) if one.estimate is not None else one.reason or NOT_KNOWN


def part_of(answer: Answer, name: str) -> str:
    """What a part of an answer expects."""
    found = next((part for part in answer.parts if part.name == name), None)
    return NOT_KNOWN if found is None else part_words(found)


def part_words(part: PartAnswer) -> str:
    """The number of a part, or why there is none."""
    return value_words(part.estimate) if part.estimate is not None else part.reason or NOT_KNOWN


def answers_of(answers: tuple[Answer, ...], number: int) -> list[Answer]:
    """Answers to one question by name, so that the sheet reads as the schedule does."""
    return sorted((one for one in answers if one.question == number), key=lambda one: one.subject)


def entry_table(site: Site, answers: tuple[Answer, ...], read: Results) -> Table:
    """The slowest with what is programmed, then each person by each door."""
    rows: list[tuple[Cell, ...]] = []
    for one in answers_of(answers, TIMES):
        if not one.parts:
            rows.append((one.subject, one.measure, expected_words(one)))
        rows += [
            (one.subject, part.name, part_words(part), *_timed(one, part, read))
            for part in one.parts
            if part.name.endswith(TIMED)
        ]
    rows += [
        (site.name, what, "as told")
        for what in ("a wrong turn on the way in", "a forgotten code", "a window left open when setting")
    ]
    return with_slots("Times", EXPECTED, rows, slots=(READ, RESULT))


def _timed(answer: Answer, part: PartAnswer, read: Results) -> tuple[str, ...]:
    """What was read of the slowest: the test is done with them."""
    kind = next((one for one, ending in TIMED_TESTS.items() if part.name.endswith(ending)), "")
    times = [
        one.estimate.value
        for one in answer.parts
        if kind and one.name.endswith(TIMED_TESTS[kind]) and one.estimate is not None
    ]
    if part.estimate is None or not times or part.estimate.value < max(times):
        return ()
    return read.both(kind, answer.subject_id)


def nights_table(answers: tuple[Answer, ...], read: Results) -> Table:
    """Each trip at night that is to stay silent."""
    rows: list[tuple[Cell, ...]] = [
        (one.subject, one.measure, expected_words(one), read.told("night trip", one.subject_id))
        for one in answers_of(answers, NIGHTS)
    ]
    rows = rows or [("each bed", "to toilet, kitchen and child, in the dark", "silent: not worked out here")]
    return with_slots("Nights", EXPECTED, rows, slots=(RESULT,))
