"""How much more a body radiates than the room behind it, in the band that a movement detector senses."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray
from wardwright.physics.constants import LIGHT_M_S

PLANCK_J_S = 6.62607015e-34
"""Planck's constant. [J s] (SI, exact)"""
BOLTZMANN_J_K = 1.380649e-23
"""Boltzmann's constant. [J/K] (SI, exact)"""
ZERO_C_K = 273.15
"""0 deg C. [K] (SI, exact)"""
WIEN_M_K = 2.897771955e-3
"""Wien's displacement constant. [m K] (CODATA 2018)"""
BAND_M = (8e-6, 14e-6)
"""The band of wavelengths that counts. [m] (published: UFGS-13720A)"""
SKIN_C = 34.0
"""Temperature of bare skin. [deg C] (assumption)"""
SKIN_SHARE = 0.65
"""How far a clothed person's surface is from the air's temperature toward the skin's. [-] (assumption)"""
REFERENCE_C = 20.0
"""Room temperature at which a sheet's least contrast is taken to be stated. [deg C] (assumption)"""
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(48)


def _radiance(temperature: ArrayLike, band: tuple[float, float] = BAND_M) -> FloatArray:
    """Radiance of a black surface within a band, in watts a square metre and steradian.

    M. Planck, "Zur Theorie des Gesetzes der Energieverteilung im Normalspectrum", 1900; summed by Gauss and Legendre.
    """
    kelvin = np.asarray(temperature, dtype=np.float64)[..., None]
    half = (band[1] - band[0]) / 2.0
    wavelength = (band[0] + band[1]) / 2.0 + half * _NODES
    exponent = PLANCK_J_S * LIGHT_M_S / (wavelength * BOLTZMANN_J_K * kelvin)
    spectral = 2.0 * PLANCK_J_S * LIGHT_M_S**2 / wavelength**5 / np.expm1(exponent)
    return np.asarray(half * (spectral * _WEIGHTS).sum(axis=-1), dtype=np.float64)


def band_share(temperature: float, band: tuple[float, float] = BAND_M) -> float:
    """The share of a black surface's whole output that falls within a band.

    Parameters
    ----------
    temperature : float
        Of the surface. [K]
    band : tuple of float, default BAND_M
        Shortest and longest wavelength. [m]

    Returns
    -------
    float
        Between 0 and 1. [-]
    """
    stefan = 2.0 * math.pi**5 * BOLTZMANN_J_K**4 / (15.0 * PLANCK_J_S**3 * LIGHT_M_S**2)
    return float(math.pi * _radiance(temperature, band) / (stefan * temperature**4))


def peak_wavelength(temperature: float) -> float:
    """Where a black surface radiates most.

    Parameters
    ----------
    temperature : float
        Of the surface. [K]

    Returns
    -------
    float
        Wavelength. [m]
    """
    return WIEN_M_K / temperature


def _body_contrast(air_c: float) -> float:
    """How much more a clothed person radiates in the band than a room; less than nothing in one warmer than skin."""
    body = air_c + SKIN_SHARE * (SKIN_C - air_c)
    return float(_radiance(body + ZERO_C_K) - _radiance(air_c + ZERO_C_K))


def relative_contrast(air_c: float) -> float:
    """A person's contrast in a room, against that in one at 20 deg C.

    Parameters
    ----------
    air_c : float
        The room's temperature. [deg C]

    Returns
    -------
    float
        Falls with warmth, 0 at the skin's own temperature. [-]

    Examples
    --------
    >>> [round(relative_contrast(air), 2) for air in (10.0, 30.0)]
    [1.61, 0.3]
    """
    return _body_contrast(air_c) / _body_contrast(REFERENCE_C)


@lru_cache(maxsize=1024)
def contrast_factor(air_c: float, least_contrast_k: float) -> float:
    """How many times the least contrast that a sheet asks for a person has in a room.

    Parameters
    ----------
    air_c : float
        The room's temperature. [deg C]
    least_contrast_k : float
        The least difference of temperature that the detector answers to, stated at 20 deg C. [K]

    Returns
    -------
    float
        Below 1: a person who fills a zone wholly is not sensed. A room warmer than skin counts by the size of the
        difference, since a change either way is an edge. [-]

    Examples
    --------
    >>> round(contrast_factor(30.0, 1.7), 2)
    1.68
    """
    reference = REFERENCE_C + ZERO_C_K
    least = float(_radiance(reference + least_contrast_k) - _radiance(reference))
    return abs(_body_contrast(air_c)) / least
