"""When in a year the sun shines through a pane: days, clock hours, and the spells that they make."""

from __future__ import annotations

from typing import Literal

import numpy as np

from wardwright.geometry.raster import FloatArray, IntArray
from wardwright.model.record import Id, Record
from wardwright.physics.sunlight.shine import Beam, Sun
from wardwright.physics.sunlight.year import DAYS, STEP_MIN

Onto = Literal["lens", "view"]
"""What it shines on: straight on the lens, or on floor in view."""
GAP_DAYS = 7
"""Days without sun that do not end a spell. [d] (assumption)"""


class Spell(Record):
    """A stretch of days on which the sun shines at about the same hours."""

    first_day: int
    """From 0, 1 January; after the last day where it goes over the turn of the year."""
    last_day: int
    from_min: float
    """The earliest that it begins on any of them, after midnight by the clock. [min]"""
    to_min: float
    """The latest that it ends on any of them. [min]"""


class Sunshine(Record):
    """The sun through one pane in a year of clear sky."""

    onto: Onto
    opening: Id
    is_covered: bool
    """Whether a covering is drawn before it, as told: then this is what comes when it is left open."""
    minutes: float
    """In the year. [min]"""
    spells: tuple[Spell, ...]
    days: tuple[int, ...]
    """The day of each stretch of sun, from 0."""
    starts_min: tuple[float, ...]
    """When each begins, by the clock. [min]"""
    ends_min: tuple[float, ...]
    """When each ends. [min]"""


def sunshine(sun: Sun, beam: Beam, *, onto: Onto) -> Sunshine:
    """Put the steps of a beam together.

    Parameters
    ----------
    sun : Sun
        The year that its steps are of.
    beam : Beam
        At least one step.
    onto : {"lens", "view"}
        What it shines on.

    Returns
    -------
    Sunshine
        Each stretch of a day once, in the order of time; times by the clock, summer time included.
    """
    steps, year = beam.steps, sun.year
    # A stretch ends where a step is left out, and where the sun's own day ends.
    gaps = np.nonzero(np.diff(steps) != 1)[0] + 1
    first = np.unique(np.concatenate([[0], gaps, np.searchsorted(steps, year.begins)]))
    first = first[first < len(steps)]
    last = np.concatenate([first[1:] - 1, [len(steps) - 1]])
    on = year.day[steps[first]]
    start = year.minute[steps[first]] + sun.clock[on] - STEP_MIN / 2.0
    end = year.minute[steps[last]] + sun.clock[on] + STEP_MIN / 2.0
    return Sunshine(
        onto=onto,
        opening=beam.opening,
        is_covered=beam.is_covered,
        minutes=len(beam.steps) * sun.year.step_min,
        spells=_spells(on, start, end),
        days=tuple(on.tolist()),
        starts_min=tuple(start.round(1).tolist()),
        ends_min=tuple(end.round(1).tolist()),
    )


def _spells(day: IntArray, start: FloatArray, end: FloatArray) -> tuple[Spell, ...]:
    cuts = np.nonzero(np.diff(day) > GAP_DAYS)[0] + 1
    parts = np.split(np.arange(len(day)), cuts)
    found = [(int(day[p[0]]), int(day[p[-1]]), float(start[p].min()), float(end[p].max())) for p in parts]
    if len(found) > 1 and found[0][0] + DAYS - found[-1][1] <= GAP_DAYS:
        # The first and the last are one, over the turn of the year.
        (_, last, low, high), (first, _, other_low, other_high) = found[0], found.pop()
        found[0] = (first, last, min(low, other_low), max(high, other_high))
    return tuple(
        Spell(first_day=first, last_day=last, from_min=low, to_min=high) for first, last, low, high in found
    )
