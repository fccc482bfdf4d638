"""One answer as a paper shows it: words and drawings, no ink yet."""

from __future__ import annotations

from dataclasses import dataclass

from wardwright.documents.content.mends import LOCKS_AND_LIGHTS, mend_sentence
from wardwright.documents.content.names import Names
from wardwright.documents.content.quantities import (
    quantity,
    range_words,
    sentence,
    step_of,
    value_words,
    with_range,
)
from wardwright.documents.content.race import event_of, race_strip
from wardwright.documents.content.wording import BASES, QUESTION_SHORT, VERDICTS
from wardwright.documents.drawing.plan import BasePlan, plan_with
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.strip import range_line
from wardwright.model.estimate import Estimate
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, Verdict

DRIVERS_SHOWN = 2


@dataclass(frozen=True, slots=True)
class DriverLine:
    """One input that moves an answer."""

    name: str
    swing: str
    basis: str
    basis_words: str
    share: float
    """Its swing as a share of the largest, for a bar. [-]"""


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


def chance_words(chance: float | None) -> str:
    """A chance in whole per cent, never rounded up to certainty.

    Examples
    --------
    >>> chance_words(0.534), chance_words(0.999), chance_words(1.0), chance_words(0.0)
    ('met in 53 % of draws', 'met in over 99 % of draws', 'met in all draws', 'met in no draw')
    """
    if chance is None:
        return ""
    if chance in (0.0, 1.0):
        return "met in all draws" if chance else "met in no draw"
    if chance > 0.99 or chance < 0.01:
        return f"met in {'over 99' if chance > 0.5 else 'under 1'} % of draws"
    return f"met in {chance * 100.0:.0f} % of draws"


def driver_lines(estimate: Estimate, *, is_plain: bool = False) -> tuple[DriverLine, ...]:
    """The inputs that move an answer most, at most two."""
    shown = [driver for driver in estimate.drivers[:DRIVERS_SHOWN] if driver.swing > 0.0]
    if not shown:
        return ()
    largest = max(driver.swing for driver in shown)
    lines = []
    for driver in shown:
        step = step_of(estimate) if driver.swing >= 1.0 or estimate.unit == "-" else 0.1
        swing = quantity(driver.swing, estimate.unit, step, is_plain=is_plain)
        lines.append(
            DriverLine(
                driver.name, swing, driver.basis, BASES[driver.basis], round(driver.swing / largest, 3)
            )
        )
    return tuple(lines)


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
