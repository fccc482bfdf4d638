"""What a wall of several parts lets through, and the level in the room behind it."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray


def composite_loss(losses: ArrayLike, areas: ArrayLike) -> FloatArray:
    """Loss of a wall made of several parts.

    Parameters
    ----------
    losses : array_like, shape (N,) or (N, F)
        Transmission loss of each part; 0 where it stands open. [dB]
    areas : array_like, shape (N,)
        Of each part. [m2]

    Returns
    -------
    ndarray, shape () or (F,)
        Loss of the whole. [dB]

    References
    ----------
    .. [1] M. J. Crocker and J. P. Arenas, "Engineering acoustics", Wiley, 2021, chapter 12.

    Examples
    --------
    A wall with a door in it:

    >>> composite_loss([59.0, 35.0], [9.5, 1.08]).round(2).tolist()
    44.76
    """
    area = np.asarray(areas, dtype=np.float64)
    through = area @ 10.0 ** (-np.asarray(losses, dtype=np.float64) / 10.0)
    return np.asarray(10.0 * np.log10(area.sum() / through), dtype=np.float64)


def level_through(
    level: ArrayLike, *, loss: ArrayLike, area: float, absorption_area: ArrayLike
) -> FloatArray:
    """Diffuse level in the next room, from the diffuse level in this one.

    It overstates wide openings: a doorway that stands open is an upper bound.

    Parameters
    ----------
    level : array_like, shape (...)
        In the room of the sounder. [dB re 20 uPa]
    loss : array_like, shape (...)
        Of the whole partition. [dB]
    area : float
        Of the partition. [m2]
    absorption_area : array_like, shape (...)
        Equivalent absorption area of the next room. [m2]

    Returns
    -------
    ndarray, shape (...)
        In the next room. [dB re 20 uPa]

    References
    ----------
    .. [1] A. London, "The determination of reverberant sound transmission coefficients from acoustic power
       measurements", J. Res. Natl. Bur. Stand., vol. 42, pp. 605-615, 1949.

    Examples
    --------
    >>> level_through(100.0, loss=45.0, area=15.0, absorption_area=30.0).round(2).tolist()
    51.99
    """
    behind = np.asarray(absorption_area, dtype=np.float64)
    gained = 10.0 * np.log10(area / behind)
    return np.asarray(np.asarray(level) - np.asarray(loss) + gained, dtype=np.float64)


def mass_law_loss(frequency: ArrayLike, surface_mass: float) -> FloatArray:
    """Loss of a single heavy leaf by its mass alone, stiffness and flanking left out.

    Parameters
    ----------
    frequency : array_like, shape (...)
        Of the tone. [Hz]
    surface_mass : float
        Of a square metre of it. [kg]

    Returns
    -------
    ndarray, shape (...)
        Field-incidence transmission loss. [dB]

    References
    ----------
    .. [1] Textbook form, 20 log(M f) - 47.

    Examples
    --------
    >>> mass_law_loss([500.0], 10.0).round(1).tolist()
    [27.0]
    """
    tone = np.asarray(frequency, dtype=np.float64)
    return np.asarray(20.0 * np.log10(surface_mass * tone) - 47.0, dtype=np.float64)


MASSIVE_MEAN_DB = 52.0
"""Mean loss of a massive element of ``MASSIVE_KG_M2``. [dB] (published: an engineering table of floors)"""
MASSIVE_KG_M2 = 460.0
"""0.2 m of concrete at 2300 kg/m3. [kg]"""
MASSIVE_BY_BAND_DB = (-9.0, -5.0, -1.0, 3.0, 7.0, 11.0)
"""What the same table adds to the mean at 125 Hz to 4 kHz. [dB]"""


def massive_loss(surface_mass: float) -> FloatArray:
    """Loss of a massive wall or floor per octave band, where no measured table is at hand.

    Parameters
    ----------
    surface_mass : float
        Of a square metre of it; stated for 460, moved from there by its mass alone. [kg]

    Returns
    -------
    ndarray, shape (6,)
        At 125 Hz to 4 kHz. [dB]

    Examples
    --------
    >>> massive_loss(460.0).tolist()
    [43.0, 47.0, 51.0, 55.0, 59.0, 63.0]
    """
    mean = MASSIVE_MEAN_DB + 20.0 * np.log10(surface_mass / MASSIVE_KG_M2)
    return np.asarray(mean + np.asarray(MASSIVE_BY_BAND_DB), dtype=np.float64)
