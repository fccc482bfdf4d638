"""One trip of the household as it was played: what rings, when, and where the person is then."""

from __future__ import annotations

import math
from typing import Literal, NamedTuple

from wardwright.physics.walking.from_site import Spot
from wardwright.trials.leaves_opened import Leaves

Kind = Literal["arrival", "wrong turn", "forgotten code", "leaving", "night", "morning", "stay", "unset"]
"""`stay`: in a space where somebody is told that they may be while a part is set. `unset`: at home, nothing set."""
UNSET = "unset"
"""Stands for the part where nothing is set."""
NOT_ORDINARY: tuple[Kind, ...] = ("wrong turn", "forgotten code")


class HouseholdTrip(NamedTuple):
    """One trip as played, with the alarm that it gives, if any."""

    person: str
    """Id."""
    kind: Kind
    part: str
    """Id of the part that is set; `UNSET`: nothing is."""
    place: str
    """Id of the door that is come in or gone out by, or of the room that is gone to."""
    leaves: Leaves
    """How leaves stand that nobody opens: as they usually do then, or each in its habit that lets most be seen."""
    second: float
    """When the alarm starts, or what keeps it from being set tells; infinite: never. [s]"""
    device: str | None
    """Id of the device that gives it, or whose entry time ends."""
    behaviour: str | None
    """Id of how its zone behaves."""
    spot: Spot | None
    """Where the person is then; None where that is not told by the walk."""
    message_due_s: float = math.inf
    """When its message may leave, any abort delay being over. [s]"""

    @property
    def is_ordinary(self) -> bool:
        """Whether it ought never to ring."""
        return self.kind not in NOT_ORDINARY

    @property
    def rings(self) -> bool:
        """Whether it gives an alarm, or keeps the alarm from being set."""
        return self.device is not None
