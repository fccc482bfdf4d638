"""One walk past a movement detector, as data."""

from __future__ import annotations

from typing import Literal

from wardwright.model.record import Id, Point2, Record

Expected = Literal["notices", "may notice", "stays quiet"]
Manner = Literal[
    "across, far", "across, near", "toward", "in by", "beyond", "outside the door", "past the pane"
]
Pace = Literal["slow", "usual", "fast"]
PACES: dict[Pace, str] = {"slow": "pace-cautious", "usual": "pace-normal", "fast": "pace-hurried"}
"""Words for paces, and the figures that say them."""


class WalkTest(Record):
    """One walk past one movement detector."""

    device: Id
    manner: Manner
    subject: str = ""
    """The door, pane or space that it is by; empty: its own room."""
    pace: Pace
    pace_m_s: float
    """How fast that is, likely. [m/s]"""
    storey: Id
    from_m: Point2
    to_m: Point2
    """Where the walk begins and ends. [m]"""
    length_m: float
    expected: Expected
    """By the model."""
    is_wanted: bool
    """Whether that is what the design wants; False: it sees what it is not to see."""
    within_m: float | None
    """Walked until it notices, at most; None: it is not to. [m]"""
    wait_s: float
    """Out of its sight before the walk, so that it does not sleep. [s]"""
