"""How long a room rings."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray

SPEED_M_S = 343.0
"""Speed of sound in air at 20 deg C. [m/s]"""
RINGING_S_M = 24.0 * math.log(10.0) / SPEED_M_S
"""What volume over absorption is multiplied by for a fall of 60 dB: 0.161. [s/m] (derived here from the speed)"""


def sabine_time(volume: float, absorption_area: ArrayLike) -> FloatArray:
    """Time for a fall of 60 dB, where a room swallows little.

    Parameters
    ----------
    volume : float
        Of the room. [m3]
    absorption_area : array_like, shape (F,)
        Equivalent absorption area: each surface times its coefficient, summed. [m2]

    Returns
    -------
    ndarray, shape (F,)
        Reverberation time. [s]

    References
    ----------
    .. [1] W. C. Sabine, "Collected papers on acoustics", Harvard University Press, 1922.

    Examples
    --------
    >>> sabine_time(50.0, [8.5, 17.0]).round(3).tolist()
    [0.948, 0.474]
    """
    return np.asarray(RINGING_S_M * volume / np.asarray(absorption_area, dtype=np.float64))


def eyring_time(volume: float, *, surface: float, absorption: ArrayLike) -> FloatArray:
    """Time for a fall of 60 dB, also where a room swallows much.

    Parameters
    ----------
    volume : float
        Of the room. [m3]
    surface : float
        Total inner surface of the room. [m2]
    absorption : array_like, shape (F,)
        Mean absorption coefficient, in (0, 1). [-]

    Returns
    -------
    ndarray, shape (F,)
        Reverberation time. [s]

    References
    ----------
    .. [1] C. F. Eyring, "Reverberation time in 'dead' rooms", J. Acoust. Soc. Am., vol. 1, pp. 217-241, 1930.

    Examples
    --------
    >>> eyring_time(50.0, surface=85.0, absorption=[0.1, 0.2]).round(3).tolist()
    [0.9, 0.425]
    """
    mean = np.asarray(absorption, dtype=np.float64)
    return np.asarray(RINGING_S_M * volume / (-surface * np.log1p(-mean)))


def absorption_area(areas: ArrayLike, coefficients: ArrayLike) -> FloatArray:
    """Equivalent absorption area of the surfaces of a room.

    Parameters
    ----------
    areas : array_like, shape (N,)
        Each surface. [m2]
    coefficients : array_like, shape (N, F)
        Absorption coefficient of each, per octave band. [-]

    Returns
    -------
    ndarray, shape (F,)
        Their sum. [m2]

    Examples
    --------
    >>> absorption_area([10.0, 20.0], [[0.1], [0.3]]).tolist()
    [7.0]
    """
    return np.asarray(areas, dtype=np.float64) @ np.asarray(coefficients, dtype=np.float64)
