"""Question 5: a second, independent notice against the window in which it confirms the first, by rule pack."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.model.catalogue import Figure
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.limits import Limit
from wardwright.questions.answer import PartAnswer

WALKED = "before a second, independent device notices, walked without a stop"
NO_SECOND = "nothing gives a second, independent notice"
WINDOW = "window in which a second device confirms the first"


def second_parts(
    distances_m: Sequence[float], paces: tuple[Figure, Figure], limit: Limit | None
) -> tuple[PartAnswer, ...]:
    """How long a walk takes on which no second device has noticed yet, and the window that it is held against.

    Parameters
    ----------
    distances_m : sequence of float
        The shortest, likely and longest of such walks. [m]
    paces : tuple of Figure
        A hurried intruder's and a cautious one's. [m/s]
    limit : Limit or None
        The window; None: the rule pack has none.

    Returns
    -------
    tuple of PartAnswer
        The walk from a hurried to a cautious pace, and the window.
    """
    short, likely, long = distances_m
    hurried, cautious = paces
    value, low = likely / hurried.value, min(short, likely) / hurried.high
    high = max(long, likely) / cautious.low
    moving = (
        Driver(
            name="intruder's pace, hurried or cautious", swing=likely / cautious.low - value, basis="default"
        ),
    )
    walked = Estimate(
        value=value,
        low=min(low, value),
        high=max(high, value),
        unit="s",
        drivers=moving if likely > 0.0 else (),
        basis="default",
    )
    if limit is None:
        return (
            PartAnswer(name=WALKED, estimate=walked),
            PartAnswer(name=WINDOW, estimate=None, reason="the rule pack tells no window"),
        )
    window = Estimate(value=limit.value, low=limit.value, high=limit.value, unit="s")
    return PartAnswer(name=WALKED, estimate=walked), PartAnswer(name=WINDOW, estimate=window)


def second_note(distances_m: Sequence[float], cautious: Figure, limit: Limit | None) -> str:
    """Whether whoever goes on walking is noticed a second time within the window, and where that is from."""
    if limit is None:
        return "the rule pack tells no window for a second detection"
    longest_s = max(distances_m) / cautious.low
    said = "within" if longest_s <= limit.value else "perhaps not within"
    known = ", ".join(part for part in (limit.origin, limit.mark) if part)
    return (
        f"whoever goes on walking has come to the end of that walk {said} the window of {limit.value / 60.0:g} min "
        f"({known})"
    )
