"""A sensible kit, placed by script, on every given house: every question answers with ranges, none crashes."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from common.given_houses import HOUSES, GivenHouse
from common.sensible_kit import with_sensible_kit
from wardwright.model.revision import replaced
from wardwright.model.site import Site
from wardwright.model.validation import problems
from wardwright.questions import what_changed
from wardwright.questions.answer import NOT_COUNTED, Answer
from wardwright.questions.changes_since import answer_since
from wardwright.questions.compared import State
from wardwright.questions.table import QUESTIONS, ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue

pytestmark = pytest.mark.given_data
CATALOGUE = load_catalogue()
SOME = (1, 5, 6, 11)
"""Enough for a comparison. [-]"""
NUMBERS = sorted(question.number for question in QUESTIONS)


@pytest.fixture(params=HOUSES, ids=lambda house: house.name, scope="module")
def fitted(request: pytest.FixtureRequest, given: Callable[[str], Path]) -> Site:
    house: GivenHouse = request.param
    return with_sensible_kit(house.brought(given(house.file)).site, CATALOGUE)


def test_the_kit_fits_the_house(fitted: Site) -> None:
    assert len(fitted.devices) >= 5
    faults = [one for one in problems(fitted, CATALOGUE) if one.weight == "stops"]
    assert faults == []


def test_every_question_answers_with_a_range_or_says_why_not(fitted: Site) -> None:
    answers = ask(fitted, CATALOGUE)
    assert sorted({answer.question for answer in answers}) == NUMBERS
    for answer in answers:
        assert (answer.estimate is None) == (answer.reason is not None), answer.subject
        if answer.estimate is not None:
            assert answer.estimate.low <= answer.estimate.value <= answer.estimate.high, answer.subject
    for number in NUMBERS:
        if number == what_changed.NUMBER:
            # Of one state of a house there is nothing to hold it against: `test_what_changed_is_told`.
            continue
        mine = [a for a in answers if a.question == number and not is_not_counted(a)]
        assert any(answer.estimate is not None for answer in mine), f"question {number}: {mine[0].reason}"


def test_what_changed_is_told_with_the_tests_to_repeat(fitted: Site) -> None:
    detectors = [one for one in fitted.devices if one.id.endswith("-movement")]
    if not detectors:
        pytest.skip("no room is large enough for a movement detector")
    gone = detectors[0].id
    after = replaced(
        fitted,
        devices=tuple(one for one in fitted.devices if one.id != gone),
        zones=tuple(one for one in fitted.zones if gone not in one.devices),
    )
    states = [State(one, ask(one, CATALOGUE, SOME), check(one, CATALOGUE)) for one in (fitted, after)]
    found = answer_since(states[0], states[1], CATALOGUE, since="before")
    assert found.estimate is not None
    assert found.estimate.low <= found.estimate.value <= found.estimate.high
    back = answer_since(states[1], states[0], CATALOGUE, since="before")
    assert back.estimate is not None
    assert back.estimate.value > 0.0, "a detector more is a view to walk-test"


def test_every_rule_runs_to_its_end(fitted: Site) -> None:
    assert all(finding.message for finding in check(fitted, CATALOGUE))


def is_not_counted(answer: Answer) -> bool:
    return answer.reason is not None and answer.reason.startswith(NOT_COUNTED)
