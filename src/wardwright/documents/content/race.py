"""A race as a strip of time, and as the sentence of what happens in order."""

from __future__ import annotations

from typing import Literal, NamedTuple

from wardwright.documents.content.headline import is_nought, time_words
from wardwright.documents.content.quantities import quantity, sentence, with_range
from wardwright.documents.content.wording import NEVER, RACE_EVENTS, RACE_TOLD
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.strip import Event, strip_of_time
from wardwright.model.estimate import Estimate
from wardwright.questions.answer import Answer, PartAnswer

Side = Literal["alarm", "intruder"]
NOTICED_BY = "noticed by "
"""How the label of the place of first notice begins."""
HOLDS = "holds"
"""How the part begins that says how long an opening holds."""


class Known(NamedTuple):
    """One event of a race and its part of the answer."""

    word: str
    side: Side
    text: str
    part: PartAnswer


def event_of(name: str) -> tuple[Side, str] | None:
    """Whose event a part of a race is, and how it is written; None for a part that is no event."""
    for word, side, text in RACE_EVENTS:
        if word in name:
            return ("alarm" if side == "alarm" else "intruder"), text
    return None


def _known(answer: Answer) -> tuple[Known, ...]:
    found = []
    for part in answer.parts:
        known = event_of(part.name)
        if known is not None:
            word = next(word for word, _, _ in RACE_EVENTS if word in part.name)
            found.append(Known(word, known[0], known[1], part))
    return tuple(found)


def race_strip(answer: Answer, *, key: str, horizon_s: float) -> Drawing | None:
    """Draw the strip of time of a race.

    Parameters
    ----------
    answer : Answer
        To question 1.
    key : str
        Unique on the page.
    horizon_s : float
        A time this long stands for never. [s]

    Returns
    -------
    Drawing or None
        None for an answer that is no race.
    """
    if answer.question != 1:
        return None
    events: list[Event] = []
    for one in _known(answer):
        estimate = one.part.estimate
        if estimate is None:
            events.append(Event(one.text, one.side, None, 0.0, 0.0, one.part.reason or NEVER))
            continue
        words = time_words(estimate, horizon_s=horizon_s)
        value = estimate.value if estimate.value < horizon_s else None
        is_open = estimate.high >= horizon_s
        events.append(Event(one.text, one.side, value, estimate.low, estimate.high, words, is_open))
    if not events:
        return None
    told = "; ".join(f"{event.name} {event.words}" for event in events)
    return strip_of_time(
        tuple(events),
        key=key,
        title=f"The race from {answer.subject}, as a strip of time",
        description=f"Seconds from the moment the opening is open or the glass is out: {told}.",
    )


def race_words(answer: Answer, *, horizon_s: float) -> tuple[str, ...]:
    """Say what happens in a race in its order, at the likely times.

    Parameters
    ----------
    answer : Answer
        To question 1.
    horizon_s : float
        A time this long stands for never. [s]

    Returns
    -------
    tuple of str
        How long the opening holds, where that is known; what happens then; and what comes of it. Nothing for
        an answer that is no race.
    """
    known = _known(answer) if answer.question == 1 else ()
    if not known:
        return ()
    holds = next((p.estimate for p in answer.parts if p.name.startswith(HOLDS) and p.estimate), None)
    told = [f"The opening holds for {with_range(holds)}; then the clock starts."] if holds else []
    timed = [(one, one.part.estimate) for one in known if one.part.estimate is not None]
    dated = [(estimate.value, one) for one, estimate in timed if estimate.value < horizon_s]
    dated.sort(key=lambda pair: pair[0])
    never = [RACE_TOLD[one.word][1] for one in known if one not in [pair[1] for pair in dated]]
    said: list[str] = []
    noticed_s: float | None = None
    for seconds, one in dated:
        if one.word == "sounder" and noticed_s is not None:
            said.append(f"sounder {_seconds(seconds - noticed_s)} later")
        else:
            said.append(_said(one, seconds, answer=answer))
        noticed_s = seconds if one.word == "notice" else None
    told.append(sentence("; ".join(said + never)))
    if answer.estimate is not None:
        told.append(_outcome(answer.measure, answer.estimate, horizon_s=horizon_s))
    return tuple(told)


def _said(one: Known, seconds: float, *, answer: Answer) -> str:
    if one.word != "notice":
        return f"{RACE_TOLD[one.word][0]} {_seconds(seconds)}"
    labels = (sketch.label for sketch in answer.sketches if sketch.role == "notice")
    who = next((label.removeprefix(NOTICED_BY) for label in labels if label.startswith(NOTICED_BY)), "")
    estimate = one.part.estimate
    at_once = estimate is not None and is_nought(seconds, estimate)
    text = "noticed at once" if at_once else f"noticed after {_seconds(seconds)}"
    return f"{text} by {who}" if who else text


def _outcome(measure: str, hand: Estimate, *, horizon_s: float) -> str:
    """Whether the need that decides is met at the likely values."""
    what = "sounder" if "sounder" in measure else "message" if "message" in measure else "alarm"
    if hand.value <= -horizon_s:
        return f"The {what} never comes."
    if hand.value <= 0.0:
        return f"The {what} is too late by {_seconds(-hand.value)}."
    return f"The {what} is in time, with {_seconds(hand.value)} in hand."


def _seconds(value: float) -> str:
    return quantity(value, "s", 0.1 if abs(value) < 99.95 else 1.0).replace(" ", "\u00a0")
