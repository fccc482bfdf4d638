"""One answer as a paper shows it: words and drawings, no ink yet."""

from __future__ import annotations

import math
from dataclasses import dataclass

from wardwright.documents.content.climb_side import climb_side
from wardwright.documents.content.drivers import DriverLine, chance_words, driver_lines
from wardwright.documents.content.headline import headline, is_nought, measure_of
from wardwright.documents.content.mends import LOCKS_AND_LIGHTS, mend_sentence
from wardwright.documents.content.names import Names
from wardwright.documents.content.quantities import (
    range_words,
    sentence,
    value_words,
)
from wardwright.documents.content.question_words import QUESTION_HEADINGS, QUESTION_SHORT
from wardwright.documents.content.race import HOLDS, event_of, race_strip, race_words
from wardwright.documents.content.sun_calendar import sun_calendar, sun_words
from wardwright.documents.content.wording import (
    AT_ONCE,
    BASES,
    UNDETECTED,
    VERDICTS,
)
from wardwright.documents.drawing.plan import BasePlan, plan_with
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.strip import range_line
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, Verdict

OPEN: tuple[Verdict, ...] = ("bad", "thin")
"""Verdicts whose drawings are shown, and printed, without being asked for."""
RACE = 1
"""The question that has a strip of time."""


@dataclass(frozen=True, slots=True)
class NumberLine:
    """One of the numbers behind an answer."""

    name: str
    value: str
    range: str
    reason: str


@dataclass(frozen=True, slots=True)
class AnswerBlock:
    """One answer, ready to be set."""

    key: str
    rank: int
    question: int
    question_name: str
    heading: str
    """What stands before the subject in the heading."""
    subject: str
    measure: str
    verdict: Verdict
    verdict_word: str
    verdict_words: str
    value: str
    range: str
    chance: str
    reason: str
    basis: str
    drivers: tuple[DriverLine, ...]
    numbers: tuple[NumberLine, ...]
    notes: tuple[str, ...]
    mends: tuple[str, ...]
    range_line: Drawing | None
    strip: Drawing | None
    told: tuple[str, ...]
    """What happens in a race, in its order; or when the sun shines, pane by pane."""
    drawings: tuple[Drawing, ...]
    is_open: bool
    """Whether its drawings are shown without being asked for."""


def answer_block(
    answer: Answer,
    *,
    rank: int,
    names: Names,
    bases: tuple[BasePlan, ...],
    suggested: tuple[Sketch, ...] = (),
    horizon_s: float = math.inf,
) -> AnswerBlock:
    """Put one answer into words and drawings.

    Parameters
    ----------
    answer : Answer
        What was worked out.
    rank : int
        Its place in the list, from 1.
    names : Names
        What people call things.
    bases : tuple of BasePlan
        The plans of the storeys, which its sketches are drawn over.
    suggested : tuple of Sketch, default ()
        Where its mends would put things; drawn with it.
    horizon_s : float, default inf
        A time this long stands for never. [s]

    Returns
    -------
    AnswerBlock
        Locks and lights come first among its mends.
    """
    key = f"answer-{rank}"
    estimate = answer.estimate
    mends = sorted(answer.mends, key=lambda mend: mend.action not in LOCKS_AND_LIGHTS)
    strip = race_strip(answer, key=f"{key}-strip", horizon_s=horizon_s)
    strip = strip or sun_calendar(answer, key=f"{key}-strip") or climb_side(answer, key=f"{key}-strip")
    word, words = VERDICTS[answer.verdict]
    value, span = headline(answer, horizon_s=horizon_s)
    return AnswerBlock(
        key=key,
        rank=rank,
        question=answer.question,
        question_name=QUESTION_SHORT.get(answer.question, f"Question {answer.question}"),
        heading=QUESTION_HEADINGS.get(answer.question, ""),
        subject=answer.subject,
        measure=measure_of(answer, value),
        verdict=answer.verdict,
        verdict_word=word,
        verdict_words=words,
        value=value or "no number",
        range=span,
        chance=chance_words(answer.chance) if estimate else "",
        reason=sentence(answer.reason) if answer.reason else "",
        basis=BASES[estimate.basis] if estimate else "",
        drivers=driver_lines(estimate) if estimate else (),
        numbers=_numbers(answer),
        notes=tuple(sentence(note) for note in answer.notes),
        mends=tuple(mend_sentence(mend, names) for mend in mends),
        range_line=_range_line(answer, key=f"{key}-range", horizon_s=horizon_s)
        if span or value != AT_ONCE
        else None,
        strip=strip,
        told=race_words(answer, horizon_s=horizon_s) or sun_words(answer, names),
        drawings=_drawings(answer, key=key, bases=bases, suggested=suggested),
        is_open=answer.verdict in OPEN,
    )


def _range_line(answer: Answer, *, key: str, horizon_s: float) -> Drawing | None:
    if answer.estimate is None:
        return None
    value, span = headline(answer, horizon_s=horizon_s)
    words = f"{value} ({span})" if span else value
    words = f"{words}; the upright stroke is nought"
    return range_line(answer.estimate, key=key, description=words, horizon_s=horizon_s)


def _numbers(answer: Answer) -> tuple[NumberLine, ...]:
    """The numbers behind an answer; those of a race are on its strip and in its words."""
    lines = []
    is_at_once = answer.question in UNDETECTED and answer.estimate is not None
    for part in answer.parts:
        one = part.estimate
        if answer.question == RACE and (event_of(part.name) or (one and part.name.startswith(HOLDS))):
            continue
        if is_at_once and one is not None and is_nought(one.high, one):
            continue  # noticed where they come in: no way, no time, no floor
        lines.append(
            NumberLine(
                part.name,
                value_words(one) if one else "no number",
                range_words(one) if one else "",
                part.reason or "",
            )
        )
    return tuple(lines)


def _drawings(
    answer: Answer, *, key: str, bases: tuple[BasePlan, ...], suggested: tuple[Sketch, ...]
) -> tuple[Drawing, ...]:
    drawn = {sketch.storey for sketch in answer.sketches if sketch.role != "timely"}
    return tuple(
        plan_with(
            base,
            answer.sketches + suggested,
            key=f"{key}-{base.storey}",
            title=f"{base.name}: {answer.subject}",
            description=f"Plan of {base.name} at 1:{base.sheet.scale} with the answer for {answer.subject} "
            f"drawn on it: {answer.measure}.",
        )
        for base in bases
        if base.storey in drawn
    )
