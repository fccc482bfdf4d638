"""What stands beside the plan on the screen: the questions with their answers, worst first, and the findings."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.documents.content.drivers import chance_words, driver_lines
from wardwright.documents.content.headline import headline, horizon_of, measure_of
from wardwright.documents.content.mends import LOCKS_AND_LIGHTS, caution_of, cautions_of, mend_sentence
from wardwright.documents.content.names import Names, names_of
from wardwright.documents.content.quantities import range_words, sentence, value_words
from wardwright.documents.content.question_words import QUESTION_SHORT
from wardwright.documents.content.sun_calendar import sun_words
from wardwright.documents.content.whereabouts import storeys_by_thing, things_of
from wardwright.documents.content.wording import BASES, VERDICTS
from wardwright.model.catalogue import Catalogue
from wardwright.model.edits import Operation
from wardwright.model.estimate import Estimate
from wardwright.model.record import Basis, Record
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, Verdict
from wardwright.questions.table import QUESTIONS
from wardwright.rules.finding import Finding, Mend, Severity
from wardwright.rules.mending import operations_of


class BoardDriver(Record):
    """An input that moves an answer."""

    name: str
    swing: str
    basis: Basis


class BoardMend(Record):
    """A mend in words, and the edit that carries it out."""

    text: str
    operations: tuple[Operation, ...] | None
    """None: only a person can do it."""
    cautions: tuple[str, ...]
    """What to beware of in doing it."""


class BoardNumber(Record):
    """One of the numbers behind an answer."""

    name: str
    value: str
    range: str


class BoardQuestion(Record):
    """One of the questions: the heading that its answers stand under."""

    number: int
    name: str
    """Short."""
    asks: str
    """The whole of it."""


class BoardSpan(Record):
    """The numbers of an answer, to be drawn as a bar beside others of the same unit."""

    low: float
    value: float
    high: float
    unit: str


class BoardAnswer(Record):
    """One answer as it stands on the screen."""

    key: str
    """The same for the same question about the same thing, whatever the answer."""
    question: int
    question_name: str
    subject: str
    subject_id: str
    storey: str
    """On which it is; empty: it is of the whole house."""
    about: tuple[str, ...]
    """Ids of all things that it has to do with."""
    measure: str
    verdict: Verdict
    verdict_word: str
    value: str
    range: str
    span: BoardSpan | None
    """None: it has no number, or one that stands for never."""
    chance: str
    reason: str
    basis: Basis | None
    basis_word: str
    drivers: tuple[BoardDriver, ...]
    numbers: tuple[BoardNumber, ...]
    notes: tuple[str, ...]
    mends: tuple[BoardMend, ...]


class BoardFinding(Record):
    """One finding as it stands on the screen."""

    key: str
    code: str
    rule: str
    severity: Severity
    subject: str
    subject_id: str
    message: str
    cure: str
    caution: str
    """Stands by it whatever its mend; empty for most."""
    mends: tuple[BoardMend, ...]


def board_questions() -> tuple[BoardQuestion, ...]:
    """Every question that is answered, by number."""
    return tuple(
        BoardQuestion(number=one.number, name=short_name(one.number), asks=one.name) for one in QUESTIONS
    )


def short_name(number: int) -> str:
    """What a question is called where there is little room."""
    return QUESTION_SHORT.get(number, f"Question {number}")


def key_of(answer: Answer) -> str:
    """What an answer is known by on the screen.

    Examples
    --------
    >>> from wardwright.questions.answer import unanswered
    >>> key_of(unanswered(5, "walk", subject="Garden door", subject_id="garden-door", reason="no"))
    '5/garden-door'
    """
    return f"{answer.question}/{answer.subject_id}"


def chosen_of(answers: Sequence[Answer], key: str | None) -> Answer | None:
    """The answer of a key; None if none has it."""
    return next((one for one in answers if key_of(one) == key), None)


def board_answers(site: Site, catalogue: Catalogue, answers: Sequence[Answer]) -> tuple[BoardAnswer, ...]:
    """Put answers into the words of the screen, in their order.

    Parameters
    ----------
    site : Site
        What they are about.
    catalogue : Catalogue
        For the names of sheets, and for how long an intruder stays.
    answers : sequence of Answer
        Worst first.

    Returns
    -------
    tuple of BoardAnswer
        Each mend with the edit that one tap makes.
    """
    names, storeys = names_of(site, catalogue), storeys_by_thing(site)
    return tuple(_answer(one, site, catalogue, names=names, storeys=storeys) for one in answers)


def _answer(
    answer: Answer, site: Site, catalogue: Catalogue, *, names: Names, storeys: dict[str, str]
) -> BoardAnswer:
    estimate, horizon_s = answer.estimate, horizon_of(catalogue)
    value, span = headline(answer, horizon_s=horizon_s)
    mends = sorted(answer.mends, key=lambda mend: mend.action not in LOCKS_AND_LIGHTS)
    return BoardAnswer(
        key=key_of(answer),
        question=answer.question,
        question_name=short_name(answer.question),
        subject=answer.subject,
        subject_id=answer.subject_id,
        storey=storeys.get(answer.subject_id, ""),
        about=things_of(site, answer),
        measure=measure_of(answer, value),
        verdict=answer.verdict,
        verdict_word=VERDICTS[answer.verdict][0],
        value=value or "no number",
        range=span,
        span=_span(estimate, horizon_s=horizon_s),
        chance=chance_words(answer.chance) if estimate else "",
        reason=sentence(answer.reason) if answer.reason else "",
        basis=estimate.basis if estimate else None,
        basis_word=BASES[estimate.basis] if estimate else "",
        drivers=tuple(
            BoardDriver(name=line.name, swing=line.swing, basis=driver.basis)
            for line, driver in zip(driver_lines(estimate), estimate.drivers, strict=False)
        )
        if estimate
        else (),
        numbers=tuple(
            BoardNumber(
                name=part.name,
                value=value_words(part.estimate) if part.estimate else part.reason or "no number",
                range=range_words(part.estimate) if part.estimate else "",
            )
            for part in answer.parts
        ),
        notes=(*sun_words(answer, names), *(sentence(note) for note in answer.notes)),
        mends=tuple(_mend(mend, site, catalogue, names=names) for mend in mends),
    )


def _span(estimate: Estimate | None, *, horizon_s: float) -> BoardSpan | None:
    if estimate is None or (estimate.unit == "s" and min(estimate.value, estimate.low) <= -horizon_s):
        return None
    return BoardSpan(low=estimate.low, value=estimate.value, high=estimate.high, unit=estimate.unit)


def _mend(mend: Mend, site: Site, catalogue: Catalogue, *, names: Names) -> BoardMend:
    return BoardMend(
        text=mend_sentence(mend, names),
        operations=operations_of(site, catalogue, mend),
        cautions=cautions_of(site, catalogue, (mend,)),
    )


def board_findings(site: Site, catalogue: Catalogue, findings: Sequence[Finding]) -> tuple[BoardFinding, ...]:
    """Put findings into the words of the screen, in their order; what was not run stays as such."""
    names = names_of(site, catalogue)
    found: dict[str, BoardFinding] = {}
    for one in findings:
        key, count = f"{one.code}/{one.subject}", 1
        while key in found:
            count += 1
            key = f"{one.code}/{one.subject}/{count}"
        found[key] = BoardFinding(
            key=key,
            code=one.code,
            rule=one.rule,
            severity=one.severity,
            subject=names.of(one.subject),
            subject_id=one.subject,
            message=sentence(one.message),
            cure=sentence(one.cure),
            caution=caution_of(one),
            mends=tuple(_mend(mend, site, catalogue, names=names) for mend in one.mends),
        )
    return tuple(found.values())
