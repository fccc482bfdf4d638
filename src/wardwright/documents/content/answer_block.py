"""One answer as a paper shows it: words and drawings, no ink yet."""

from __future__ import annotations

from dataclasses import dataclass

from wardwright.documents.content.drivers import DriverLine, chance_words, driver_lines
from wardwright.documents.content.mends import LOCKS_AND_LIGHTS, mend_sentence
from wardwright.documents.content.names import Names
from wardwright.documents.content.quantities import (
    range_words,
    sentence,
    value_words,
    with_range,
)
from wardwright.documents.content.race import event_of, race_strip
from wardwright.documents.content.wording import BASES, QUESTION_SHORT, VERDICTS
from wardwright.documents.drawing.plan import BasePlan, plan_with
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.strip import range_line
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, Verdict


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

    Returns
    -------
    AnswerBlock
        Locks and lights come first among its mends.
    """
    key = f"answer-{rank}"
    estimate = answer.estimate
    mends = sorted(answer.mends, key=lambda mend: mend.action not in LOCKS_AND_LIGHTS)
    strip = race_strip(answer, key=f"{key}-strip")
    word, words = VERDICTS[answer.verdict]
    return AnswerBlock(
        key=key,
        rank=rank,
        question=answer.question,
        question_name=QUESTION_SHORT.get(answer.question, f"Question {answer.question}"),
        subject=answer.subject,
        measure=answer.measure,
        verdict=answer.verdict,
        verdict_word=word,
        verdict_words=words,
        value=value_words(estimate) if estimate else "no number",
        range=range_words(estimate) if estimate else "",
        chance=chance_words(answer.chance) if estimate else "",
        reason=sentence(answer.reason) if answer.reason else "",
        basis=BASES[estimate.basis] if estimate else "",
        drivers=driver_lines(estimate) if estimate else (),
        numbers=()
        if strip is not None and not _beside_strip(answer)
        else _numbers(answer, strip is not None),
        notes=tuple(sentence(note) for note in answer.notes),
        mends=tuple(mend_sentence(mend, names) for mend in mends),
        range_line=_range_line(answer, key=f"{key}-range"),
        strip=strip,
        drawings=_drawings(answer, key=key, bases=bases, suggested=suggested),
        is_open=answer.verdict in ("bad", "thin"),
    )


def _range_line(answer: Answer, *, key: str) -> Drawing | None:
    if answer.estimate is None:
        return None
    words = f"{with_range(answer.estimate)}; the upright stroke is nought"
    return range_line(answer.estimate, key=key, description=words)


def _beside_strip(answer: Answer) -> bool:
    return any(event_of(part.name) is None for part in answer.parts)


def _numbers(answer: Answer, has_strip: bool) -> tuple[NumberLine, ...]:
    lines = []
    for part in answer.parts:
        if has_strip and event_of(part.name) is not None:
            continue
        one = part.estimate
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
