"""From a facade to those outside, from a sounder outside into a room, and round a corner."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray
from wardwright.physics.sound.reverberation import SPEED_M_S

SCREEN_MOST_DB = 20.0
"""More than this is never counted for one edge: sound goes over the roof and by reflection too. [dB] (ISO 9613-2)"""


def facade_share(area_through: ArrayLike, distance: ArrayLike) -> FloatArray:
    """How much of the diffuse sound behind a piece of facade is left at a distance in front of it.

    Parameters
    ----------
    area_through : array_like, shape (...)
        Area of the piece times the share that gets through. [m2]
    distance : array_like, shape (...)
        From its middle to the listener. [m]

    Returns
    -------
    ndarray, shape (...)
        Square of the pressure outside over that in the room; at most 1. [-]

    Notes
    -----
    A quarter of what a plane wave would bring falls on a wall in a diffuse field, and what gets through spreads over
    a half sphere: area / (8 pi r^2). This is the -6 dB of [1]_.

    References
    ----------
    .. [1] EN ISO 12354-4:2017, building acoustics, transmission of indoor sound to the outside.

    Examples
    --------
    >>> level = 10.0 * np.log10(facade_share(1.5 * 10.0**-2.6, 5.0))
    >>> float(level.round(1))
    -52.2
    """
    away = np.asarray(distance, dtype=np.float64)
    share = np.asarray(area_through, dtype=np.float64) / (8.0 * np.pi * np.maximum(away, 1e-3) ** 2)
    return np.asarray(np.minimum(share, 1.0), dtype=np.float64)


def power_let_in(area_through: ArrayLike, slant: ArrayLike) -> FloatArray:
    """Power that a sound from outside puts into a room through a piece of facade.

    Parameters
    ----------
    area_through : array_like, shape (...)
        Area of the piece times the share that gets through. [m2]
    slant : array_like, shape (...)
        Cosine of the angle between the way of the sound and the facade's normal, in [0, 1]. [-]

    Returns
    -------
    ndarray, shape (...)
        For a square of pressure of 1 in front, the wall's own reflection left out: power over 1 pW. [m2]

    Notes
    -----
    Derived here: intensity of a plane wave times the area that faces it.
    """
    facing = np.clip(np.asarray(slant, dtype=np.float64), 0.0, 1.0)
    return np.asarray(np.asarray(area_through, dtype=np.float64) * facing, dtype=np.float64)


def screen_loss(detour: ArrayLike, frequency: ArrayLike) -> FloatArray:
    """What a corner or a roof's edge takes off sound that has to go round it.

    Parameters
    ----------
    detour : array_like, shape (...)
        How much longer the way round is than the straight line; 0 or less: nothing is in the way. [m]
    frequency : array_like, shape (...)
        Of the tone; broadcast against `detour`. [Hz]

    Returns
    -------
    ndarray, shape (...)
        Never above ``SCREEN_MOST_DB``; 0 where nothing is in the way. [dB]

    References
    ----------
    .. [1] ISO 9613-2:1996, clause 7.4, equation (14) with C2 = 20, C3 = 1 and no weather; after Z. Maekawa, "Noise
       reduction by screens", Applied Acoustics, vol. 1, pp. 157-173, 1968.

    Examples
    --------
    >>> screen_loss([0.0, 0.1, 5.0], 1000.0).round(1).tolist()
    [0.0, 9.5, 20.0]
    """
    more = np.asarray(detour, dtype=np.float64)
    length = SPEED_M_S / np.asarray(frequency, dtype=np.float64)
    loss = 10.0 * np.log10(3.0 + 20.0 * np.maximum(more, 0.0) / length)
    return np.where(more > 0.0, np.minimum(loss, SCREEN_MOST_DB), 0.0)
