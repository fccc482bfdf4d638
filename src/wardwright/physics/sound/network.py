"""Rooms as a network: each holds sound, swallows some, and passes some on to those beside it."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray


def answering(absorption_area: ArrayLike, coupling: ArrayLike) -> FloatArray:
    """What each room hears of each source, by the balance of sound in all rooms at once.

    In every room, what its own sources put into the diffuse field and what comes through its partitions is as much as
    its surfaces swallow and its partitions let out. For two rooms and one wall this is the textbook formula; it stays
    right for loops, and past the second room. It depends on the house alone, not on where sounders are.

    Parameters
    ----------
    absorption_area : array_like, shape (..., N)
        What each room swallows, with all that it lets out of the house. [m2]
    coupling : array_like, shape (..., N, N)
        What each two rooms exchange: area times the share that gets through, summed over all that joins them.
        Symmetric; its diagonal counts for nothing. [m2]

    Returns
    -------
    ndarray, shape (..., N, N)
        Row i, column j: 4 times it is the square of the pressure in room i for each unit of power that
        a source puts into the diffuse field of room j. [m-2]

    Raises
    ------
    ValueError
        If a room swallows nothing: sound would build up in it for ever.

    References
    ----------
    .. [1] L. Cremer and H. A. Mueller, "Principles and applications of room acoustics", vol. 1, Applied Science,
       1982: coupled rooms by the balance of energy.

    Examples
    --------
    Two rooms with one wall of 12.5 m2 and 38 dB between them, 10 m2 of absorption in each:

    >>> through = 12.5 * 10.0**-3.8
    >>> heard = answering([10.0, 10.0], [[0.0, through], [through, 0.0]])
    >>> float((10.0 * np.log10(heard[1, 0] / heard[0, 0])).round(2))
    -37.03
    """
    swallowed = np.asarray(absorption_area, dtype=np.float64)
    if (swallowed <= 0.0).any():
        raise ValueError("a room that swallows nothing")
    between = np.array(coupling, dtype=np.float64)
    count = swallowed.shape[-1]
    rooms = np.arange(count)
    between[..., rooms, rooms] = 0.0
    balance = -between
    balance[..., rooms, rooms] = swallowed + between.sum(axis=-1)
    return np.asarray(np.linalg.inv(balance), dtype=np.float64)


def diffuse_energy(answers: ArrayLike, sources: ArrayLike) -> FloatArray:
    """Diffuse sound in every room, from the sources in all of them.

    Parameters
    ----------
    answers : array_like, shape (..., N, N)
        As `answering` gives it. [m-2]
    sources : array_like, shape (..., N)
        Power that goes into the diffuse field of each room, over the reference power of 1 pW. [-]

    Returns
    -------
    ndarray, shape (..., N)
        Square of the pressure over the reference pressure of 20 uPa. [-]
    """
    heard = np.asarray(answers, dtype=np.float64)
    driven = np.asarray(sources, dtype=np.float64)
    return np.asarray(4.0 * (heard @ driven[..., None])[..., 0], dtype=np.float64)


def level_of(energy: ArrayLike) -> FloatArray:
    """Level of a square of pressure.

    Parameters
    ----------
    energy : array_like, shape (...)
        Square of the pressure over the reference pressure. [-]

    Returns
    -------
    ndarray, shape (...)
        -inf where there is no sound. [dB re 20 uPa]

    Examples
    --------
    >>> level_of([1e7, 0.0]).tolist()
    [70.0, -inf]
    """
    with np.errstate(divide="ignore"):
        return np.asarray(10.0 * np.log10(np.asarray(energy, dtype=np.float64)), dtype=np.float64)
