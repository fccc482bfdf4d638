"""A sensible kit, placed by script, on every given house: every question answers with ranges, none crashes."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from common.given_houses import HOUSES, GivenHouse
from common.sensible_kit import with_sensible_kit
from wardwright.model.site import Site
from wardwright.model.validation import problems
from wardwright.questions.answer import NOT_COUNTED, Answer
from wardwright.questions.table import QUESTIONS, ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue

pytestmark = pytest.mark.given_data
CATALOGUE = load_catalogue()
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
        mine = [a for a in answers if a.question == number and not is_not_counted(a)]
        assert any(answer.estimate is not None for answer in mine), f"question {number}: {mine[0].reason}"


def test_every_rule_runs_to_its_end(fitted: Site) -> None:
    assert all(finding.message for finding in check(fitted, CATALOGUE))


def is_not_counted(answer: Answer) -> bool:
    return answer.reason is not None and answer.reason.startswith(NOT_COUNTED)
