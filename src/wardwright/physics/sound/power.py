"""From the level that a sheet states to the power that a sounder puts out."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray


def power_level(level: ArrayLike, *, distance: float, directivity: float = 1.0) -> FloatArray:
    """Sound power level of a sounder from what its sheet states at a distance.

    Parameters
    ----------
    level : array_like, shape (...)
        Stated sound pressure level. [dB re 20 uPa]
    distance : float
        At which it is stated. [m]
    directivity : float, default 1.0
        How it was measured: 1 in the free field, 2 on a baffle. [-]

    Returns
    -------
    ndarray, shape (...)
        Sound power level. [dB re 1 pW]

    Raises
    ------
    ValueError
        If `distance` or `directivity` is not above zero.

    References
    ----------
    .. [1] L. L. Beranek, "Acoustics", McGraw-Hill, 1954: a point source in free space.

    Examples
    --------
    100 dB at 1 m, in the free field and on a baffle:

    >>> power_level(100.0, distance=1.0).round(2).tolist()
    110.99
    >>> power_level(100.0, distance=1.0, directivity=2.0).round(2).tolist()
    107.98
    """
    if distance <= 0.0 or directivity <= 0.0:
        raise ValueError(f"distance {distance:g} and directivity {directivity:g} must be above zero")
    spread = 10.0 * np.log10(4.0 * np.pi * distance**2 / directivity)
    return np.asarray(np.asarray(level, dtype=np.float64) + spread, dtype=np.float64)


def direct_level(power: ArrayLike, distance: ArrayLike, *, directivity: float = 1.0) -> FloatArray:
    """Level of the direct sound at a distance, nothing else about.

    Parameters
    ----------
    power : array_like, shape (...)
        Sound power level. [dB re 1 pW]
    distance : array_like, shape (...)
        From the source. [m]
    directivity : float, default 1.0
        2 on a wall, 4 in an edge, 8 in a corner. [-]

    Returns
    -------
    ndarray, shape (...)
        Sound pressure level. [dB re 20 uPa]

    Raises
    ------
    ValueError
        If a distance is not above zero.

    Examples
    --------
    85 dB at 3 m, farther off:

    >>> direct_level(power_level(85.0, distance=3.0), [1.0, 9.5]).round(1).tolist()
    [94.5, 75.0]
    """
    away = np.asarray(distance, dtype=np.float64)
    if (away <= 0.0).any():
        raise ValueError("a distance must be above zero")
    return np.asarray(power, dtype=np.float64) + 10.0 * np.log10(directivity / (4.0 * np.pi * away**2))
