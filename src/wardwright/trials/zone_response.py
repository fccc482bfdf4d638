"""What the control unit does with the signals of its zones: a small state machine.

The machine (`respond`) takes signals one by one, as a control unit does. `response_times` is the same thing in
closed form for many rows at once, `response_once` for one row in plain numbers; a test holds them against each other.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from enum import Enum
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.programme import Behaviour, Programme


class State(Enum):
    """Where the control unit stands."""

    SET = "set"
    ENTRY = "entry time running"
    ALARM = "alarm"


class Signal(NamedTuple):
    """One zone's signal as it reaches the control unit."""

    time_s: float
    behaviour: Behaviour
    subject: str = ""
    """Id of the device."""


class Happening(NamedTuple):
    """One line of the timeline."""

    time_s: float
    what: str
    """`entry time starts`, `alarm`, `allowed`, `logged`, `entry time ends`."""
    subject: str


class Response(NamedTuple):
    """What follows from the signals; infinite where it never happens."""

    entry_s: float
    """When the entry time starts. [s]"""
    alarm_s: float
    """When the alarm starts. [s]"""
    message_due_s: float
    """When a message may begin to leave, any abort delay being over. [s]"""
    timeline: tuple[Happening, ...]


def respond(signals: Sequence[Signal], programme: Programme) -> Response:
    """Play signals into a set control unit; nobody unsets it.

    Parameters
    ----------
    signals : sequence of Signal
        In any order.
    programme : Programme
        Entry time and abort delay.

    Returns
    -------
    Response
        Times and the timeline.

    Examples
    --------
    A forced front door with 30 s entry time, the detector behind it being entry route:

    >>> from wardwright.model.programme import STANDARD_BEHAVIOURS as known
    >>> instant, door, route = known[0], known[1], known[2]
    >>> times = Programme(entry_time_s=30.0, abort_delay_s=10.0)
    >>> answer = respond([Signal(0.0, door), Signal(1.6, route)], times)
    >>> answer.alarm_s, answer.message_due_s
    (30.0, 40.0)
    """
    state = State.SET
    entry = alarm = due = expiry = float("inf")
    by_entry: Signal | None = None
    lines: list[Happening] = []
    for signal in sorted(signals, key=lambda one: (one.time_s, one.subject)):
        if state is State.ENTRY and by_entry is not None and signal.time_s >= expiry:
            state, alarm = State.ALARM, expiry
            due = min(due, expiry + _wait(by_entry.behaviour, programme))
            lines.append(Happening(expiry, "entry time ends", by_entry.subject))
        behaviour = signal.behaviour
        if not behaviour.alarms:
            lines.append(Happening(signal.time_s, "logged", signal.subject))
        elif state is State.SET and behaviour.starts_entry:
            state, entry, by_entry = State.ENTRY, signal.time_s, signal
            expiry = entry + programme.entry_time_s
            lines.append(Happening(entry, "entry time starts", signal.subject))
        elif state is State.ENTRY and (behaviour.allowed_after_entry or behaviour.starts_entry):
            lines.append(Happening(signal.time_s, "allowed", signal.subject))
        else:
            if state is not State.ALARM:
                state, alarm = State.ALARM, signal.time_s
            due = min(due, signal.time_s + _wait(behaviour, programme))
            lines.append(Happening(signal.time_s, "alarm", signal.subject))
    if by_entry is not None:
        # Without anybody to unset it, the entry time ends even after another zone has given the alarm.
        due = min(due, expiry + _wait(by_entry.behaviour, programme))
        if state is State.ENTRY:
            alarm = expiry
            lines.append(Happening(expiry, "entry time ends", by_entry.subject))
    return Response(entry, alarm, due, tuple(lines))


def _wait(behaviour: Behaviour, programme: Programme) -> float:
    return programme.abort_delay_s if behaviour.delays_message else 0.0


def response_times(
    times: FloatArray, behaviours: Sequence[Behaviour], programme: Programme
) -> tuple[FloatArray, FloatArray]:
    """Alarm and message-due times for many rows of signals at once.

    Parameters
    ----------
    times : ndarray, shape (Z, N)
        When each of Z signals reaches the control unit in each of N rows; infinite where it never does. [s]
    behaviours : sequence of Behaviour, length Z
        How each zone behaves.
    programme : Programme
        Entry time and abort delay.

    Returns
    -------
    alarm, due : ndarray, shape (N,)
        As in `Response`. [s]
    """
    alarming = [i for i, b in enumerate(behaviours) if b.alarms]
    starting = [i for i in alarming if behaviours[i].starts_entry]
    # Zones of the way in are alarms too while no entry time runs.
    held_back = [i for i in alarming if _may_be_held(behaviours[i])] if starting else []
    at_once = [i for i in alarming if i not in held_back]
    waits = np.array([_wait(one, programme) for one in behaviours])
    first, due = _least(times, at_once), _least(times, at_once, waits)
    if not starting:
        return first, due
    starts = times[starting]
    entry = starts.min(axis=0)
    for i in held_back:
        if not behaviours[i].starts_entry:
            first = np.minimum(first, np.where(times[i] >= entry, np.inf, times[i]))
    # An entry that begins after the alarm starts no timer: its signal is one more alarm.
    ends = np.where(entry < first, entry + programme.entry_time_s, entry)
    alarm = np.minimum(first, ends)
    for i in held_back:
        held = (times[i] >= entry) & (times[i] < alarm)
        due = np.minimum(due, np.where(held, np.inf, times[i]) + waits[i])
    return alarm, np.minimum(due, ends + waits[starting][starts.argmin(axis=0)])


def response_once(
    times: Sequence[float], behaviours: Sequence[Behaviour], programme: Programme
) -> tuple[float, float]:
    """Alarm and message-due time of one row of signals: `response_times` without an array, for the likely case alone.

    Parameters
    ----------
    times : sequence of float, length Z
        When each signal reaches the control unit. [s]
    behaviours : sequence of Behaviour, length Z
        How each zone behaves.
    programme : Programme
        Entry time and abort delay.

    Returns
    -------
    alarm, due : float
        As in `Response`. [s]
    """
    signals = [pair for pair in zip(times, behaviours, strict=True) if pair[1].alarms]
    entry, entry_wait = math.inf, 0.0
    for at, one in signals:
        if one.starts_entry and at < entry:
            entry, entry_wait = at, _wait(one, programme)
    first = math.inf
    for at, one in signals:
        if not (one.starts_entry or (one.allowed_after_entry and at >= entry)):
            first = min(first, at)
    ends = entry + programme.entry_time_s if entry < first else entry
    alarm = min(first, ends)
    due = ends + entry_wait
    for at, one in signals:
        if not (entry <= at < alarm and _may_be_held(one)):
            due = min(due, at + _wait(one, programme))
    return alarm, due


def _may_be_held(behaviour: Behaviour) -> bool:
    """Whether a signal says nothing once an entry time runs."""
    return behaviour.allowed_after_entry or behaviour.starts_entry


def _least(times: FloatArray, chosen: Sequence[int], waits: FloatArray | None = None) -> FloatArray:
    """The least of some signals in each row, each after its wait; infinite where there is none. [s]"""
    if not chosen:
        return np.full(times.shape[1], np.inf)
    some = times[chosen] if waits is None else times[chosen] + waits[chosen][:, None]
    least: FloatArray = some.min(axis=0)
    return least
