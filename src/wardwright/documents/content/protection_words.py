"""The words in which the client's copy tells protection, locks and gains: never a time, a length or a way."""

from __future__ import annotations

from wardwright.model.estimate import Estimate
from wardwright.questions.protection import Noticed

NOTICED: dict[Noticed, str] = {
    "at once": "noticed as it is opened",
    "in the room": "noticed in that room",
    "further in": "not noticed at once: another room may be entered first",
    "not": "not noticed",
}
THROUGH_GLASS: dict[Noticed, str] = {**NOTICED, "at once": "noticed as it breaks"}
NOT_OPENED = "does not open"
NO_GLASS = "no pane that is quickly broken"
NOT_COUNTED_HERE = "taken to be out of reach, or too small for a person: "
NOT_WATCHED_ROOM = "not watched"
NOTHING_ON = "nothing is on in this part"

MUCH_S, CLEARLY_S = 60.0, 15.0
"""From here on a lock gains `much`, or `clearly`. [s] (assumption)"""


def gain_words(gain: Estimate | None) -> str:
    """How much longer a better lock or pane holds, without a number.

    Examples
    --------
    >>> gain_words(Estimate(value=150, low=60, high=290, unit="s"))
    'holds much longer than now'
    """
    if gain is None:
        return "holds longer than now"
    how_much = "much" if gain.value >= MUCH_S else "clearly" if gain.value >= CLEARLY_S else "a little"
    return f"holds {how_much} longer than now"


def outcome_words(after: Estimate | None) -> str:
    """What a change to the alarm brings, without a number.

    Examples
    --------
    >>> outcome_words(Estimate(value=5, low=-2, high=7, unit="s"))
    'the alarm would then be in time, if nothing goes badly'
    """
    if after is not None and after.unit == "dBA":
        return "the alarm would be louder where somebody sleeps"
    if after is None or after.value <= 0:
        return "the alarm would come sooner, though not surely in time"
    if after.low > 0:
        return "the alarm would then be in time"
    return "the alarm would then be in time, if nothing goes badly"


LOCKS_WHY = (
    "An alarm tells; it does not hold anybody up. Where an opening is weak, a better lock or pane gains more than "
    "any detector, and a light takes away the dark."
)
LIMITS = (
    "An alarm promises no outcome. People and tools differ, and whatever is shut, locked and lit helps it.",
    "The door that you come in by gives time to unset: whoever breaks in there has that time too.",
    "What stands open cannot be noticed as it is opened: shut doors and windows before setting.",
    "A movement detector does not see every corner of its room, and somebody very slow may pass it.",
    "It sees what is there when it is fitted: tell us of moved furniture, building work, a new pet, a new pane.",
    "Smoke, heat and CO alarms that are linked to it do not replace those that the local code asks for.",
    "It is no certificate and no promise to an insurer.",
)
AGREED = (
    "Left without protection on purpose, and why",
    "The customer: name, date, signature",
    "The fitter: name, date, signature",
)
