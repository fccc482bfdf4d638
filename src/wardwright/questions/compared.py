"""What became of the answers and findings between two states of a house."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal, NamedTuple

from wardwright.model.placement import standing
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.table import MORE_IS_BETTER
from wardwright.rules.finding import Finding

Course = Literal["worse", "new", "not known now", "other", "known now", "better", "gone"]
"""`other`: its number is another, and neither better nor worse, because it measures something else."""

_RANK = {"bad": 0, "thin": 1, "good": 2}
_ORDER: tuple[Course, ...] = ("worse", "new", "not known now", "other", "known now", "better", "gone")


class State(NamedTuple):
    """A house at one time, with all that is said of it."""

    site: Site
    answers: tuple[Answer, ...]
    findings: tuple[Finding, ...]


class ComparedAnswer(Record):
    """One answer that is another than it was."""

    course: Course
    before: Answer | None
    """None: it was not asked, because its subject was not there."""
    after: Answer | None
    by: float | None
    """The value now less the value before, in their unit; None where they cannot be set against each other."""
    latest: Answer
    """As it is, or as it was last."""
    is_beyond: bool = True
    """Whether it is more than its own range could have held: another verdict, or a value outside the range that it
    had; also where there are no two values to hold against each other."""

    @property
    def fails_now(self) -> bool:
        """Whether it is not met now, and was or was not there."""
        return _verdict(self.after) == "bad" != _verdict(self.before)

    @property
    def fails_no_more(self) -> bool:
        """Whether it was not met, and is now or is not there any more."""
        return _verdict(self.before) == "bad" != _verdict(self.after)


class ComparedFinding(Record):
    """One finding that came or went."""

    course: Literal["came", "went", "not checked now"]
    """`not checked now`: it went only because its rule cannot be run any more."""
    finding: Finding


def compared(before: Sequence[Answer], after: Sequence[Answer]) -> tuple[ComparedAnswer, ...]:
    """Set the answers of two states of a house against each other.

    Parameters
    ----------
    before, after : sequence of Answer
        All answers of each state, in any order.

    Returns
    -------
    tuple of ComparedAnswer
        What grew worse first, then what is new, what is not known any more, what is known now, what is better and
        what is gone; within these the later state's order. Answers with the same verdict and value are not there.
    """
    old = {_key(one): one for one in before}
    new = {_key(one): one for one in after}
    found = [_compared(old.get(key), new.get(key)) for key in (*new, *(key for key in old if key not in new))]
    changed = [one for one in found if one is not None]
    return tuple(sorted(changed, key=lambda one: _ORDER.index(one.course)))


def _key(answer: Answer) -> tuple[int, str]:
    return answer.question, answer.subject_id


def _compared(old: Answer | None, new: Answer | None) -> ComparedAnswer | None:
    if new is None:
        return (
            None
            if old is None
            else ComparedAnswer(course="gone", before=old, after=None, by=None, latest=old)
        )
    if old is None:
        return ComparedAnswer(course="new", before=None, after=new, by=None, latest=new)
    by = None
    if old.estimate is not None and new.estimate is not None and _measures(old) == _measures(new):
        by = new.estimate.value - old.estimate.value
    course = _course(old, new, by)
    if course is None:
        return None
    return ComparedAnswer(
        course=course, before=old, after=new, by=by, latest=new, is_beyond=_is_beyond(old, new, by)
    )


def _is_beyond(old: Answer, new: Answer, by: float | None) -> bool:
    if old.verdict != new.verdict or by is None or old.estimate is None or new.estimate is None:
        return True
    return not old.estimate.low <= new.estimate.value <= old.estimate.high


def _verdict(answer: Answer | None) -> str:
    return "" if answer is None else answer.verdict


def _measures(answer: Answer) -> tuple[str, str]:
    return answer.measure, "" if answer.estimate is None else answer.estimate.unit


def _course(old: Answer, new: Answer, by: float | None) -> Course | None:
    was, now = _RANK.get(old.verdict), _RANK.get(new.verdict)
    if was is None or now is None:
        if was is now:
            return None
        return "known now" if was is None else "not known now"
    if was != now:
        return "better" if now > was else "worse"
    if by is None:
        return None if _measures(old) == _measures(new) else "other"
    if by == 0.0:
        return None
    return "better" if (by > 0.0) == (new.question in MORE_IS_BETTER) else "worse"


def findings_compared(before: Sequence[Finding], after: Sequence[Finding]) -> tuple[ComparedFinding, ...]:
    """Which findings came and which went between two states of a house.

    Parameters
    ----------
    before, after : sequence of Finding
        All findings of each state, those that were not run among them.

    Returns
    -------
    tuple of ComparedFinding
        What came first. A finding is the same where rule and subject are.
    """
    old, new = _found(before), _found(after)
    not_run = {(one.code, one.subject) for one in after if one.severity == "not run"}
    silent = {code for code, _ in not_run} - {code for code, _ in new}
    came = [ComparedFinding(course="came", finding=one) for key, one in new.items() if key not in old]
    went = [
        ComparedFinding(
            course="not checked now" if key in not_run or key[0] in silent else "went", finding=one
        )
        for key, one in old.items()
        if key not in new
    ]
    return (*came, *went)


def _found(findings: Sequence[Finding]) -> dict[tuple[str, str], Finding]:
    return {(one.code, one.subject): one for one in findings if one.severity != "not run"}


def moved(before: Site, after: Site) -> dict[str, float]:
    """How far each device has moved on the plan.

    Parameters
    ----------
    before, after : Site
        Two states of a house.

    Returns
    -------
    dict of float
        By id; only devices of both that stand on the same storey and elsewhere on it. [m]
    """
    old = {device.id: standing(before, device) for device in before.devices}
    found: dict[str, float] = {}
    for device in after.devices:
        was, now = old.get(device.id), standing(after, device)
        if was is None or was.storey != now.storey:
            continue
        far = math.dist((was.x_m, was.y_m), (now.x_m, now.y_m))
        if far > 0.0:
            found[device.id] = far
    return found
