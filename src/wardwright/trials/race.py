"""The race from one way in to one goal: first notice, sounder, message, against reach and break."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.programme import Behaviour, Programme
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Route, Spot, way_in_spot
from wardwright.trials.alarm import Alarm, alarm_of, without_abort_delay
from wardwright.trials.course import (
    MESSAGE,
    RADIO,
    SOUNDER,
    Course,
    Told,
    course_of,
    told_by_contact,
    told_by_movement,
)
from wardwright.trials.draws import Cases
from wardwright.trials.watchers import Noticed, notices_on, watchers_on
from wardwright.trials.ways_in import WayIn, once_in
from wardwright.trials.ways_on_foot import on_foot
from wardwright.trials.zone_response import response_once, response_times

Likely = tuple[tuple[float, Behaviour], ...]
"""When signals reach the control unit in the likely case [s], and how their zones behave."""


class Race(NamedTuple):
    """Times of one race in every row of `cases`; infinite where a thing never happens; not to be written to. [s]

    One object for one race, so that what is summed up of it is remembered by the object.
    """

    way: WayIn
    course: Course
    """The way on foot under all rows; races that differ in what is heard share it."""
    route: Route
    cases: Cases
    first_notice: FloatArray
    first_watcher: str | None
    """Id of the device that notices first in the likely case."""
    first_index: int | None
    """The point of the route where it does."""
    sounder: FloatArray | None
    """None: there is no sounder."""
    message: FloatArray
    message_due: float
    """When the message may begin to leave, in the likely case. [s]"""
    reached: FloatArray
    broken: FloatArray
    likely: Likely
    programme: Programme

    def __eq__(self, other: object) -> bool:
        """Whether it is the very same."""
        return self is other

    def __hash__(self) -> int:
        """The object's own, not that of its times."""
        return id(self)

    @property
    def message_waits(self) -> bool:
        """Whether the abort delay counts in the likely case."""
        if self.programme.abort_delay_s <= 0 or not self.likely:
            return False
        times, behaviours = zip(*self.likely, strict=True)
        _, at_once = response_once(times, behaviours, without_abort_delay(self.programme))
        return self.message_due > at_once


def race(site: Site, catalogue: Catalogue, *, way: WayIn, goal: Spot, part: str = "full") -> Race:
    """Run one race over all rows of its uncertain inputs.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets and figures.
    way : WayIn
        Where the intruder comes in; the clock starts when it is open or the glass is out.
    goal : Spot
        Where the intruder goes, by the fastest way.
    part : str, default "full"
        What is set.

    Returns
    -------
    Race
        All times. [s]

    Raises
    ------
    NotComputable
        If no way on foot leads from the way in to the goal.
    """
    return race_against(site.bare, catalogue, alarm_of(site, catalogue, part), way=way, goal=goal)


def race_against(house: Site, catalogue: Catalogue, alarm: Alarm, *, way: WayIn, goal: Spot) -> Race:
    """Run one race against any alarm in a bare house; all else as in `race`."""
    watchers = watchers_on(house, catalogue, alarm.heard, way=way, goal=goal)
    movement = [one.device for one in watchers if one.noticing is not None]
    course = _course(house, catalogue, way, goal=goal, hears=bool(watchers), movement=movement)
    # Manners that differ in nothing that is heard are one race.
    heard = tuple((one.device.id, one.behaviour, one.noticing, one.at_index) for one in watchers)
    return _in_manner(_run(course, heard, once_in(way), programme=alarm.programme, sounds=alarm.sounds), way)


@lru_cache(maxsize=1024)
def _in_manner(one: Race, way: WayIn) -> Race:
    return one._replace(way=way)


def first_notice(
    house: Site, catalogue: Catalogue, devices: Sequence[Device], *, way: WayIn, goal: Spot
) -> FloatArray:
    """When any of some detectors first notices, as `race_against` has it where their zones give an alarm.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets and figures.
    devices : sequence of Device
        The detectors, in the order of ids.
    way : WayIn
        Where the intruder comes in.
    goal : Spot
        Where the intruder goes.

    Returns
    -------
    ndarray, shape (rows,)
        In every row of the race, infinite where nothing does; shared, not to be written to. [s]

    Raises
    ------
    NotComputable
        If no way on foot leads from the way in to the goal.
    """
    each = [(one, notices_on(house, catalogue, one, way=way, goal=goal)) for one in devices]
    noticing = [(one, notices) for one, notices in each if notices is not None]
    movement = [one for one, (noticed, _) in noticing if noticed is not None]
    course = _course(house, catalogue, way, goal=goal, hears=bool(noticing), movement=movement)
    return _first_notice(course, tuple((one.id, *notices) for one, notices in noticing))


def _course(
    house: Site, catalogue: Catalogue, way: WayIn, *, goal: Spot, hears: bool, movement: Sequence[Device]
) -> Course:
    start = way_in_spot(house, way.opening)
    if on_foot(house, catalogue, start=start, goal=goal) is None:
        raise NotComputable(f"no way on foot from {way.opening.name} to the place asked for")
    named = tuple((one.id, one.name) for one in movement)
    return course_of(
        house, catalogue, goal, start=start, climbs=way.climbs, hears=hears, movement=named
    )  # fmt: skip


_Hearing = tuple[str, Behaviour, Noticed | None, int | None]
# A device's id, how its zone behaves, and where it notices, as a `Watcher` has it.


def _told(course: Course, device: str, notices: tuple[Noticed | None, int | None]) -> Told:
    noticing, at_index = notices
    if noticing is None:
        return told_by_contact(course, at_index or 0)
    return told_by_movement(course, device, noticing)


@lru_cache(maxsize=1024)
def _first_notice(course: Course, watchers: tuple[tuple[str, Noticed | None, int | None], ...]) -> FloatArray:
    first: FloatArray = np.full(course.cases.total, np.inf)
    for one in watchers:
        first = np.minimum(first, _told(course, one[0], one[1:]).signal)
    return first


@lru_cache(maxsize=1024)
def _run(
    course: Course, watchers: tuple[_Hearing, ...], way: WayIn, *, programme: Programme, sounds: bool
) -> Race:
    cases = course.cases
    counted = [one for one in watchers if one[1].alarms]
    told = [_told(course, one[0], one[2:]) for one in counted]
    never = np.full(cases.total, np.inf)
    heard = _Heard(never, never, never, None, likely=())
    if told:
        behaviours = tuple(behaviour for _, behaviour, _, _ in counted)
        signals = np.stack([one.signal for one in told])
        heard = _heard(signals, behaviours, programme, delay=cases.rows[RADIO])
    first = heard.first
    return Race(
        way=way,
        course=course,
        route=course.foot.route,
        cases=cases,
        first_notice=heard.notice,
        first_watcher=None if first is None else counted[first][0],
        first_index=None if first is None else told[first].index,
        sounder=heard.alarm + cases.rows[SOUNDER] if sounds else None,
        message=heard.due + cases.rows[MESSAGE],
        message_due=float(heard.due[0]),
        reached=course.reached,
        broken=course.broken,
        likely=heard.likely,
        programme=programme,
    )


class _Heard(NamedTuple):
    notice: FloatArray
    alarm: FloatArray
    due: FloatArray
    first: int | None
    likely: Likely


def _heard(
    signals: FloatArray, behaviours: tuple[Behaviour, ...], programme: Programme, *, delay: FloatArray
) -> _Heard:
    """What the control unit makes of the signals that reach it."""
    likely = signals[:, 0].tolist()
    first = likely.index(min(likely)) if math.isfinite(min(likely)) else None
    alarm, due = response_times(signals + delay, behaviours, programme)
    come = zip((signals[:, 0] + delay[0]).tolist(), behaviours, strict=True)
    return _Heard(signals.min(axis=0), alarm, due, first, tuple(come))
