"""The sun over a whole year at one place: every step at which it is up."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray, IntArray
from wardwright.physics.sunlight.position import (
    HALF_SUN_RAD,
    MINUTES_A_DAY,
    SunPlace,
    refraction,
    sun_angles,
    sun_place,
)

YEAR = 2026
"""The year that dates are told for: in others the sun is as high within a day, the clocks change within a week."""
DAYS = 365
FIRST_MIDNIGHT = 9496.5
"""1 January 2026, 00:00 universal time, in days since 2000-01-01 12:00. [-]"""
STEP_MIN = 2.0
"""Between steps. [min]"""


class Year(NamedTuple):
    """The steps at which the sun is up, in the order of time."""

    day: IntArray
    """Which day, from 0, shape (S,), as all. [-]"""
    minute: FloatArray
    """Local mean time since its midnight. [min]"""
    elevation: FloatArray
    """As seen, with refraction. [rad]"""
    azimuth: FloatArray
    """From true north, clockwise. [rad]"""
    step_min: float
    """What each step stands for in minutes of a whole year. [min]"""
    begins: IntArray
    """The first step of each stretch with the sun up, a new one at midnight at the latest, shape (B,). [-]"""


def sun_year(latitude: float, longitude: float, *, step: float = STEP_MIN, every_days: int = 1) -> Year:
    """All steps of the year at which the sun's middle is above a level horizon.

    Parameters
    ----------
    latitude : float
        North of the equator. [rad]
    longitude : float
        East of Greenwich: days begin at midnight of local mean time. [rad]
    step : float, default STEP_MIN
        Between steps; a whole number of them is a day. [min]
    every_days : int, default 1
        One day in so many is looked at.

    Returns
    -------
    Year
        S steps.

    Examples
    --------
    A little over half of the year, since the air lifts the sun:

    >>> year = sun_year(math.radians(51.5), 0.0)
    >>> round(len(year.day) / (365 * 720), 3)
    0.509
    """
    days = np.arange(0, DAYS, every_days)
    ahead = 4.0 * math.degrees(longitude)
    # The sun's own way in an hour is straight enough: a thousandth of a degree at most.
    hours = np.arange(0.0, MINUTES_A_DAY + 1.0, 60.0)
    at_hours = sun_place(
        FIRST_MIDNIGHT + days[:, None] + (hours - ahead) / MINUTES_A_DAY,
    )
    minutes = np.arange(0.0, MINUTES_A_DAY, step)
    place = SunPlace(*(_between_hours(one, minutes) for one in at_hours))
    angles = sun_angles(place, minutes - ahead, latitude=latitude, longitude=longitude)
    seen = angles.elevation + refraction(angles.elevation)
    row, column = np.nonzero(seen > 0.0)
    return Year(
        days[row],
        minutes[column],
        seen[row, column],
        angles.azimuth[row, column],
        step * every_days,
        np.nonzero((np.diff(row, prepend=-1) != 0) | (np.diff(column, prepend=-1) != 1))[0],
    )


def _between_hours(values: FloatArray, minutes: FloatArray) -> FloatArray:
    """Values at the hours of each day, shape (D, 25), at any minutes, shape (D, M)."""
    hour = (minutes // 60.0).astype(np.intp)
    share = minutes / 60.0 - hour
    found: FloatArray = values[:, hour] * (1.0 - share) + values[:, hour + 1] * share
    return found


class Facing(NamedTuple):
    """The steps at which the sun is before a wall, in the order of the turn from its normal."""

    steps: IntArray
    """Which steps of the year, numbered on for each further normal, shape (F,), as all."""
    turn: FloatArray
    """From the normal to the sun on the plan, anticlockwise seen from above. [rad]"""
    turn_slack: FloatArray
    """What half the sun's disc comes to in that angle. [rad]"""
    profile: FloatArray
    """How steeply the sun stands in a cut straight through the wall. [rad]"""
    lowest: FloatArray
    """The profile angle of the disc's lower edge. [rad]"""
    highest: FloatArray
    """The profile angle of the disc's upper edge. [rad]"""
    widest: float
    """The largest slack of a turn. [rad]"""
    bins: IntArray
    """Which bin of turn and profile holds each step, to look areas of light up by. [-]"""


BIN_RAD = math.radians(0.25)
"""Side of a bin: half a step's way of the sun. [rad]"""
TURN_BINS = round(math.pi / BIN_RAD)
PROFILE_BINS = round(math.pi / 2.0 / BIN_RAD) + 1


def bin_of(turn: ArrayLike, profile: ArrayLike) -> tuple[IntArray, IntArray]:
    """Rows and columns of the bins that hold some directions, clipped to the half sky before a wall.

    Parameters
    ----------
    turn : array_like
        From the wall's normal. [rad]
    profile : array_like
        In a cut straight through the wall. [rad]

    Returns
    -------
    tuple of ndarray
        Row by turn, column by profile. [-]
    """
    row = np.floor((np.asarray(turn) + math.pi / 2.0) / BIN_RAD).astype(np.int64)
    column = np.floor(np.asarray(profile) / BIN_RAD).astype(np.int64)
    return np.clip(row, 0, TURN_BINS - 1), np.clip(column, 0, PROFILE_BINS - 1)


GRAZING_RAD = math.radians(89.0)
"""A sun that far round from a wall's normal comes in by no pane. [rad] (assumption)"""


def facing(year: Year, normal: ArrayLike, *, spread: float = HALF_SUN_RAD) -> Facing:
    """Put the year in order before a wall.

    Parameters
    ----------
    year : Year
        From `sun_year`.
    normal : array_like
        Azimuth of the wall's outward normal, from true north, clockwise; where several are given the steps of each
        are numbered on from those of the one before. [rad]
    spread : float, default HALF_SUN_RAD
        Half of the sun's disc: a beam lasts as long as any part of it shines; 0 for its middle alone. [rad]

    Returns
    -------
    Facing
        F steps, the rightmost sun first.

    Notes
    -----
    From a point at distance d before a pane's plane and a metres to the side of its middle, the pane is a rectangle
    in the tangents of turn and profile angle: turn between atan((-w/2 - a)/d) and atan((w/2 - a)/d), profile between
    atan((sill - z)/d) and atan((head - z)/d). So a pane is one stretch of the order, cut by one more comparison.
    Derived here.
    """
    normals = np.atleast_1d(np.asarray(normal, dtype=np.float64))
    turn = ((normals[:, None] - year.azimuth + math.pi) % (2.0 * math.pi) - math.pi).ravel()
    before = np.nonzero(np.abs(turn) < GRAZING_RAD)[0]
    order = before[np.argsort(turn[before])]
    turned, high = turn[order], year.elevation[order % len(year.elevation)]
    level, across = np.cos(high), np.cos(turned)
    profile = np.arctan2(np.sin(high), level * across)
    row, column = bin_of(turned, profile)
    turn_slack = spread / np.maximum(level, 0.05)
    profile_slack = spread / np.sqrt(np.sin(high) ** 2 + (level * across) ** 2)
    return Facing(
        order,
        turned,
        turn_slack,
        profile,
        profile - profile_slack,
        profile + profile_slack,
        float(turn_slack.max(initial=0.0)),
        row * PROFILE_BINS + column,
    )
