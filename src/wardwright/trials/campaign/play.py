"""Intrusions played all at once: who notices when, what the alarm makes of it, and what the intruder reaches."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray, IntArray
from wardwright.model.programme import Behaviour, Programme
from wardwright.trials.campaign.ground import Ground
from wardwright.trials.campaign.inputs import Inputs
from wardwright.trials.campaign.legs import REACHES, STEP_M
from wardwright.trials.zone_response import response_times


class Kit(NamedTuple):
    """The alarm as a campaign hears it: movement detectors first, then devices at openings."""

    behaviours: tuple[Behaviour, ...]
    sleeps: FloatArray
    """How long each movement detector stays quiet after a signal, shape (M,). [s]"""
    programme: Programme
    sounds: bool
    """Whether there is a sounder."""
    sounds_alone: bool
    """Whether one sounds by itself when the control unit is broken."""
    groups: IntArray
    """Which devices are one notice, for a second, independent one; -1: it confirms nothing. [-]"""


class Played(NamedTuple):
    """What came of N intrusions; infinite where a thing never happens. [s]"""

    signals: FloatArray
    """Device -> when it signals, shape (D, N)."""
    reached: FloatArray
    """Goal -> when it is reached, shape (G, N)."""
    broken: FloatArray
    """When the control unit is."""
    left: FloatArray
    """When the intruder leaves."""
    first_goal: IntArray
    """The goal that is gone for first. [-]"""


class Heard(NamedTuple):
    """What the alarm made of it. [s]"""

    notice: FloatArray
    sounder: FloatArray
    message: FloatArray
    second: FloatArray
    """A second, independent detector signals so long after the first."""


def play(ground: Ground, kit: Kit, inputs: Inputs) -> Played:
    """Walk all intruders from goal to goal.

    Parameters
    ----------
    ground : Ground
        The house.
    kit : Kit
        What may notice.
    inputs : Inputs
        How N intruders differ.

    Returns
    -------
    Played
        Times from the opening being open. [s]
    """
    count, goals = inputs.order.shape
    walk = _Walk(ground, kit, inputs)
    reached, broken = np.full((goals, count), np.inf), np.full(count, np.inf)
    for turn in range(goals):
        goal = inputs.order[:, turn]
        rows = walk.to(goal)
        reached[goal[rows], rows] = walk.clock[rows]
        if ground.unit is not None:
            at_unit = rows[goal[rows] == ground.unit]
            walk.clock[at_unit] += inputs.breaking[at_unit]
            broken[at_unit] = walk.clock[at_unit]
            rows = rows[goal[rows] != ground.unit]
        walk.clock[rows] += inputs.search[rows]
    left = np.minimum(inputs.stay, walk.clock)
    reached[reached > left] = np.inf
    broken[broken > left] = np.inf
    walk.signals[walk.signals > left] = np.inf
    first = inputs.order[:, 0] if goals else np.zeros(count, dtype=np.int64)
    return Played(walk.signals, reached, broken, left, first)


class _Walk:
    """Where all intruders are, and who has signalled."""

    def __init__(self, ground: Ground, kit: Kit, inputs: Inputs) -> None:
        self._ground, self._kit, self._inputs = ground, kit, inputs
        self._scene = inputs.doors_otherwise.astype(np.int64)
        self._pace = inputs.is_cautious.astype(np.int64)
        self._room = _nearest(ground.rooms_c, inputs.room_c)
        self._reach = [_nearest(REACHES, one) for one in inputs.reach]
        self._from = ground.starts[inputs.way]
        self.clock = np.where(ground.climbs[inputs.way], inputs.climb, 0.0)
        self.signals = np.full((len(inputs.reach) + len(inputs.tells), len(inputs.way)), np.inf)
        for number, tells in enumerate(inputs.tells):
            self.signals[len(inputs.reach) + number, ground.at_once[number, inputs.way] & tells] = 0.0

    def to(self, goal: IntArray) -> IntArray:
        """Walk each intruder to a goal; the numbers of those who get there."""
        ground, inputs, goals = self._ground, self._inputs, self._ground.goals
        leg = self._from * goals + goal
        end = ground.last[self._scene, leg]
        first = ground.first[self._scene, leg]
        for number in range(len(inputs.reach)):
            place = self._noticed(number, leg)
            rows = np.flatnonzero(np.isfinite(place) & (end >= 0))
            at = first[rows] + np.ceil(place[rows] / STEP_M - 1e-9).astype(np.int64)
            is_walked = at <= end[rows]
            rows = rows[is_walked]
            when = self._passed(rows, at[is_walked])
            is_awake = when >= self._kit.sleeps[number] - inputs.since[rows]
            self._signal(number, rows[is_awake], when[is_awake])
        for number, tells in enumerate(inputs.tells):
            opened = ground.opened[self._scene, number, leg]
            rows = np.flatnonzero((opened >= 0) & (end >= 0) & tells)
            self._signal(len(inputs.reach) + number, rows, self._passed(rows, opened[rows]))
        rows = np.flatnonzero(end >= 0)
        self.clock[rows] = self._passed(rows, end[rows])
        sources = ground.first.shape[1] // goals
        self._from = np.where(end >= 0, sources - goals + goal, self._from)
        return rows

    def _noticed(self, number: int, leg: IntArray) -> FloatArray:
        """Walked on a leg before a movement detector notices. [m]"""
        ground, inputs = self._ground, self._inputs
        place = ground.noticed[self._scene, self._pace, self._room, number, leg, self._reach[number]]
        entered = ground.entered[self._scene, number, leg]
        with np.errstate(invalid="ignore"):
            place = entered + (place - entered) * inputs.walked[number]
        if inputs.is_surely.any():
            place = np.where(inputs.is_surely, ground.surely[self._scene, number, leg], place)
        return np.where(np.isnan(place), np.inf, place)

    def _passed(self, rows: IntArray, place: IntArray) -> FloatArray:
        """When some intruders pass a place of the leg that they are on. [s]"""
        ground, inputs = self._ground, self._inputs
        walked = ground.flat[place] + ground.stairs[place] / inputs.stairs[rows]
        return self.clock[rows] + walked / inputs.pace[rows] + ground.doors[place] * inputs.door[rows]

    def _signal(self, number: int, rows: IntArray, when: FloatArray) -> None:
        self.signals[number, rows] = np.minimum(self.signals[number, rows], when)


def _nearest(levels: Sequence[float], values: FloatArray) -> IntArray:
    """Which of some rising levels each value is nearest to."""
    known = np.asarray(levels, dtype=np.float64)
    return np.searchsorted((known[1:] + known[:-1]) / 2.0, values)


def heard(played: Played, kit: Kit, inputs: Inputs, *, window: float = np.inf) -> Heard:
    """What the alarm makes of the signals.

    Parameters
    ----------
    played : Played
        The intrusions.
    kit : Kit
        The alarm; devices that are lost have no signals.
    inputs : Inputs
        For the times of radio, sounder and message.
    window : float, default infinite
        Within which a second, independent detection counts. [s]

    Returns
    -------
    Heard
        Times; a broken control unit starts nothing.
    """
    count = len(played.broken)
    alarming = [i for i, one in enumerate(kit.behaviours) if one.alarms]
    never = np.full(count, np.inf)
    if not alarming:
        return Heard(never, never, never, never)
    signals = played.signals[alarming]
    alarm, due = response_times(signals + inputs.radio, [kit.behaviours[i] for i in alarming], kit.programme)
    is_late = alarm > played.broken
    sounder = alarm + inputs.sounder
    sounder[is_late] = played.broken[is_late] if kit.sounds_alone else np.inf
    message = due + inputs.message
    message[message > played.broken] = np.inf
    first = signals.argmin(axis=0)
    notice = signals[first, np.arange(count)]
    after = _second(signals, kit.groups[alarming])
    after[after > window] = np.inf
    return Heard(notice, sounder if kit.sounds else never, message, after)


def _second(signals: FloatArray, groups: IntArray) -> FloatArray:
    """From the first signal of a device that counts to the first of another group, infinite where none comes. [s]"""
    counting = np.flatnonzero(groups >= 0)
    if not len(counting):
        return np.full(signals.shape[1], np.inf)
    told, own = signals[counting], groups[counting]
    first = told.argmin(axis=0)
    others = np.where(own[:, None] == own[first][None, :], np.inf, told).min(axis=0)
    with np.errstate(invalid="ignore"):
        return np.where(np.isfinite(others), others - told.min(axis=0), np.inf)
