"""Openings that are not counted as ways in: told together, apart from what is not known."""

from __future__ import annotations

from dataclasses import dataclass

from wardwright.documents.content.quantities import joined, sentence
from wardwright.questions.answer import NOT_COUNTED, Answer


@dataclass(frozen=True, slots=True)
class NotCounted:
    """The openings that nobody is taken to come in by."""

    count: int
    heading: str
    groups: tuple[str, ...]
    """A sentence for each reason, with the names of its openings."""


def is_not_counted(answer: Answer) -> bool:
    """Whether an answer only says that its opening is no way in."""
    return answer.verdict == "unknown" and (answer.reason or "").startswith(NOT_COUNTED)


def counted(answers: tuple[Answer, ...]) -> tuple[Answer, ...]:
    """The answers that are set one by one, in their order."""
    return tuple(answer for answer in answers if not is_not_counted(answer))


def not_counted(answers: tuple[Answer, ...]) -> NotCounted | None:
    """The rest, grouped by reason.

    Parameters
    ----------
    answers : tuple of Answer
        All, in any order.

    Returns
    -------
    NotCounted or None
        Reasons and names in alphabetical order; None where every opening is counted.
    """
    names: dict[str, list[str]] = {}
    for answer in answers:
        if is_not_counted(answer):
            reason = (answer.reason or "").removeprefix(NOT_COUNTED)
            names.setdefault(reason, []).append(answer.subject)
    if not names:
        return None
    count = sum(map(len, names.values()))
    heading = (
        "1 opening not counted as a way in" if count == 1 else f"{count} openings not counted as ways in"
    )
    groups = (sentence(f"{reason}: {joined(sorted(whose))}") for reason, whose in sorted(names.items()))
    return NotCounted(count, heading, tuple(groups))
