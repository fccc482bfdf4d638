from __future__ import annotations

from collections.abc import Callable

import pytest

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.readings import readings
from wardwright.documents.content.forms.slots import TO_FILL
from wardwright.documents.content.paper import Paper, Table
from wardwright.questions.answer import Answer
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


@pytest.fixture(scope="module")
def answers() -> tuple[Answer, ...]:
    return ask(fitted(), CATALOGUE)


def table_of(paper: Paper, heading: str) -> Table:
    table = next(one.table for one in paper.sections if one.heading == heading)
    assert table is not None
    return table


def test_the_tests_read_as_they_did(answers: tuple[Answer, ...], kept: Callable[[str, str], None]) -> None:
    kept("tests.txt", as_text(readings(fitted(), CATALOGUE, answers, drawn_up=DAY)))


def test_every_link_stands_with_what_is_expected_beside_room_for_what_is_read(
    answers: tuple[Answer, ...],
) -> None:
    table = table_of(readings(fitted(), CATALOGUE, answers, drawn_up=DAY), "Radio")
    assert [row[0] for row in table.rows] == sorted(one.subject for one in answers if one.question == 6)
    assert all("dBm" in str(row[1]) and "dB" in str(row[3]) for row in table.rows)
    assert all(row[-4:] == (TO_FILL,) * 4 for row in table.rows)


def test_every_device_has_a_walk_and_a_tamper_row(answers: tuple[Answer, ...]) -> None:
    site = fitted()
    paper = readings(site, CATALOGUE, answers, drawn_up=DAY)
    names = sorted(one.name for one in site.devices)
    assert sorted(str(row[1]) for row in table_of(paper, "Walk test and contacts").rows) == names
    assert sorted(str(row[1]) for row in table_of(paper, "Tamper").rows) == names


def test_without_answers_nothing_is_expected_and_nothing_invented() -> None:
    paper = readings(fitted(), CATALOGUE, (), drawn_up=DAY)
    assert table_of(paper, "Radio").rows == ()
    assert table_of(paper, "Sound").rows == ()
    assert "silent: not worked out here" in as_text(paper)
