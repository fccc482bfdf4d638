"""Where the sun stands: the short formula after Meeus that NOAA publishes, on whole arrays of times."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray

DAYS_A_CENTURY = 36525.0
MINUTES_A_DAY = 1440.0
STANDARD_PRESSURE_HPA = 1013.25
USUAL_AIR_C = 12.0
"""Air over a year, for refraction only. [deg C] (assumption)"""
HALF_SUN_RAD = math.radians(0.27)
"""Half of the sun's disc. [rad] (0.2622 to 0.2712 deg over a year)"""
LOWEST_REFRACTED_RAD = math.radians(-1.0)
"""Below this nothing is refracted: the sun is down anyway. [rad]"""


class SunPlace(NamedTuple):
    """What of the sun does not depend on where one stands."""

    declination: FloatArray
    """North of the equator. [rad]"""
    equation_of_time: FloatArray
    """Sundial less mean time. [min]"""


def sun_place(days: ArrayLike) -> SunPlace:
    """Declination and equation of time.

    Parameters
    ----------
    days : array_like
        Days of universal time since 2000-01-01 12:00; a year is 365.25 of them. The formula is meant for 1901 to
        2099, and leaves out the minute and more between universal and ephemeris time. [-]

    Returns
    -------
    SunPlace
        Arrays of the same shape.

    References
    ----------
    .. [1] J. Meeus, "Astronomical Algorithms", 2nd edition, 1998, chapters 25 and 28, as restated by the solar
       calculator of the US National Oceanic and Atmospheric Administration.

    Examples
    --------
    The winter solstice of 2026, 21 December 20:50:

    >>> round(float(np.degrees(sun_place(9851.3681).declination)), 2)
    -23.44
    """
    t = np.asarray(days, dtype=np.float64) / DAYS_A_CENTURY
    mean_longitude = np.radians((280.46646 + t * (36000.76983 + 0.0003032 * t)) % 360.0)
    anomaly = np.radians(357.52911 + t * (35999.05029 - 0.0001537 * t))
    eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t)
    centre = (
        (1.914602 - t * (0.004817 + 0.000014 * t)) * np.sin(anomaly)
        + (0.019993 - 0.000101 * t) * np.sin(2.0 * anomaly)
        + 0.000289 * np.sin(3.0 * anomaly)
    )
    node = np.radians(125.04 - 1934.136 * t)
    longitude = mean_longitude + np.radians(centre - 0.00569 - 0.00478 * np.sin(node))
    obliquity = np.radians(
        23.0
        + (26.0 + (21.448 - t * (46.815 + t * (0.00059 - t * 0.001813))) / 60.0) / 60.0
        + 0.00256 * np.cos(node)
    )
    y = np.tan(obliquity / 2.0) ** 2
    turn = (
        y * np.sin(2.0 * mean_longitude)
        - 2.0 * eccentricity * np.sin(anomaly)
        + 4.0 * eccentricity * y * np.sin(anomaly) * np.cos(2.0 * mean_longitude)
        - 0.5 * y**2 * np.sin(4.0 * mean_longitude)
        - 1.25 * eccentricity**2 * np.sin(2.0 * anomaly)
    )
    return SunPlace(np.arcsin(np.sin(obliquity) * np.sin(longitude)), 4.0 * np.degrees(turn))


class SunAngles(NamedTuple):
    """Where the sun stands as seen from a place."""

    elevation: FloatArray
    """Of its middle above the horizon, without refraction. [rad]"""
    azimuth: FloatArray
    """From true north, clockwise, 0 to 2 pi. [rad]"""


def sun_angles(place: SunPlace, minutes: ArrayLike, *, latitude: float, longitude: float) -> SunAngles:
    """Elevation and azimuth of the sun.

    Parameters
    ----------
    place : SunPlace
        From `sun_place`, for the same times.
    minutes : array_like
        Minutes of universal time since midnight. [min]
    latitude : float
        North of the equator. [rad]
    longitude : float
        East of Greenwich. [rad]

    Returns
    -------
    SunAngles
        Arrays of the shape of both together.
    """
    sundial = np.asarray(minutes, dtype=np.float64) + place.equation_of_time + 4.0 * math.degrees(longitude)
    hour = np.radians(sundial / 4.0 - 180.0)
    sin_dec, cos_dec = np.sin(place.declination), np.cos(place.declination)
    south = cos_dec * np.cos(hour)
    up = math.sin(latitude) * sin_dec + math.cos(latitude) * south
    north = math.cos(latitude) * sin_dec - math.sin(latitude) * south
    east = -cos_dec * np.sin(hour)
    azimuth = np.arctan2(east, north) % (2.0 * math.pi)
    return SunAngles(np.arcsin(np.clip(up, -1.0, 1.0)), azimuth)


def refraction(
    elevation: ArrayLike, *, pressure_hpa: float = STANDARD_PRESSURE_HPA, air_c: float = USUAL_AIR_C
) -> FloatArray:
    """How much the air lifts the sun.

    Parameters
    ----------
    elevation : array_like
        Without refraction. [rad]
    pressure_hpa : float, default STANDARD_PRESSURE_HPA
        Of the air, in hundreds of pascals. [-]
    air_c : float, default USUAL_AIR_C
        Temperature of the air. [deg C]

    Returns
    -------
    ndarray
        To be added to the elevation; 0 below -1 degree. [rad]

    References
    ----------
    .. [1] G. G. Bennett's formula turned round, as in J. Meeus, "Astronomical Algorithms", 2nd edition, 1998,
       chapter 16; used with pressure and temperature by I. Reda and A. Andreas, "Solar position algorithm for solar
       radiation applications", Solar Energy, vol. 76, no. 5, pp. 577-589, 2004.

    Examples
    --------
    At the horizon about half a degree:

    >>> round(float(np.degrees(refraction(0.0))), 2)
    0.48
    """
    degrees = np.degrees(np.asarray(elevation, dtype=np.float64))
    safe = np.maximum(degrees, math.degrees(LOWEST_REFRACTED_RAD))
    lifted = 1.02 / (60.0 * np.tan(np.radians(safe + 10.3 / (safe + 5.11))))
    lifted = lifted * (pressure_hpa / 1010.0) * (283.0 / (273.0 + air_c))
    return np.where(degrees < math.degrees(LOWEST_REFRACTED_RAD), 0.0, np.radians(lifted))
