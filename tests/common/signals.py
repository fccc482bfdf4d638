"""Signals put in the turn in which the closed forms take them, for the state machine."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.model.programme import Behaviour
from wardwright.trials.zone_response import Signal


def in_turn(times: Sequence[float], behaviours: Sequence[Behaviour]) -> list[Signal]:
    """Signals for `respond`, those of one moment in the turn in which the closed forms take them.

    What alarms at once comes before what starts an entry, and that before what is allowed after one.
    """
    found = []
    for number, (time_s, behaviour) in enumerate(zip(times, behaviours, strict=True)):
        turn = 1 if behaviour.starts_entry else 2 if behaviour.allowed_after_entry else 0
        found.append(Signal(time_s, behaviour, f"{turn} {number:06d}"))
    return found
