"""Local mean time turned into the time that clocks show, summer time included."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from functools import lru_cache
from zoneinfo import ZoneInfo

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.physics.sunlight.year import DAYS, YEAR


@lru_cache(maxsize=64)
def clock_shift(zone: str | None, longitude_deg: float) -> FloatArray:
    """What is to be added to local mean time on each day of the year.

    Parameters
    ----------
    zone : str or None
        Name in the time zone database; None where it is not known: nothing is added.
    longitude_deg : float
        East of Greenwich. [deg]

    Returns
    -------
    ndarray, shape (365,)
        As at noon: clocks change at night. Not to be written to. [min]

    Examples
    --------
    >>> shift = clock_shift("Europe/London", -3.0)
    >>> float(shift[0]), float(shift[180])
    (12.0, 72.0)
    """
    shift = np.zeros(DAYS)
    if zone is not None:
        info = ZoneInfo(zone)
        noon = datetime(YEAR, 1, 1, 12, tzinfo=UTC) - timedelta(minutes=4.0 * longitude_deg)
        for day in range(DAYS):
            ahead = (noon + timedelta(days=day)).astimezone(info).utcoffset() or timedelta()
            shift[day] = ahead / timedelta(minutes=1) - 4.0 * longitude_deg
    shift.flags.writeable = False
    return shift
