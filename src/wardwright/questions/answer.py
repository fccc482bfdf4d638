"""An answer to one of the questions about one subject: numbers, what to draw, what would mend it."""

from __future__ import annotations

from typing import Literal

from wardwright.model.estimate import Estimate
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.sunshine import Sunshine
from wardwright.rules.finding import Mend

NOT_COUNTED = "not counted as a way in: "
"""How the reason begins where an opening is no way in."""

Verdict = Literal["good", "thin", "bad", "unknown"]
"""`good`: met over the whole range. `thin`: met at the likely value only. `bad`: not met at the likely value.
`unknown`: could not be worked out."""
WORST_FIRST: tuple[Verdict, ...] = ("bad", "thin", "unknown", "good")
"""How verdicts are ranked."""


class PartAnswer(Record):
    """One of the numbers behind an answer."""

    name: str
    """What it is, such as `first notice`."""
    estimate: Estimate | None
    reason: str | None = None
    """Why there is no number."""


class Answer(Record):
    """An answer to one question about one subject."""

    question: int
    subject: str
    """The thing asked about, as people call it: `kitchen window`."""
    subject_id: str
    measure: str
    """What the value is, such as `time in hand before the control unit is broken`."""
    estimate: Estimate | None
    """The deciding number; None where it could not be worked out."""
    reason: str | None = None
    """Why there is no number, as a sentence without a full stop."""
    verdict: Verdict
    chance: float | None = None
    """For a need that is met or not: the share of draws in which it is met."""
    parts: tuple[PartAnswer, ...] = ()
    notes: tuple[str, ...] = ()
    """Facts that go with it, each a short sentence."""
    mends: tuple[Mend, ...] = ()
    sketches: tuple[Sketch, ...] = ()
    sunshine: tuple[Sunshine, ...] = ()
    """When the sun shines on a detector, pane by pane."""


def unanswered(
    question: int, measure: str, *, subject: str, subject_id: str, reason: str, verdict: Verdict = "unknown"
) -> Answer:
    """An answer without a number.

    Parameters
    ----------
    question : int
        Its number.
    measure : str
        What the value would be.
    subject, subject_id : str
        The thing asked about.
    reason : str
        Why there is no number.
    verdict : str, default "unknown"
        `bad` where the reason itself is the fault.

    Returns
    -------
    Answer
        With nothing to draw.
    """
    return Answer(
        question=question,
        subject=subject,
        subject_id=subject_id,
        measure=measure,
        estimate=None,
        reason=reason,
        verdict=verdict,
    )


def about_the_site(question: int, measure: str, *, site: Site, reason: str) -> Answer:
    """An answer about the whole site that is not computable."""
    return unanswered(
        question, measure, subject=site.name, subject_id="site", reason=f"not computable: {reason}"
    )
