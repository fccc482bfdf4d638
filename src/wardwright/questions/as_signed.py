"""Answers as somebody signed them, held against today's: did the house change, or what works the answers out?"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from typing import Any, Literal, NamedTuple

from pydantic import ValidationError

from wardwright.questions.answer import Answer
from wardwright.rules.finding import Finding

Cause = Literal["house", "program", "both"]
"""`house`: what is known of the house, its people or its kit is another now. `program`: the same house gives another
answer now, by another program or other rows of data."""

SAME_TO = 1e-9
"""Numbers closer than this share of themselves are the same: they went through a file. [-]"""


class Difference(NamedTuple):
    """One answer or finding that is not as it was signed."""

    key: str
    was: Answer | Finding | None
    """As it was signed; None: it was not there, or is kept in a form that is read no more."""
    again: Answer | Finding | None
    """Of the house as it was signed, worked out now."""
    latest: Answer | Finding | None
    """Of the house as it is now."""
    cause: Cause


def kept_form(one: Answer | Finding) -> dict[str, Any]:
    """An answer or a finding as it is kept: all but what is only drawn."""
    return one.model_dump(mode="json", exclude={"sketches"})


def read_answers(kept: Iterable[Mapping[str, Any]]) -> dict[str, Answer | None]:
    """Answers as they were kept, by key; None where the form of an older program is read no more."""
    return {f"{one.get('question')}/{one.get('subject_id')}": _read(Answer, one) for one in kept}


def read_findings(kept: Iterable[Mapping[str, Any]]) -> dict[str, Finding | None]:
    """Findings as they were kept, by key, as `by_key` has it."""
    found: dict[str, Finding | None] = {}
    for one in kept:
        found[_free(f"{one.get('code')}/{one.get('subject')}", found)] = _read(Finding, one)
    return found


def by_key(found: Iterable[Answer | Finding]) -> dict[str, Answer | Finding]:
    """Answers or findings by what they are known by, whatever they say."""
    keyed: dict[str, Answer | Finding] = {}
    for one in found:
        name = f"{one.question}/{one.subject_id}" if isinstance(one, Answer) else f"{one.code}/{one.subject}"
        keyed[_free(name, keyed)] = one
    return keyed


def _free(key: str, taken: Mapping[str, object]) -> str:
    number, free = 1, key
    while free in taken:
        number += 1
        free = f"{key}/{number}"
    return free


def _read(kind: type[Any], kept: Mapping[str, Any]) -> Any:  # noqa: ANN401 - of the kind asked for
    try:
        return kind.model_validate(dict(kept))
    except ValidationError:
        return None


def compared(
    signed: Mapping[str, Answer | Finding | None],
    again: Mapping[str, Answer | Finding],
    now: Mapping[str, Answer | Finding],
) -> tuple[Difference, ...]:
    """What is not as it was signed, and why.

    Parameters
    ----------
    signed : mapping
        As it was signed, by key.
    again : mapping
        Worked out now, of the house as it was signed.
    now : mapping
        Worked out now, of the house as it is.

    Returns
    -------
    tuple of Difference
        In the order in which they stand now, then those that are no more.
    """
    keys = dict.fromkeys((*now, *signed, *again))
    found = []
    for key in keys:
        was, between, is_now = signed.get(key), again.get(key), now.get(key)
        # What is kept in a form that is read no more was there, and cannot be told to be the same.
        by_program = not is_same(was, between) or (key in signed and was is None)
        by_house = not is_same(between, is_now)
        if not (by_program or by_house):
            continue
        if is_same(was, is_now) and was is not None:
            continue  # each undid what the other did: nothing that was signed is another
        cause: Cause = "both" if by_program and by_house else "program" if by_program else "house"
        found.append(Difference(key, was, between, is_now, cause))
    return tuple(found)


def is_same(one: Answer | Finding | None, other: Answer | Finding | None) -> bool:
    """Whether two say the same: verdict, numbers and reasons; what would mend them does not count."""
    if one is None or other is None:
        return one is other
    return _alike(_said(one), _said(other))


def _said(one: Answer | Finding) -> dict[str, Any]:
    names = (
        ("measure", "estimate", "reason", "verdict", "chance", "parts", "notes")
        if isinstance(one, Answer)
        else ("severity", "message", "estimate", "limit", "accepted")
    )
    return one.model_dump(mode="json", include=set(names))


def _alike(one: Any, other: Any) -> bool:  # noqa: ANN401 - anything that JSON can say
    if isinstance(one, float) or isinstance(other, float):
        is_number = isinstance(one, int | float) and isinstance(other, int | float)
        return is_number and math.isclose(one, other, rel_tol=SAME_TO, abs_tol=SAME_TO)
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(_alike(one[key], other[key]) for key in one)
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(_alike, one, other))
    return bool(one == other)
