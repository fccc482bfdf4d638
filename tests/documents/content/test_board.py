from __future__ import annotations

import pytest

from wardwright.documents.content.board import (
    board_answers,
    board_findings,
    board_questions,
    chosen_of,
    key_of,
)
from wardwright.documents.content.wording import DANGERS
from wardwright.questions.table import ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SITE, CATALOGUE = read_sample("terrace"), load_catalogue()
ANSWERS, FINDINGS = ask(SITE, CATALOGUE), check(SITE, CATALOGUE)


def test_answers_keep_their_order_and_have_keys_of_their_own() -> None:
    board = board_answers(SITE, CATALOGUE, ANSWERS)
    assert [one.key for one in board] == [key_of(answer) for answer in ANSWERS]
    assert len({one.key for one in board}) == len(board)


def test_a_mend_comes_with_the_edit_that_carries_it_out() -> None:
    door = next(one for one in board_answers(SITE, CATALOGUE, ANSWERS) if one.key == "1/front-door")
    assert any(mend.operations for mend in door.mends)
    assert any(mend.operations is None for mend in door.mends)
    assert door.mends[0].operations is not None
    assert door.mends[0].operations[0].do == "tell"


@pytest.mark.parametrize("answer", board_answers(SITE, CATALOGUE, ANSWERS), ids=lambda one: one.key)
def test_every_answer_has_words_for_its_value(answer: object) -> None:
    assert answer.value  # type: ignore[attr-defined]
    assert answer.verdict_word  # type: ignore[attr-defined]


def test_findings_have_keys_of_their_own_and_say_what_was_not_run() -> None:
    board = board_findings(SITE, CATALOGUE, FINDINGS)
    assert len({one.key for one in board}) == len(board) == len(FINDINGS)
    assert [one.severity for one in board] == [one.severity for one in FINDINGS]


def test_a_mend_that_asks_for_work_at_a_wall_brings_its_cautions() -> None:
    board = board_findings(SITE, CATALOGUE, FINDINGS)
    moved = next(one for one in board if one.code == "MOV101").mends[0]
    assert moved.cautions[0] == DANGERS["drilling"]
    assert not next(one for one in board if one.code == "NAM101").mends[0].cautions


def test_whatever_is_said_of_fire_alarms_defers_to_the_local_code() -> None:
    board = board_findings(SITE, CATALOGUE, FINDINGS)
    fire = [one for one in board if one.code.startswith("FIR")]
    assert fire
    assert all(one.caution == DANGERS["fire"] for one in fire)
    assert not any(one.caution for one in board if one not in fire)


def test_an_answer_is_found_by_its_key_and_no_key_finds_none() -> None:
    assert all(chosen_of(ANSWERS, key_of(answer)) is answer for answer in ANSWERS)
    assert chosen_of(ANSWERS, None) is None
    assert chosen_of(ANSWERS, "1/nowhere") is None


def test_the_numbers_for_a_bar_are_those_of_the_estimate_and_never_has_none() -> None:
    for answer, told in zip(ANSWERS, board_answers(SITE, CATALOGUE, ANSWERS), strict=True):
        if answer.estimate is None:
            assert told.span is None
        else:
            assert told.span is not None
            assert (told.span.low, told.span.value, told.span.high) == (
                answer.estimate.low,
                answer.estimate.value,
                answer.estimate.high,
            )
    race = next(one for one in ANSWERS if one.estimate and one.estimate.unit == "s")
    late = race.estimate.model_copy(update={"value": -9e9, "low": -9e9})  # type: ignore[union-attr]
    (told,) = board_answers(SITE, CATALOGUE, (race.model_copy(update={"estimate": late}),))
    assert told.span is None


def test_every_question_has_its_heading() -> None:
    assert {one.number for one in board_questions()} == {answer.question for answer in ANSWERS}
    assert all(one.name and one.asks for one in board_questions())
