"""The likely case of a race alone: a small part of the work, to choose between many races before one is run whole."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.trials.alarm import Alarm
from wardwright.trials.watchers import REACH_SHARES, Noticed, notices_on
from wardwright.trials.ways_in import WayIn
from wardwright.trials.ways_on_foot import OnFoot, on_foot
from wardwright.trials.zone_response import response_once


class LikelyRace(NamedTuple):
    """The first row of a `Race`: infinite where a thing never happens. [s]"""

    sounder: float | None
    """None: there is no sounder."""
    message: float
    reached: float
    broken: float


class _Figures(NamedTuple):
    """The likely values of what a race draws."""

    pace: float
    stairs_share: float
    pass_door: float
    climb_in: float
    break_control_unit: float
    radio_delay: float
    sounder_start: float
    message_time: float
    detector_reach: float
    walked_to_notice: float


@lru_cache(maxsize=16)
def _figures(catalogue: Catalogue) -> _Figures:
    names = ("pace-hurried", *(name.replace("_", "-") for name in _Figures._fields[1:]))
    return _Figures(*(catalogue.figure(name).value for name in names))


def likely_race(house: Site, catalogue: Catalogue, alarm: Alarm, *, way: WayIn, goal: Spot) -> LikelyRace:
    """Run the likely case of one race.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets and figures.
    alarm : Alarm
        What hears, and how.
    way : WayIn
        Where the intruder comes in; the clock starts when it is open or the glass is out.
    goal : Spot
        Where the intruder goes, by the fastest way.

    Returns
    -------
    LikelyRace
        The times of the first row of the race that `race_against` runs. [s]

    Raises
    ------
    NotComputable
        If no way on foot leads from the way in to the goal.
    """
    reached = _reached(house, catalogue, way, goal=goal)
    if reached is None:
        raise NotComputable(f"no way on foot from {way.opening.name} to the place asked for")
    figures = _figures(catalogue)
    times, behaviours = [], []
    for device, behaviour in alarm.heard:
        at = _signal(house, catalogue, device, way=way, goal=goal)
        if at is not None and behaviour.alarms:
            times.append(at)
            behaviours.append(behaviour)
    alarm_s, due_s = response_once(times, behaviours, alarm.programme)
    return LikelyRace(
        alarm_s + figures.sounder_start if alarm.sounds else None,
        due_s + figures.message_time,
        reached,
        reached + figures.break_control_unit,
    )


@lru_cache(maxsize=512)
def _reached(house: Site, catalogue: Catalogue, way: WayIn, *, goal: Spot) -> float | None:
    foot = on_foot(house, catalogue, start=way_in_spot(house, way.opening), goal=goal)
    return (
        None
        if foot is None
        else _clock(foot, len(foot.progress.plan) - 1, _figures(catalogue), climbs=way.climbs)
    )


@lru_cache(maxsize=4096)
def _signal(house: Site, catalogue: Catalogue, device: Device, *, way: WayIn, goal: Spot) -> float | None:
    """When a device's signal is at the control unit; None: never. Each is asked for again with every mend tried."""
    foot = on_foot(house, catalogue, start=way_in_spot(house, way.opening), goal=goal)
    notices = notices_on(house, catalogue, device, way=way, goal=goal)
    if foot is None or notices is None:
        return None
    figures = _figures(catalogue)
    noticing, index = notices
    if noticing is not None:
        index = _index(noticing, foot, figures)
    if index is None:
        return None
    return (0.0 if index == -1 else _clock(foot, index, figures, climbs=way.climbs)) + figures.radio_delay


def _clock(foot: OnFoot, index: int, figures: _Figures, *, climbs: bool) -> float:
    """When a point of the way is passed."""
    progress, pace = foot.progress, figures.pace
    return (
        (figures.climb_in if climbs else 0.0)
        + float(progress.flat[index]) / pace
        + float(progress.stairs[index]) / (pace * figures.stairs_share)
        + float(progress.doors[index]) * figures.pass_door
    )


def _index(noticing: Noticed, foot: OnFoot, figures: _Figures) -> int | None:
    """The point of the way where a movement detector notices; None: never."""
    plan = foot.progress.plan
    place = _noticed_place(noticing, figures)
    # Beyond the end of the route it is never walked; at its very end it still counts.
    if place > plan[-1] + 1e-9:
        return None
    index = min(int(np.searchsorted(plan, place)), len(plan) - 1)
    for leaf in foot.shut:
        # Whoever is noticed on this side of it, is so by a detector on this side.
        is_beyond = noticing.noticed_m[_nearest(figures)] > plan[leaf.come_to]
        index = leaf.opened if is_beyond and leaf.near <= index <= leaf.come_to else index
    return index


def _nearest(figures: _Figures) -> int:
    """Which of `REACH_SHARES` is nearest to the likely reach."""
    return min(range(len(REACH_SHARES)), key=lambda i: abs(figures.detector_reach - REACH_SHARES[i]))


def _noticed_place(noticing: Noticed, figures: _Figures) -> float:
    noticed = noticing.noticed_m[_nearest(figures)]
    entered = min(noticing.entered_m, *noticing.noticed_m)
    return entered + (noticed - entered) * figures.walked_to_notice if math.isfinite(noticed) else math.inf
