"""A place for the control unit, and when one is better than another."""

from __future__ import annotations

import math
from typing import NamedTuple

from wardwright.model.placement import Standing
from wardwright.rules.wall_spots import WallSpot

ENOUGH_DB = 40.0
"""A worst margin above this counts as this: more is of no use. [dB] (assumption)"""
ALIKE_DB, ALIKE_S, ALIKE_M = 3.0, 1.0, 1.0
"""Smaller differences count as none. (assumption)"""

Scores = tuple[float, float, float, float, float]
"""How a place does in radio, time, sight, route and power: more is better in each."""


class Place(NamedTuple):
    """A place for the control unit, and how it does."""

    spot: WallSpot | None
    """None: where it is now."""
    space: str
    """The name of its room."""
    at: Standing
    margin_db: float
    """The likely margin of the worst radio link. [dB]"""
    worst: str
    """The device of that link."""
    reached_s: float
    """When the quickest of all ways in reaches it. [s]"""
    seen: int
    """Panes through which it is seen from outside. [-]"""
    is_on_route: bool
    """Whether its room is on the way in of the household."""
    power_m: float
    """To the nearest power point of its room; infinite where it has none. [m]"""
    margins: tuple[tuple[float, str], ...] = ()
    """The likely margin of each straight link, the worst first, with its device's id. [dB]"""

    @property
    def scores(self) -> Scores:
        """More is better in each; what differs little counts as alike."""
        return (
            math.floor(min(self.margin_db, ENOUGH_DB) / ALIKE_DB),
            math.floor(self.reached_s / ALIKE_S),
            -float(self.seen),
            -float(self.is_on_route),
            -math.ceil(self.power_m / ALIKE_M) if math.isfinite(self.power_m) else -math.inf,
        )

    def beats(self, other: Place) -> bool:
        """Whether it is better in something and worse in nothing."""
        return beats(self.scores, other.scores)


def beats(mine: Scores, theirs: Scores) -> bool:
    """Whether scores are better in something and worse in nothing."""
    return mine != theirs and all(m >= t for m, t in zip(mine, theirs, strict=True))
