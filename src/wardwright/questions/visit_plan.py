"""In which visits batteries are changed: several devices in one, each before its own may end."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import NamedTuple

PLANNED_YEARS = 10
"""How far ahead visits are planned. [a] (assumption)"""


class Visit(NamedTuple):
    """One visit and whose batteries are changed at it."""

    year: float
    """After the first fitting. [a]"""
    devices: tuple[str, ...]
    """In the order of ids."""


class VisitPlan(NamedTuple):
    """Visits at one distance from each other."""

    apart: float
    """From one visit to the next. [a]"""
    every: Mapping[str, int]
    """Device -> at every how manieth visit its battery is changed."""
    visits: tuple[Visit, ...]

    @property
    def is_one_visit(self) -> bool:
        """Whether every battery is changed at every visit, so that none needs another."""
        return all(count == 1 for count in self.every.values())


def visit_plan(lows: Mapping[str, float], *, interval: float) -> VisitPlan | None:
    """Plan visits so that no battery is left beyond the low end of its life.

    Parameters
    ----------
    lows : mapping of str to float
        Device -> how long its battery lasts at least. [a]
    interval : float
        From one service visit to the next, which battery visits are to fall on. [a]

    Returns
    -------
    VisitPlan or None
        Visits as far apart as the shortest life lets, in whole services; where that is less than one, at that life.
        None where there is nothing to change.

    Examples
    --------
    >>> plan = visit_plan({"keypad": 2.4, "hall": 5.1, "door": 7.9}, interval=1.0)
    >>> plan.apart, [(visit.year, visit.devices) for visit in plan.visits[:2]]
    (2.0, [(2.0, ('keypad',)), (4.0, ('hall', 'keypad'))])
    """
    if not lows:
        return None
    shortest = min(lows.values())
    # Lives that are a hair under whole services by rounding alone are whole.
    services = math.floor(shortest / interval + 1e-9)
    apart = services * interval if services >= 1 else shortest
    every = {name: max(1, math.floor(low / apart + 1e-9)) for name, low in sorted(lows.items())}
    count = max(1, math.floor(PLANNED_YEARS / apart + 1e-9))
    visits = []
    for number in range(1, count + 1):
        changed = tuple(name for name, each in every.items() if number % each == 0)
        if changed:
            visits.append(Visit(number * apart, changed))
    return VisitPlan(apart, every, tuple(visits))
