"""One way to one goal under all rows of a race's uncertain inputs: when each point of it is passed.

It hangs on which movement detectors may notice on the way, not on where: a race is run on it again and again while
one of them is moved, and what the others tell is remembered.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray, IntArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.trials.draws import Cases, Input, cases_of
from wardwright.trials.watchers import REACH_SHARES, Noticed
from wardwright.trials.ways_on_foot import OnFoot, on_foot

PACE = "pace"
ON_STAIRS = "pace on stairs"
DOORS = "inside doors"
CLIMB = "climbing in"
BREAK = "break"
RADIO = "radio"
SOUNDER = "sounder"
MESSAGE = "message"

Named = tuple[str, str]
"""Id and name of a movement detector."""


@dataclass(frozen=True, eq=False)
class Course:
    """A way and its rows; one object for one course, so that what is told on it is remembered by the object."""

    foot: OnFoot
    cases: Cases
    climbs: bool
    """Whether the clock starts with climbing in."""
    reached: FloatArray
    """When the goal is, in every row. [s]"""
    broken: FloatArray
    """When the control unit there is. [s]"""


@dataclass(frozen=True, eq=False)
class Told:
    """What one device tells on a course; not to be written to."""

    index: int
    """The point of the way where it notices in the likely case."""
    signal: FloatArray
    """When it does in every row, infinite where never. [s]"""


@lru_cache(maxsize=512)
def course_of(
    house: Site,
    catalogue: Catalogue,
    goal: Spot,
    *,
    start: Spot,
    climbs: bool,
    hears: bool,
    movement: tuple[Named, ...],
) -> Course:
    """Lay out the rows of a way.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Figures.
    goal, start : Spot
        The way's ends.
    climbs : bool
        Whether the intruder climbs in first.
    hears : bool
        Whether any device notices.
    movement : tuple of Named
        The movement detectors that may.

    Returns
    -------
    Course
        One object for equal arguments.

    Raises
    ------
    NotComputable
        If no way on foot leads to the goal.
    """
    foot = on_foot(house, catalogue, start=start, goal=goal)
    if foot is None:
        raise NotComputable("no way on foot leads there")
    cases = cases_of(_inputs(catalogue, climbs=climbs, hears=hears, movement=movement))
    reached = _clock(foot, cases, len(foot.progress.plan) - 1, climbs=climbs)
    return Course(foot, cases, climbs, reached, reached + cases.rows[BREAK])


def _inputs(
    catalogue: Catalogue, *, climbs: bool, hears: bool, movement: tuple[Named, ...]
) -> tuple[Input, ...]:
    named = [
        (PACE, "intruder's pace", "pace-hurried"),
        (ON_STAIRS, "pace on stairs", "stairs-share"),
        (DOORS, "opening inside doors", "pass-door"),
        (BREAK, "breaking the control unit", "break-control-unit"),
        (SOUNDER, "sounder's start", "sounder-start"),
        (MESSAGE, "message leaving", "message-time"),
    ]
    if climbs:
        named.append((CLIMB, "climbing in", "climb-in"))
    if hears:
        named.append((RADIO, "radio to the control unit", "radio-delay"))
    for device_id, name in movement:
        named.append((f"reach {device_id}", f"reach of {name}", "detector-reach"))
        named.append((f"walked {device_id}", f"walked before {name}", "walked-to-notice"))
    return tuple(Input(key, name, catalogue.figure(figure), "default") for key, name, figure in named)


def _clock(foot: OnFoot, cases: Cases, index: IntArray | int, *, climbs: bool) -> FloatArray:
    """When a point of the way, one in each row or one in all, is passed."""
    rows, progress = cases.rows, foot.progress
    pace = rows[PACE]
    start = rows[CLIMB] if climbs else 0.0
    return (
        start
        + progress.flat[index] / pace
        + progress.stairs[index] / (pace * rows[ON_STAIRS])
        + progress.doors[index] * rows[DOORS]
    )


@lru_cache(maxsize=2048)
def told_by_contact(course: Course, at_index: int) -> Told:
    """What a contact tells that is opened at a point of the way; -1: at the way in itself."""
    if at_index == -1:
        return Told(0, np.zeros(course.cases.total))
    return Told(at_index, _clock(course.foot, course.cases, at_index, climbs=course.climbs))


@lru_cache(maxsize=2048)
def told_by_movement(course: Course, device_id: str, noticing: Noticed) -> Told:
    """What a movement detector tells that notices so on the way."""
    walked = course.foot.progress.plan
    noticed = np.array(noticing.noticed_m)[_nearest_reach(course.cases, device_id)]
    entered = min(noticing.entered_m, *noticing.noticed_m)
    share = course.cases.rows[f"walked {device_id}"]
    if math.isfinite(max(noticing.noticed_m)):
        place = entered + (noticed - entered) * share
    else:
        known = np.isfinite(noticed)
        place = np.where(known, entered + np.where(known, noticed - entered, 0.0) * share, np.inf)
    # Beyond the end of the route it is never walked; at its very end it still counts.
    missed = place > walked[-1] + 1e-9
    index = np.minimum(np.searchsorted(walked, place), len(walked) - 1)
    for leaf in course.foot.shut:
        # Whoever is noticed on this side of it, is so by a detector on this side.
        index = np.where(noticed > walked[leaf.come_to], leaf.seen_at(index), index)
    signal = _clock(course.foot, course.cases, index, climbs=course.climbs)
    signal[missed] = np.inf
    return Told(int(index[0]), signal)


@lru_cache(maxsize=1024)
def _nearest_reach(cases: Cases, device_id: str) -> IntArray:
    """Which of `REACH_SHARES` each row is nearest to: the same wherever the way leads."""
    reach = cases.rows[f"reach {device_id}"]
    nearest: IntArray = np.abs(reach[:, np.newaxis] - np.asarray(REACH_SHARES)).argmin(axis=1)
    return nearest
