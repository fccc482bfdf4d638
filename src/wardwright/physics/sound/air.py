"""What air itself swallows."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray

TRIPLE_POINT_K = 273.16
"""Of water, as the standard writes it. [K]"""
REFERENCE_K = 293.15
"""Reference temperature of the standard. [K]"""
ZERO_C_K = 273.15
"""0 deg C. [K] (SI, exact)"""


def air_absorption(frequency: ArrayLike, *, celsius: float = 20.0, humidity: float = 50.0) -> FloatArray:
    """How much a tone loses in still air at the pressure of the sea.

    Two hundredths of a decibel a metre at most at the tones of sounders: of account outside only.

    Parameters
    ----------
    frequency : array_like, shape (...)
        Of the tone. [Hz]
    celsius : float, default 20.0
        Temperature of the air; stated for -20 to 50. [deg C]
    humidity : float, default 50.0
        Relative humidity; stated for 10 to 100. [%]

    Returns
    -------
    ndarray, shape (...)
        Loss a metre. [dB/m]

    References
    ----------
    .. [1] ISO 9613-1:1993, acoustics, attenuation of sound during propagation outdoors, part 1: calculation of the
       absorption of sound by the atmosphere, equations (3) to (5) and annex B, at 101.325 kPa.

    Examples
    --------
    >>> (1000.0 * air_absorption([1000.0, 3162.28], celsius=20.0, humidity=50.0)).round(2).tolist()
    [4.66, 19.84]
    """
    f2 = np.asarray(frequency, dtype=np.float64) ** 2
    kelvin = celsius + ZERO_C_K
    warmth = kelvin / REFERENCE_K
    # Molar concentration of water vapour, in per cent.
    h = humidity * 10.0 ** (-6.8346 * (TRIPLE_POINT_K / kelvin) ** 1.261 + 4.6151)
    oxygen = 24.0 + 4.04e4 * h * (0.02 + h) / (0.391 + h)
    nitrogen = warmth**-0.5 * (9.0 + 280.0 * h * np.exp(-4.170 * (warmth ** (-1.0 / 3.0) - 1.0)))
    classical = 1.84e-11 * warmth**0.5
    relaxing = warmth**-2.5 * (
        0.01275 * np.exp(-2239.1 / kelvin) / (oxygen + f2 / oxygen)
        + 0.1068 * np.exp(-3352.0 / kelvin) / (nitrogen + f2 / nitrogen)
    )
    return np.asarray(8.686 * f2 * (classical + relaxing), dtype=np.float64)
