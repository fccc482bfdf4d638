from __future__ import annotations

import pytest

from common.houses import on_wall, one_room
from wardwright.model.estimate import Estimate
from wardwright.questions.answer import Answer, unanswered
from wardwright.questions.compared import compared, findings_compared, moved
from wardwright.questions.table import ask
from wardwright.rules.finding import Finding
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def answer(question: int, value: float, verdict: str, *, subject: str = "door", unit: str = "s") -> Answer:
    estimate = Estimate(value=value, low=value, high=value, unit=unit)
    plain = unanswered(question, "time", subject=subject, subject_id=subject, reason="")
    return plain.model_copy(update={"estimate": estimate, "verdict": verdict, "reason": None})


@pytest.mark.parametrize(
    ("old", "new", "course", "by"),
    [
        (answer(1, -3.0, "bad"), answer(1, 4.0, "good"), "better", 7.0),
        (answer(1, 4.0, "good"), answer(1, -3.0, "bad"), "worse", -7.0),
        (answer(1, -9.0, "bad"), answer(1, -3.0, "bad"), "better", 6.0),  # more time in hand
        (
            answer(5, 3.0, "bad", unit="m"),
            answer(5, 9.0, "bad", unit="m"),
            "worse",
            6.0,
        ),  # a longer walk unseen
        (
            answer(5, 9.0, "thin", unit="m"),
            answer(5, 12.0, "good", unit="m"),
            "better",
            3.0,
        ),  # its verdict says so
        (answer(4, 1.0, "good", unit="m2"), answer(4, 1.0, "good", unit="ways"), "other", None),
    ],
)
def test_the_verdict_comes_first_and_then_the_number(
    old: Answer, new: Answer, course: str, by: float | None
) -> None:
    (found,) = compared((old,), (new,))
    assert (found.course, found.by) == (course, by)
    assert found.latest is new


def test_what_cannot_be_worked_out_is_neither_better_nor_worse() -> None:
    silent = unanswered(1, "time", subject="door", subject_id="door", reason="no keypad")
    assert [one.course for one in compared((answer(1, 4.0, "good"),), (silent,))] == ["not known now"]
    assert [one.course for one in compared((silent,), (answer(1, -4.0, "bad"),))] == ["known now"]
    assert compared((silent,), (silent.model_copy(update={"reason": "no control unit"}),)) == ()


def test_what_is_new_or_gone_is_told_and_what_is_alike_is_not() -> None:
    same, gone, new = (answer(1, 4.0, "good", subject=name) for name in ("door", "hatch", "gate"))
    found = compared((same, gone), (new, same))
    assert [(one.course, one.latest.subject_id) for one in found] == [("new", "gate"), ("gone", "hatch")]


def test_the_other_way_round_better_is_worse_and_came_is_went() -> None:
    catalogue = load_catalogue()
    sites = [read_sample(name) for name in ("terrace", "terrace-better")]
    asked = [ask(site, catalogue) for site in sites]
    there, back = compared(*asked), compared(*reversed(asked))
    opposite = {"better": "worse", "worse": "better", "new": "gone", "gone": "new"}
    swapped = {(one.latest.question, one.latest.subject_id): one.course for one in back}
    assert there
    for one in there:
        key = (one.latest.question, one.latest.subject_id)
        assert swapped[key] == opposite.get(one.course, swapped[key])
    found = [check(site, catalogue) for site in sites]
    came = {(one.finding.code, one.finding.subject) for one in findings_compared(*found)}
    assert came == {(one.finding.code, one.finding.subject) for one in findings_compared(*reversed(found))}
    assert compared(asked[0], asked[0]) == findings_compared(found[0], found[0]) == ()


def finding(code: str, severity: str = "advise", subject: str = "hall") -> Finding:
    said = {"code": code, "rule": "r", "severity": severity, "subject": subject, "message": "m", "cure": "c"}
    return Finding.model_validate(said)


def test_a_finding_whose_rule_cannot_be_run_any_more_did_not_simply_go() -> None:
    old = (finding("MOV101"), finding("MOV102"), finding("KEY101"))
    new = (finding("MOV101", "not run", "house"), finding("SND101"), finding("KEY101", "must mend"))
    told = [(one.course, one.finding.code) for one in findings_compared(old, new)]
    assert told == [("came", "SND101"), ("not checked now", "MOV101"), ("went", "MOV102")]


def test_devices_that_moved_are_told_with_how_far() -> None:
    before = one_room(devices=(on_wall("a", "fan", "south", 2.0), on_wall("b", "fan", "south", 1.0)))
    after = one_room(devices=(on_wall("a", "fan", "south", 2.5), on_wall("b", "fan", "south", 1.0)))
    assert moved(before, after) == {"a": pytest.approx(0.5)}
