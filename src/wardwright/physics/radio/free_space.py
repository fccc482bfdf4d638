"""What distance alone takes from a radio level."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.errors import OutOfRangeError
from wardwright.geometry.raster import FloatArray
from wardwright.physics.constants import LIGHT_M_S


def free_space_loss(distance: ArrayLike, frequency: ArrayLike) -> FloatArray:
    """Loss between two ideal antennas with nothing in the way.

    The floor under every other radio number here: walls, floors and bodies only add to it.

    Parameters
    ----------
    distance : array_like, shape (...)
        Straight distance between the antennas. [m]
    frequency : array_like, shape (...)
        Carrier frequency, one or one for each distance. [Hz]

    Returns
    -------
    ndarray, shape (...)
        Loss, always positive here. [dB]

    Raises
    ------
    OutOfRangeError
        If any distance is below one wavelength, where the far-field formula no longer holds. Carries ``.mask``, True
        where it fails.

    References
    ----------
    .. [1] H. T. Friis, "A note on a simple transmission formula", Proc. IRE, vol. 34, no. 5, pp. 254-256, May 1946.

    Examples
    --------
    >>> free_space_loss([1.0, 10.0], 868.0e6).round(1).tolist()
    [31.2, 51.2]
    """
    apart, wavelength = np.asarray(distance, dtype=np.float64), LIGHT_M_S / np.asarray(frequency)
    too_near = apart < wavelength
    if np.any(too_near):
        raise OutOfRangeError(
            "a distance is shorter than one wavelength, where free space has no plain loss", mask=too_near
        )
    return np.asarray(20.0 * np.log10(4.0 * np.pi * apart / wavelength), dtype=np.float64)
