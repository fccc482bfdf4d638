"""What is another since answers were signed, in words: which answers, and why."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.documents.content.board import short_name
from wardwright.documents.content.headline import headline, horizon_of
from wardwright.documents.content.names import Names, names_of
from wardwright.documents.content.quantities import sentence
from wardwright.documents.content.wording import VERDICTS
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.as_signed import Cause, Difference
from wardwright.rules.finding import Finding

NOT_THERE = "not there"
OLDER_FORM = "kept in an older form"


class DifferentAnswer(Record):
    """An answer or a finding that is not as it was signed."""

    key: str
    title: str
    was: str
    today: str
    cause: Cause


class ProgramTold(Record):
    """What the program gives otherwise than when answers were signed, of the same house."""

    what: tuple[str, ...]
    """What is another in the program and its rows of data; empty: nothing."""
    answers: tuple[DifferentAnswer, ...]
    """Answers and findings that are others for that alone."""


def different_answers(
    found: Sequence[Difference], catalogue: Catalogue, *, then: Site, now: Site
) -> tuple[DifferentAnswer, ...]:
    """Put what differs into words.

    Parameters
    ----------
    found : sequence of Difference
        What is not as it was signed.
    catalogue : Catalogue
        For how long an intruder stays, and the names of sheets.
    then, now : Site
        The house as it was signed, and as it is: a thing may be in one of them only.

    Returns
    -------
    tuple of DifferentAnswer
        In their order.
    """
    before, after = names_of(then, catalogue), names_of(now, catalogue)
    names = Names({**before.by_id, **after.by_id}, now)
    return tuple(
        DifferentAnswer(
            key=one.key,
            title=_title(one, names),
            was=_words(one.was, catalogue, absent=OLDER_FORM if _is_unread(one) else NOT_THERE),
            today=_words(one.latest, catalogue, absent=NOT_THERE),
            cause=one.cause,
        )
        for one in found
    )


def _is_unread(one: Difference) -> bool:
    return one.was is None and one.cause != "house" and one.again is not None


def _title(one: Difference, names: Names) -> str:
    shown = one.latest or one.was or one.again
    if isinstance(shown, Answer):
        return f"{short_name(shown.question)}: {shown.subject}"
    if isinstance(shown, Finding):
        return f"{shown.code}: {names.of(shown.subject)}"
    return one.key


def _words(one: Answer | Finding | None, catalogue: Catalogue, *, absent: str) -> str:
    if one is None:
        return absent
    if isinstance(one, Finding):
        return f"{one.severity}: {sentence(one.message)}"
    value, span = headline(one, horizon_s=horizon_of(catalogue))
    number = f"{value} ({span})" if span else value or sentence(one.reason or "no number").rstrip(".")
    return f"{VERDICTS[one.verdict][0]}: {number}"
