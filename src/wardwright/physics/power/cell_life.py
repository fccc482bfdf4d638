"""How long a cell lasts that a device draws a small current from, with a pulse for each message."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray

HOURS_A_YEAR = 8760.0
"""Hours in a year of 365 days. [h]"""
SECONDS_A_DAY = 86_400.0
"""Seconds in a day. [s]"""


def average_current(
    standby: ArrayLike, *, pulse: ArrayLike, pulse_time: ArrayLike, pulses: ArrayLike
) -> FloatArray:
    """Current that a device draws on average.

    Parameters
    ----------
    standby : array_like, shape (...)
        What it draws all the time. [A]
    pulse : array_like, shape (..., k)
        What it draws while it does something, one value for each kind of thing. [A]
    pulse_time : array_like, shape (..., k)
        How long each lasts. [s]
    pulses : array_like, shape (..., k)
        How often each comes in a day. [d-1]

    Returns
    -------
    ndarray, shape (...)
        Averaged over the day. [A]

    Examples
    --------
    >>> round(1e6 * float(average_current(8e-6, pulse=[25e-3], pulse_time=[0.05], pulses=[300.0])), 2)
    12.34
    """
    charge = np.asarray(pulse) * np.asarray(pulse_time) * np.asarray(pulses)
    found: FloatArray = np.asarray(standby, dtype=np.float64) + charge.sum(axis=-1) / SECONDS_A_DAY
    return found


def cell_life(
    capacity: ArrayLike,
    current: ArrayLike,
    *,
    loss: ArrayLike,
    usable: ArrayLike = 0.85,
    warmth: ArrayLike = 1.0,
) -> FloatArray:
    """How long a cell lasts; a cell that nothing is drawn from still loses its own share.

    Not cut at the cell's shelf life: see `within_shelf_life`.

    Parameters
    ----------
    capacity : array_like, shape (...)
        Rated. [Ah]
    current : array_like, shape (...)
        Drawn on average. [A]
    loss : array_like, shape (...)
        Share of the capacity that the cell loses by itself in a year. [a-1]
    usable : array_like, default 0.85
        Share of the capacity that can be used before the voltage is too low. [-]
    warmth : array_like, default 1.0
        Share that is left at the temperature it works at. [-]

    Returns
    -------
    ndarray, shape (...)
        Infinite where nothing is drawn and nothing lost. [a]

    Notes
    -----
    Derived here: what is usable, shared out to what is drawn and what is lost in each year.

    Examples
    --------
    >>> round(float(cell_life(1.5, 12.34e-6, loss=0.01)), 2)
    10.36
    """
    held = np.asarray(capacity, dtype=np.float64)
    spent = np.asarray(current) * HOURS_A_YEAR + held * np.asarray(loss)
    with np.errstate(divide="ignore"):
        found: FloatArray = held * np.asarray(usable) * np.asarray(warmth) / spent
    return found


def within_shelf_life(life: ArrayLike, shelf_life: float) -> FloatArray:
    """A life, cut at what the cell's maker answers for.

    Parameters
    ----------
    life : array_like, shape (...)
        As worked out. [a]
    shelf_life : float
        How long the cell keeps unused. [a]

    Returns
    -------
    ndarray, shape (...)
        At most the shelf life. [a]
    """
    found: FloatArray = np.minimum(np.asarray(life, dtype=np.float64), shelf_life)
    return found


def share_left(temperature: ArrayLike, points: ArrayLike) -> FloatArray:
    """Share of a cell's capacity that can be used at a temperature.

    Parameters
    ----------
    temperature : array_like, shape (...)
        Of the cell. [deg C]
    points : array_like, shape (n, 2)
        Temperatures [deg C], rising, and the share at each [-].

    Returns
    -------
    ndarray, shape (...)
        Straight between the points, level beyond them. [-]

    Examples
    --------
    >>> share_left([30.0, 10.0], [(-20.0, 0.6), (0.0, 0.9), (20.0, 1.0)]).tolist()
    [1.0, 0.95]
    """
    table = np.asarray(points, dtype=np.float64)
    found: FloatArray = np.interp(np.asarray(temperature, dtype=np.float64), table[:, 0], table[:, 1])
    return found
