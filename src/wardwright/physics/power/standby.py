"""Stand-by batteries: how large, for how long, and whether the charger fills them in time."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray

AGEING = 1.25
"""What a battery is made larger by, so that an old one still lasts. [-]"""
HEAVY = 1.75
"""What the alarm's charge is reckoned with where its current is heavy for the battery. [-]"""
TWENTY_HOURS = 20.0
"""A battery's rated capacity is for this long a discharge. [h]"""
CHARGED = 0.8
"""Share of the capacity that a charger is to give back in the time allowed. [-]"""


def battery_least(
    quiet: ArrayLike,
    quiet_time: ArrayLike,
    *,
    alarm: ArrayLike,
    alarm_time: ArrayLike,
    ageing: float = AGEING,
) -> FloatArray:
    """The least battery for a stand-by time and an alarm at its end.

    Parameters
    ----------
    quiet : array_like, shape (...)
        Current without an alarm. [A]
    quiet_time : array_like, shape (...)
        Stand-by time asked for. [h]
    alarm : array_like, shape (...)
        Current during an alarm. [A]
    alarm_time : array_like, shape (...)
        How long the alarm is to sound at the end. [h]
    ageing : float, default 1.25
        What it is made larger by. [-]

    Returns
    -------
    ndarray, shape (...)
        Rated capacity. [Ah]

    Notes
    -----
    The alarm's charge counts 1.75 times where its current is above a twentieth of the capacity so found: such a
    battery gives less than it is rated for [1]_.

    References
    ----------
    .. [1] BS 5839-1:2025, Fire detection and fire alarm systems for buildings: code of practice for non-domestic
       premises, Annex E, as restated; the code itself was not read.

    Examples
    --------
    >>> round(float(battery_least(0.25, 24.0, alarm=0.75, alarm_time=0.5)), 2)
    8.32
    """
    slow = np.asarray(quiet, dtype=np.float64) * np.asarray(quiet_time)
    fast = np.asarray(alarm, dtype=np.float64) * np.asarray(alarm_time)
    light = ageing * (slow + fast)
    is_heavy = light / TWENTY_HOURS < np.asarray(alarm)
    found: FloatArray = np.where(is_heavy, ageing * (slow + HEAVY * fast), light)
    return found


def battery_least_simple(
    quiet: ArrayLike, quiet_time: ArrayLike, *, alarm: ArrayLike, ageing: float = AGEING
) -> FloatArray:
    """The least battery by the older short form, which counts one hour of alarm.

    Parameters
    ----------
    quiet : array_like, shape (...)
        Current without an alarm. [A]
    quiet_time : array_like, shape (...)
        Stand-by time asked for. [h]
    alarm : array_like, shape (...)
        Current during an alarm. [A]
    ageing : float, default 1.25
        What it is made larger by. [-]

    Returns
    -------
    ndarray, shape (...)
        Rated capacity. [Ah]

    Examples
    --------
    >>> round(float(battery_least_simple(0.05, 24.0, alarm=0.3)), 3)
    1.875
    """
    found: FloatArray = ageing * (np.asarray(quiet, dtype=np.float64) * np.asarray(quiet_time) + alarm)
    return found


def standby_time(
    capacity: ArrayLike,
    quiet: ArrayLike,
    *,
    alarm: ArrayLike,
    alarm_time: ArrayLike,
    ageing: ArrayLike = AGEING,
) -> FloatArray:
    """How long a battery carries on without mains and can still sound an alarm at the end: the form turned round.

    Parameters
    ----------
    capacity : array_like, shape (...)
        Rated. [Ah]
    quiet : array_like, shape (...)
        Current without an alarm. [A]
    alarm : array_like, shape (...)
        Current during an alarm. [A]
    alarm_time : array_like, shape (...)
        How long the alarm is to sound at the end. [h]
    ageing : array_like, default 1.25
        1.25 for a battery at the end of its life, 1 for a new one. [-]

    Returns
    -------
    ndarray, shape (...)
        0 where the alarm alone takes all. [h]

    Examples
    --------
    >>> round(float(standby_time(8.3203125, 0.25, alarm=0.75, alarm_time=0.5)), 3)
    24.0
    """
    held = np.asarray(capacity, dtype=np.float64)
    current = np.asarray(alarm, dtype=np.float64)
    factor = np.where(held / TWENTY_HOURS < current, HEAVY, 1.0)
    left = held / np.asarray(ageing) - factor * current * np.asarray(alarm_time)
    with np.errstate(divide="ignore"):
        found: FloatArray = np.maximum(left, 0.0) / np.asarray(quiet, dtype=np.float64)
    return found


def charge_current_least(capacity: ArrayLike, time: ArrayLike) -> FloatArray:
    """The least current of a charger that gives a battery back most of its charge in time.

    Parameters
    ----------
    capacity : array_like, shape (...)
        Rated. [Ah]
    time : array_like, shape (...)
        Allowed for it. [h]

    Returns
    -------
    ndarray, shape (...)
        For 80 % of the capacity. [A]

    References
    ----------
    .. [1] EN 50131-6, Intrusion and hold-up systems: power supplies: 80 % of the capacity within the time allowed, as
       quoted; the standard itself was not read.

    Examples
    --------
    >>> round(float(charge_current_least(7.2, 72.0)), 3)
    0.08
    """
    found: FloatArray = CHARGED * np.asarray(capacity, dtype=np.float64) / np.asarray(time)
    return found


def charging_time(capacity: ArrayLike, current: ArrayLike) -> FloatArray:
    """How long a charger takes to give a battery back most of its charge.

    Parameters
    ----------
    capacity : array_like, shape (...)
        Rated. [Ah]
    current : array_like, shape (...)
        Of the charger. [A]

    Returns
    -------
    ndarray, shape (...)
        For 80 % of the capacity. [h]

    Examples
    --------
    >>> round(float(charging_time(7.2, 0.08)), 3)
    72.0
    """
    with np.errstate(divide="ignore"):
        found: FloatArray = CHARGED * np.asarray(capacity, dtype=np.float64) / np.asarray(current)
    return found
