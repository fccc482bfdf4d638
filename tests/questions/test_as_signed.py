from __future__ import annotations

import json
from typing import Any

import pytest

from wardwright.model.estimate import Estimate
from wardwright.questions.answer import Answer, unanswered
from wardwright.questions.as_signed import (
    by_key,
    compared,
    is_same,
    kept_form,
    read_answers,
    read_findings,
)
from wardwright.questions.table import ask
from wardwright.rules.finding import Finding
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def race(value: float, **more: Any) -> Answer:
    estimate = Estimate(value=value, low=value - 1.0, high=value + 1.0, unit="s")
    facts = {"question": 1, "subject": "Door", "subject_id": "door", "measure": "time", "verdict": "good"}
    return Answer.model_validate(facts | {"estimate": estimate} | more)


def finding(message: str = "it is low") -> Finding:
    return Finding(
        code="MOV101", rule="low", severity="advise", subject="hall", message=message, cure="raise it"
    )


def test_all_answers_and_findings_come_back_from_the_file_the_same() -> None:
    site, catalogue = read_sample("terrace"), load_catalogue()
    for found, read in ((ask(site, catalogue), read_answers), (check(site, catalogue), read_findings)):
        keyed = by_key(found)
        assert len(keyed) == len(found)
        kept = read(json.loads(json.dumps([kept_form(one) for one in found])))
        assert kept.keys() == keyed.keys()
        assert compared(kept, keyed, keyed) == ()


@pytest.mark.parametrize(
    ("was", "again", "now", "cause"),
    [
        (1.0, 1.0, 2.0, "house"),
        (1.0, 2.0, 2.0, "program"),
        (1.0, 2.0, 3.0, "both"),
        (None, None, 2.0, "house"),
        (1.0, 1.0, None, "house"),
        (None, 2.0, 2.0, "program"),
        (1.0, None, None, "program"),
        (1.0, 1.0, 1.0, None),
        (1.0, 2.0, 1.0, None),
        (1.0, 1.0 + 1e-12, 1.0, None),
    ],
)
def test_the_house_is_told_from_the_program(
    was: float | None, again: float | None, now: float | None, cause: str | None
) -> None:
    sides = [by_key(() if one is None else (race(one),)) for one in (was, again, now)]
    found = compared(*sides)
    assert [one.cause for one in found] == ([] if cause is None else [cause])


def test_what_is_kept_in_a_form_that_is_read_no_more_is_said() -> None:
    kept = read_answers([{"question": 1, "subject_id": "door", "an_old_field": True}])
    (one,) = compared(kept, by_key((race(1.0),)), by_key((race(1.0),)))
    assert (one.key, one.was, one.cause) == ("1/door", None, "program")


def test_a_verdict_a_reason_and_a_message_count_and_a_mend_does_not() -> None:
    assert not is_same(race(1.0), race(1.0, verdict="thin"))
    assert not is_same(race(1.0), race(1.0, chance=0.5))
    none = unanswered(1, "time", subject="Door", subject_id="door", reason="no keypad")
    assert not is_same(none, none.model_copy(update={"reason": "no control unit"}))
    assert not is_same(finding(), finding("it is high"))
    assert is_same(finding(), finding().model_copy(update={"cure": "lift it"}))


def test_two_findings_of_one_rule_about_one_thing_are_kept_apart() -> None:
    two = (finding("one"), finding("two"))
    assert list(by_key(two)) == ["MOV101/hall", "MOV101/hall/2"]
    assert read_findings(kept_form(one) for one in two) == by_key(two)
