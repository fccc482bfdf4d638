"""A race as a strip of time."""

from __future__ import annotations

from typing import Literal

from wardwright.documents.content.quantities import with_range
from wardwright.documents.content.wording import NEVER, RACE_EVENTS
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.strip import Event, strip_of_time
from wardwright.questions.answer import Answer

Side = Literal["alarm", "intruder"]


def event_of(name: str) -> tuple[Side, str] | None:
    """Whose event a part of a race is, and how it is written; None for a part that is no event."""
    for word, side, text in RACE_EVENTS:
        if word in name:
            return ("alarm" if side == "alarm" else "intruder"), text
    return None


def race_strip(answer: Answer, *, key: str) -> Drawing | None:
    """The strip of time of a race; None for an answer that is no race."""
    if answer.question != 1:
        return None
    events: list[Event] = []
    for part in answer.parts:
        known = event_of(part.name)
        if known is None:
            continue
        side, text = known
        if part.estimate is None:
            events.append(Event(text, side, None, 0.0, 0.0, part.reason or NEVER))
            continue
        one = part.estimate
        words = with_range(one)
        events.append(Event(text, side, one.value, one.low, one.high, words))
    if not events:
        return None
    told = "; ".join(f"{event.name} {event.words}" for event in events)
    return strip_of_time(
        tuple(events),
        key=key,
        title=f"The race from {answer.subject}, as a strip of time",
        description=f"Seconds from the moment the opening is open or the glass is out: {told}.",
    )
