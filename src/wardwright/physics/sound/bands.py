"""Octave bands, and the weighting of the ear."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray

BANDS_HZ: tuple[float, ...] = (125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0)
"""Nominal middles of the octave bands that building elements are measured in. [Hz] (ISO 266)"""
# Corner frequencies of the A-weighting. [Hz] (IEC 61672-1, annex E, rounded as it prints them)
_F1, _F2, _F3, _F4 = 20.598997, 107.65265, 737.86223, 12194.217
_HALF_OCTAVE = 10.0**0.15


def exact_middles(nominal: ArrayLike = BANDS_HZ) -> FloatArray:
    """The exact middles of octave bands.

    Parameters
    ----------
    nominal : array_like, shape (...), default BANDS_HZ
        Their nominal middles, as printed. [Hz]

    Returns
    -------
    ndarray, shape (...)
        1000 Hz times whole powers of ten to 0.3. [Hz]

    References
    ----------
    .. [1] IEC 61260-1:2014, octave-band and fractional-octave-band filters.

    Examples
    --------
    >>> exact_middles([63.0, 125.0, 4000.0]).round(2).tolist()
    [63.1, 125.89, 3981.07]
    """
    steps = np.round(np.log10(np.asarray(nominal, dtype=np.float64) / 1000.0) / 0.3)
    return np.asarray(1000.0 * 10.0 ** (0.3 * steps), dtype=np.float64)


def a_weighting(frequency: ArrayLike) -> FloatArray:
    """How much less the ear makes of a tone than of 1 kHz.

    Parameters
    ----------
    frequency : array_like, shape (...)
        Of the tone. [Hz]

    Returns
    -------
    ndarray, shape (...)
        Added to a level; 0 at 1 kHz. [dB]

    References
    ----------
    .. [1] IEC 61672-1:2013, electroacoustics, sound level meters, annex E.

    Examples
    --------
    >>> a_weighting(exact_middles([125.0, 1000.0, 4000.0])).round(1).tolist()
    [-16.1, 0.0, 1.0]
    """
    return 20.0 * (np.log10(_response(frequency)) - np.log10(_response(1000.0)))


def _response(frequency: ArrayLike) -> FloatArray:
    f2 = np.asarray(frequency, dtype=np.float64) ** 2
    two_poles = np.sqrt((f2 + _F2**2) * (f2 + _F3**2))
    return np.asarray(_F4**2 * f2**2 / ((f2 + _F1**2) * two_poles * (f2 + _F4**2)), dtype=np.float64)


def level_sum(levels: ArrayLike) -> FloatArray:
    """Levels of several bands or sources as one, by their energy.

    Parameters
    ----------
    levels : array_like, shape (..., F)
        Levels; -inf where there is no sound. [dB]

    Returns
    -------
    ndarray, shape (...)
        Their sum; -inf where none sounds. [dB]

    Examples
    --------
    >>> level_sum([70.0, 70.0]).round(2).tolist()
    73.01
    """
    energy = (10.0 ** (np.asarray(levels, dtype=np.float64) / 10.0)).sum(axis=-1)
    with np.errstate(divide="ignore"):
        return np.asarray(10.0 * np.log10(energy), dtype=np.float64)


def band_of(frequency: float) -> int:
    """Which octave band a tone falls in.

    Parameters
    ----------
    frequency : float
        Of the tone. [Hz]

    Returns
    -------
    int
        Its place in ``BANDS_HZ``; the nearest where it lies beyond them. [-]

    Examples
    --------
    >>> [BANDS_HZ[band_of(tone)] for tone in (520.0, 3100.0, 9000.0)]
    [500.0, 4000.0, 4000.0]
    """
    edges = exact_middles()[1:] / _HALF_OCTAVE
    return int(np.searchsorted(edges, frequency))
