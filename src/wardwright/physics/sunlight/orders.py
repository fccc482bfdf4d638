"""The year at a place and its order before a wall, each remembered by just what it hangs on."""

from __future__ import annotations

import math
from functools import lru_cache

from wardwright.physics.sunlight.year import STEP_MIN, Facing, Year, facing, sun_year

THIN_STEP_MIN, THIN_DAYS = 6.0, 5
"""Steps and days of the thinned year that ranges are taken from. [min], [-]"""


@lru_cache(maxsize=8)
def year_at(latitude_deg: float, longitude_deg: float, *, is_thin: bool) -> Year:
    """The year at a place.

    Parameters
    ----------
    latitude_deg : float
        North of the equator. [deg]
    longitude_deg : float
        East of Greenwich. [deg]
    is_thin : bool
        Whether the thinned year will do.

    Returns
    -------
    Year
        All of its steps, or those of the thinned one.
    """
    step, days = (THIN_STEP_MIN, THIN_DAYS) if is_thin else (STEP_MIN, 1)
    return sun_year(math.radians(latitude_deg), math.radians(longitude_deg), step=step, every_days=days)


def order_at(
    place: tuple[float, float], azimuths_deg: tuple[float, ...], *, spread: float, is_thin: bool
) -> Facing:
    """The year at a place before a wall that may face several ways.

    Parameters
    ----------
    place : tuple of float
        Latitude and longitude. [deg]
    azimuths_deg : tuple of float
        Of the wall's outward normal, from true north, clockwise: one for each north that is tried. [deg]
    spread : float
        Half of the sun's disc; 0 for its middle alone. [rad]
    is_thin : bool
        Of the thinned year.

    Returns
    -------
    Facing
        As `facing` gives it.
    """
    return (_thin_order if is_thin else _full_order)(place, azimuths_deg, spread)


@lru_cache(maxsize=12)
def _full_order(place: tuple[float, float], azimuths_deg: tuple[float, ...], spread: float) -> Facing:
    return facing(year_at(*place, is_thin=False), [math.radians(one) for one in azimuths_deg], spread=spread)


@lru_cache(maxsize=16)
def _thin_order(place: tuple[float, float], azimuths_deg: tuple[float, ...], spread: float) -> Facing:
    return facing(year_at(*place, is_thin=True), [math.radians(one) for one in azimuths_deg], spread=spread)
