"""Adversary path analysis of a site: the least-detected path of each way in, and its interruption estimate.

The estimate counts the first detection alone, as published. Where that only starts an entry time, the zones that an
entry time does not hold are tried by themselves too, and the better of both is told.
"""

from __future__ import annotations

import math
from functools import lru_cache, partial
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.programme import Behaviour, Programme
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.trials.alarm import Alarm, Heard, alarm_of
from wardwright.trials.draws import Z_95
from wardwright.trials.interruption import (
    AT_START,
    IN_THE_MIDDLE,
    Response,
    Tasks,
    interruption,
    last_timely,
    timely_detection,
)
from wardwright.trials.least_detected import Stretch, least_detected, path_lines
from wardwright.trials.path_lines import Lines
from wardwright.trials.timely import Need
from wardwright.trials.watchers import at_the_way_in
from wardwright.trials.ways_in import WayIn


class PathTask(NamedTuple):
    """One task of a path."""

    name: str
    """The room or flight, or what is done."""
    detection: float
    """Chance to be noticed in it. [-]"""
    delay_s: float
    spread_s: float


class PathEstimate(NamedTuple):
    """The least-detected path from one way in to one goal."""

    way: WayIn
    need: Need
    tasks: tuple[PathTask, ...]
    detected: float
    """Chance to be noticed on it at all. [-]"""
    interrupted: float
    """The interruption estimate: chance that the alarm does what is needed before the path's end. [-]"""
    timely: float
    """Chance to be noticed up to the critical detection point. [-]"""
    last_timely: str | None
    """The critical detection point, a task's name; None: from the first on it is too late."""
    lines: Lines
    """Where the path leads, storey by storey."""


def path_estimate(
    site: Site, catalogue: Catalogue, *, way: WayIn, goal: Spot, need: Need, part: str = "full"
) -> PathEstimate:
    """Find the least-detected path from a way in to a goal, and estimate how often it is interrupted.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets and figures.
    way : WayIn
        Where the intruder comes in.
    goal : Spot
        Where the intruder wants to be.
    need : str
        `message`: it must have left before the goal, the control unit, is broken; `sounder`: it must sound before the
        goal is reached.
    part : str, default "full"
        What is set.

    Returns
    -------
    PathEstimate
        The path as tasks, and its chances.

    Raises
    ------
    NotComputable
        If no way on foot leads there.
    """
    alarm = alarm_of(site, catalogue, part)
    return _estimate(site.bare, catalogue, alarm, way=way, goal=goal, need=need)


@lru_cache(maxsize=512)
def _estimate(
    house: Site, catalogue: Catalogue, alarm: Alarm, *, way: WayIn, goal: Spot, need: Need
) -> PathEstimate:
    every = tuple(pair for pair in alarm.heard if pair[1].alarms)
    # Once an entry time runs, the zones of the way in say nothing.
    running = tuple(p for p in every if not (p[1].starts_entry or p[1].allowed_after_entry))
    layers = [every] if running == every else [every, running]
    found = [
        _on_layer(house, catalogue, alarm, heard=layer, way=way, goal=goal, need=need) for layer in layers
    ]
    return max(found, key=lambda one: one.interrupted)


def _on_layer(
    house: Site, catalogue: Catalogue, alarm: Alarm, *, heard: Heard, way: WayIn, goal: Spot, need: Need
) -> PathEstimate:
    devices = tuple(device for device, _ in heard)
    stretches = least_detected(house, catalogue, devices, start=way_in_spot(house, way.opening), goal=goal)
    if stretches is None:
        raise NotComputable(f"no way on foot from {way.opening.name} to the place asked for")
    behaviours = {device.id: behaviour for device, behaviour in heard}
    needed = partial(_needed, catalogue, alarm.programme, need=need)
    at_once = at_the_way_in(house, catalogue, devices, way=way)
    missed = (1.0 - catalogue.figure("chance-contact-tells").value) ** len(at_once)
    climb = _spread_of(catalogue.figure("climb-in")) if way.climbs else (0.0, 0.0)
    tasks = [PathTask(f"in by {way.opening.name}", 1.0 - missed, *climb)]
    answers = [min((needed(behaviours[one.id]) for one in at_once), default=needed(None))]
    for one in stretches:
        tasks.append(PathTask(one.name, one.detection, *_walked(catalogue, one)))
        answers.append(needed(None if one.mostly_by is None else behaviours[one.mostly_by.id]))
    left = [AT_START, *(IN_THE_MIDDLE for _ in stretches)]
    if need == "message":
        at_last = _spread_of(catalogue.figure("break-control-unit"))
        tasks.append(PathTask("breaking the control unit", 0.0, *at_last))
        left.append(AT_START)
        answers.append(needed(None))
    _, detection, delay, spread = zip(*tasks, strict=True)
    path = Tasks(detection, delay, spread, left)
    response = Response(*np.array(answers).T)
    last = last_timely(path, response)
    return PathEstimate(
        way,
        need,
        tuple(tasks),
        float(1.0 - np.prod(1.0 - np.array(detection))),
        float(interruption(path, response)),
        timely_detection(path, response),
        None if last is None else tasks[last].name,
        path_lines(house, catalogue, devices, start=way_in_spot(house, way.opening), goal=goal),
    )


def _spread_of(figure: Figure) -> tuple[float, float]:
    """Likely value and standard deviation. [the figure's unit]"""
    return figure.value, (figure.high - figure.low) / (2.0 * Z_95)


def _walked(catalogue: Catalogue, one: Stretch) -> tuple[float, float]:
    """Mean and standard deviation of the time on a stretch: any door on it is taken to stand open. [s]"""
    pace, spread = _spread_of(catalogue.figure("pace-hurried"))
    mean = (one.flat_m + one.stairs_m / catalogue.figure("stairs-share").value) / pace
    return mean, mean * spread / pace


def _needed(
    catalogue: Catalogue, programme: Programme, behaviour: Behaviour | None, *, need: Need
) -> tuple[float, float]:
    """Mean and standard deviation of what is still needed once a zone has been told. [s]"""
    radio = _spread_of(catalogue.figure("radio-delay"))
    last = _spread_of(catalogue.figure("message-time" if need == "message" else "sounder-start"))
    wait = 0.0
    if behaviour is not None:
        wait += programme.entry_time_s if behaviour.starts_entry else 0.0
        wait += programme.abort_delay_s if need == "message" and behaviour.delays_message else 0.0
    return radio[0] + last[0] + wait, math.hypot(radio[1], last[1])
