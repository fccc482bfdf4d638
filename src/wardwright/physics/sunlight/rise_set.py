"""Sunrise and sunset, by looking for the zero: closed formulas are out by minutes near the equinox."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import NamedTuple

from wardwright.physics.sunlight.position import MINUTES_A_DAY, sun_angles, sun_place

HORIZON_RAD = math.radians(-0.8333)
"""Where the sun's middle is when its upper edge is seen to rise: half its disc and the refraction. [rad] (NOAA)"""
HAIR_MIN = 1e-4
"""How exactly the zero is found. [min]"""
TURNS = 50


class RiseSet(NamedTuple):
    """Sunrise, noon and sunset of one day, in minutes of universal time since its midnight; nan where none."""

    rise_min: float
    noon_min: float
    set_min: float


def rise_and_set(day: float, *, latitude: float, longitude: float, horizon: float = HORIZON_RAD) -> RiseSet:
    """Sunrise, noon and sunset about one noon.

    Parameters
    ----------
    day : float
        Midnight of universal time as days since 2000-01-01 12:00. [-]
    latitude : float
        North of the equator. [rad]
    longitude : float
        East of Greenwich. [rad]
    horizon : float, default HORIZON_RAD
        Elevation of the sun's middle, without refraction, that counts. [rad]

    Returns
    -------
    RiseSet
        About the noon that falls on that day by local mean time; nan where the sun stays up or down. [min]

    Notes
    -----
    The solar position algorithm's own routine interpolates between days and is out by up to 100 s near the equinox,
    when noon at the place and midnight at Greenwich are on different days; here the elevation itself is halved in.

    Examples
    --------
    Golden, Colorado, 20 September 2015: rises 05:46, sets 18:01, seven hours west of Greenwich.

    >>> found = rise_and_set(5740.5, latitude=math.radians(39.742476), longitude=math.radians(-105.1786))
    >>> [round((one / 60.0 - 7.0), 2) for one in found]
    [5.77, 11.9, 18.02]
    """

    def above(minutes: float) -> float:
        place = sun_place(day + minutes / MINUTES_A_DAY)
        angles = sun_angles(place, minutes, latitude=latitude, longitude=longitude)
        return float(angles.elevation) - horizon

    noon = 720.0 - 4.0 * math.degrees(longitude)
    for _ in range(3):
        noon = (
            720.0
            - 4.0 * math.degrees(longitude)
            - float(sun_place(day + noon / MINUTES_A_DAY).equation_of_time)
        )
    return RiseSet(_zero(above, noon, -720.0), noon, _zero(above, noon, 720.0))


def _zero(above: Callable[[float], float], noon: float, way: float) -> float:
    """Where a function that is positive at noon meets zero within half a day of it; nan where it does not."""
    inside, outside = noon, noon + way
    if above(inside) <= 0.0 or above(outside) >= 0.0:
        return math.nan
    for _ in range(TURNS):
        middle = (inside + outside) / 2.0
        if above(middle) > 0.0:
            inside = middle
        else:
            outside = middle
        if abs(outside - inside) < HAIR_MIN:
            break
    return (inside + outside) / 2.0
