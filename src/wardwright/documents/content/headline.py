"""The deciding number of an answer in words: rounded, and said plainly where a number would read oddly."""

from __future__ import annotations

import math

from wardwright.documents.content.quantities import MINUS, quantity, range_words, step_of, value_words
from wardwright.documents.content.wording import AT_ONCE, AT_ONCE_MEASURE, NEVER, OR_WITHIN, UNDETECTED
from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.questions.answer import Answer

STAY = "stay"
"""The figure that times are cut at: an intruder does not stay for ever."""


def horizon_of(catalogue: Catalogue | None) -> float:
    """How long an intruder stays: a time this long stands for never. [s]"""
    if catalogue is None:
        return math.inf
    try:
        return catalogue.figure(STAY).value
    except CatalogueError:
        return math.inf


def headline(answer: Answer, *, horizon_s: float, is_plain: bool = False) -> tuple[str, str]:
    """The likely value of an answer and its range.

    Parameters
    ----------
    answer : Answer
        With a number or without.
    horizon_s : float
        What stands for never. [s]
    is_plain : bool, default False
        Plain letters only, for a terminal.

    Returns
    -------
    tuple of str
        Empty where there is no number, or where the range is no wider than the value as it is printed.
    """
    one = answer.estimate
    if one is None:
        return "", ""
    value, span = value_words(one, is_plain=is_plain), range_words(one, is_plain=is_plain)
    if answer.question in UNDETECTED and is_nought(one.value, one):
        if not span:
            return AT_ONCE, ""
        return AT_ONCE, f"{OR_WITHIN} {quantity(one.high, one.unit, step_of(one), is_plain=is_plain)}"
    if one.unit == "s" and min(one.value, one.low) <= -horizon_s:
        high = quantity(one.high, one.unit, step_of(one), is_plain=is_plain)
        span = f"{NEVER} to {high}" if one.high > -horizon_s else ""
        return (NEVER if one.value <= -horizon_s else value), span
    return value, span


def measure_of(answer: Answer, value: str) -> str:
    """What the value of an answer is, as it is told."""
    return AT_ONCE_MEASURE if value == AT_ONCE else answer.measure


def is_nought(value: float, estimate: Estimate) -> bool:
    """Whether a value is printed as nought."""
    text = quantity(value, estimate.unit, min(step_of(estimate), 0.1), is_plain=True)
    return float(text.split()[0].replace(MINUS, "-")) == 0.0


def time_words(estimate: Estimate, *, horizon_s: float) -> str:
    """A time and its range; what is as late as an intruder's stay never comes.

    Examples
    --------
    >>> time_words(Estimate(value=8.3, low=5.1, high=480.0, unit="s"), horizon_s=480.0)
    '8.3 s (5.1 s to never)'
    """
    if estimate.high < horizon_s:
        value, span = value_words(estimate), range_words(estimate)
        if not span and is_nought(estimate.value, estimate):
            return AT_ONCE
        return f"{value} ({span})" if span else value
    step = 0.1 if estimate.value < 100.0 else 1.0
    value, low = (quantity(one, estimate.unit, step) for one in (estimate.value, estimate.low))
    if estimate.value >= horizon_s:
        return NEVER if estimate.low >= horizon_s else f"{NEVER} ({low} to {NEVER})"
    return f"{value} ({low} to {NEVER})"
