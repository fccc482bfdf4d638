"""Two states of a house set against each other: what changed in it, in its answers and in its findings."""

from __future__ import annotations

from typing import Literal

from wardwright.documents.content.board import short_name
from wardwright.documents.content.changes_told import ToldChange, told_changes
from wardwright.documents.content.headline import headline, horizon_of
from wardwright.documents.content.names import names_of
from wardwright.documents.content.quantities import quantity, sentence, step_of
from wardwright.documents.content.round_told import ToldRound, told_round
from wardwright.documents.content.signed import NOT_THERE
from wardwright.documents.content.wording import VERDICTS
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import Record
from wardwright.questions.answer import Answer, Verdict
from wardwright.questions.changes_since import Changes
from wardwright.questions.compared import (
    ComparedAnswer,
    ComparedFinding,
    Course,
    State,
)
from wardwright.questions.what_changed import NUMBER
from wardwright.rules.finding import Severity

COURSES: dict[Course, str] = {
    "worse": "worse",
    "new": "new",
    "not known now": "not known any more",
    "other": "measures something else now",
    "known now": "known now",
    "better": "better",
    "gone": "gone",
}
"""What became of an answer, the most pressing first."""


class ComparedState(Record):
    """An answer as it was or is."""

    verdict: Verdict
    verdict_word: str
    value: str


class ComparedLine(Record):
    """One answer that is another than it was."""

    key: str
    question_name: str
    subject: str
    course: Course
    course_word: str
    before: ComparedState | None
    after: ComparedState | None
    by: str
    """By how much; empty where it cannot be said."""
    is_beyond: bool
    """Whether it is more than the range that it had could have held."""
    fails: Literal["now", "no more", ""]
    """Whether it is not met now and was before, or the other way round; empty: neither."""


class ComparedRule(Record):
    """One finding that came or went."""

    course: Literal["came", "went", "not checked now"]
    code: str
    severity: Severity
    subject: str
    message: str


class Comparison(Record):
    """All that differs."""

    changes: tuple[ToldChange, ...]
    answers: tuple[ComparedLine, ...]
    """What grew worse first; without what reads as it did."""
    same: int
    """How many answers read as they did; question 20 itself is not counted."""
    findings: tuple[ComparedRule, ...]
    tests: ToldRound
    """What must be tested again, in walking order."""


def comparison(before: State, after: State, catalogue: Catalogue, *, found: Changes) -> Comparison:
    """Set two states of a house against each other.

    Parameters
    ----------
    before, after : State
        The two states.
    catalogue : Catalogue
        For names, and for how long an intruder stays.
    found : Changes
        What became of all that is said of the house between the two.

    Returns
    -------
    Comparison
        In words; nothing in it where nothing differs.
    """
    horizon_s = horizon_of(catalogue)
    lines = [_line(one, horizon_s=horizon_s) for one in found.answers]
    told = tuple(one for one in lines if one.before != one.after)
    old, new = names_of(before.site, catalogue), names_of(after.site, catalogue)
    return Comparison(
        changes=told_changes(before.site, after.site, catalogue),
        answers=told,
        same=sum(one.question != NUMBER for one in after.answers)
        - sum(one.after is not None for one in told),
        findings=tuple(
            _rule(one, (new if one.course == "came" else old).of(one.finding.subject))
            for one in found.findings
        ),
        tests=told_round(found.tests, after.site, catalogue),
    )


def _line(one: ComparedAnswer, *, horizon_s: float) -> ComparedLine:
    before, after = (_state(answer, horizon_s=horizon_s) for answer in (one.before, one.after))
    return ComparedLine(
        key=f"{one.latest.question}/{one.latest.subject_id}",
        question_name=short_name(one.latest.question),
        subject=one.latest.subject,
        course=one.course,
        course_word=COURSES[one.course],
        before=before,
        after=after,
        by=_by(one, horizon_s=horizon_s),
        is_beyond=one.is_beyond,
        fails="now" if one.fails_now else "no more" if one.fails_no_more else "",
    )


def _state(answer: Answer | None, *, horizon_s: float) -> ComparedState | None:
    if answer is None:
        return None
    value, _ = headline(answer, horizon_s=horizon_s)
    return ComparedState(
        verdict=answer.verdict, verdict_word=VERDICTS[answer.verdict][0], value=value or "no number"
    )


def _by(one: ComparedAnswer, *, horizon_s: float) -> str:
    if one.by is None or not one.before or not one.after:
        return ""
    old, new = one.before.estimate, one.after.estimate
    if old is None or new is None or max(abs(old.value), abs(new.value)) >= horizon_s:
        return ""
    told = quantity(one.by, new.unit, min(step_of(old), step_of(new)))
    return told if one.by < 0 else f"+{told}"


def _rule(one: ComparedFinding, subject: str) -> ComparedRule:
    found = one.finding
    return ComparedRule(
        course=one.course,
        code=found.code,
        severity=found.severity,
        subject=subject,
        message=sentence(found.message),
    )


def state_words(one: ComparedState | None) -> str:
    """What an answer said at one of the two times."""
    return NOT_THERE if one is None else f"{one.verdict_word}, {one.value}"
