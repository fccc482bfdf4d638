"""The records of what a campaign says: for the fitter alone, since shares by way in are race times in disguise."""

from __future__ import annotations

from wardwright.model.opening import Manner
from wardwright.model.record import Record
from wardwright.model.sketch import Sketch
from wardwright.trials.campaign.shares import Share, Spread
from wardwright.trials.timely import Need

CANNOT_KNOW = (
    "whether anybody comes at all, and who: shares are of those who do come",
    "by which way: the table of shares is weak, and its source stands beside it",
    "how an intruder answers a sounder: here they go on until they are done",
    "how a movement detector of a given make notices: its zones are typical, and no open table of chances exists",
    "anybody who crawls or goes very slowly on purpose, or knows the house",
    "radio that is jammed, a line that is cut, or a detector that was masked before",
    "what the household forgets: a window left open, a door not shut, an alarm not set",
    "whether anybody answers the message, and when",
)
"""What the numbers do not know, said with them."""


class WayResult(Record):
    """What came of the intruders of one way in and manner."""

    opening: str
    name: str
    manner: Manner
    share: Share
    """Of all intruders. [-]"""
    sounder: Share
    """Sounder before the first target is touched."""
    message: Share
    """Message out before the control unit is broken."""


class Beaten(Record):
    """A path that beats the design."""

    way: str
    """The opening's name."""
    manner: Manner
    first: str
    """What is gone for first."""
    rooms: tuple[str, ...]
    """The rooms on the way there."""
    lost: Share
    """Intruders that were not caught there, in one need or both, of all intruders."""
    own: Share
    """The same of those who go so."""
    sketches: tuple[Sketch, ...]
    """The way there, storey by storey."""


class Cause(Record):
    """What mends misses by itself, once it is as in the design case."""

    what: str
    share: Share
    """Of the misses traced."""


class Why(Record):
    """The misses of one need, traced."""

    need: Need
    traced: int
    design: Share
    """Missed in the design case too: the design does not hold from there."""
    causes: tuple[Cause, ...]
    bugs: tuple[str, ...]
    """Where the design was said to hold and did not: to be reported as a fault of the program."""


class Loss(Record):
    """The same intrusions with one thing lost."""

    lost: str
    """Id of a detector or sounder, or the message path."""
    name: str
    sounder: Share
    message: Share
    sounder_change: float
    message_change: float
    """Change of the share of the same intruders; below zero: fewer caught. [-]"""


class PathResult(Record):
    """The least-detected path of one way in, with its interruption estimate."""

    opening: str
    name: str
    manner: Manner
    need: Need
    rooms: tuple[str, ...]
    detected: float
    interrupted: float
    timely: float
    last_timely: str | None
    """The critical detection point."""
    sketches: tuple[Sketch, ...]
    """The path, storey by storey."""


class EntryRow(Record):
    """A row of the table that says by which ways intruders come in."""

    id: str
    name: str
    share: float
    source: str
    mark: str
    note: str


class CampaignReport(Record):
    """Everything a campaign says."""

    site: str
    part: str
    trials: int
    seed: int
    before_target: Share
    """Sounder before the first target is touched (without targets: before the control unit is reached)."""
    before_unit: Share | None
    """Message out before the control unit is broken; None: there is no control unit."""
    both: Share
    targets: tuple[tuple[str, Share], ...]
    """Each target -> how often a sounder sounds before it is touched, of those who get there."""
    times: tuple[Spread, ...]
    ways: tuple[WayResult, ...]
    beaten: tuple[Beaten, ...]
    why: tuple[Why, ...]
    losses: tuple[Loss, ...]
    second: Share | None
    """A second, independent detection within the window, of those noticed at all; None: see `second_reason`."""
    second_window_s: float | None
    second_limit: str
    """Where that window is from, by rule pack, and how sure that is; empty where none is told."""
    second_reason: str | None
    paths: tuple[PathResult, ...]
    entries: tuple[EntryRow, ...]
    closed: tuple[str, ...]
    """Ways in from which no way on foot leads to any goal: nobody is sent there."""
    cannot_know: tuple[str, ...] = CANNOT_KNOW
