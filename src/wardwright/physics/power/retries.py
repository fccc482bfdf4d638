"""How often a message is sent before it is heard, by the margin of its radio link."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike
from scipy.special import ndtr

from wardwright.geometry.raster import FloatArray

FADING_DB = 4.0
"""Spread of the level from one sending to the next, as people and leaves move. [dB] (assumption)"""
MOST_SENDS = 8
"""How often a device sends one message before it gives up. [-] (assumption)"""


def sends_a_message(margin: ArrayLike, *, spread: float = FADING_DB, most: int = MOST_SENDS) -> FloatArray:
    """How often a message is sent on average until it is heard, or given up.

    A sending is lost when the level of the moment is under what the receiver needs. Better margins never send more.

    Parameters
    ----------
    margin : array_like, shape (...)
        Mean level above what the receiver needs; nan where it is not known. [dB]
    spread : float, default 4.0
        Standard deviation of the level from one sending to the next. [dB]
    most : int, default 8
        Sendings of one message before it is given up. [-]

    Returns
    -------
    ndarray, shape (...)
        At least 1, at most `most`; nan where the margin is not known. [-]

    Notes
    -----
    Derived here: sendings are taken to be lost independently, each with the chance of a normal level under the need.

    Examples
    --------
    >>> sends_a_message([20.0, 0.0, -30.0]).round(2).tolist()
    [1.0, 1.99, 8.0]
    """
    lost = ndtr(-np.asarray(margin, dtype=np.float64) / spread)
    found: FloatArray = np.ones_like(lost)
    for again in range(1, most):
        found = found + lost**again
    return found
