"""A movement detector as a fan of heat-sensing zones, each half of a pair one ray with a width and a height."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray

BEAM_SHAPE = 2.0
"""How many times as high as wide a zone's half is. [-] (assumption: elements of a pair are about twice as high)"""
BAND_HZ = (0.1, 10.0)
"""Rates of change that the detector passes on. [Hz] (from memory: component literature)"""


class Halves(NamedTuple):
    """Both halves of every pair of zones."""

    azimuth: FloatArray
    """Anticlockwise from plan x, shape (H,). [rad]"""
    rise: FloatArray
    """Height per metre of plan range; zones that look down are negative; shape (H,). [-]"""


def zone_halves(
    rows: Sequence[tuple[int, float]], *, heading: float, angle: float, split: float, tilt: float = 0.0
) -> Halves:
    """Lay out the rays of a sheet's rows.

    Parameters
    ----------
    rows : sequence of (int, float)
        For each row: its pairs, evenly spread over the fan [-], and its depression [rad].
    heading : float
        Middle of the fan, anticlockwise from plan x. [rad]
    angle : float
        The whole angle of the fan. [rad]
    split : float
        Between the two halves of a pair. [rad]
    tilt : float, default 0.0
        How far the detector looks down beyond its rows. [rad]

    Returns
    -------
    Halves
        Row by row, from the right of the fan to its left.

    Examples
    --------
    >>> halves = zone_halves([(2, 0.1)], heading=0.0, angle=1.0, split=0.02)
    >>> halves.azimuth.round(2).tolist()
    [-0.26, -0.24, 0.24, 0.26]
    """
    azimuths: list[FloatArray] = []
    rises: list[FloatArray] = []
    for pairs, depression in rows:
        middles = heading + angle * ((np.arange(pairs) + 0.5) / pairs - 0.5)
        azimuths.append((middles[:, None] + np.array([-0.5, 0.5]) * split).ravel())
        # A row that looks straight down, or past it, meets the floor at the foot of its wall.
        rises.append(np.full(2 * pairs, -np.tan(min(depression + tilt, np.radians(89.0)))))
    return Halves(np.concatenate(azimuths), np.concatenate(rises))


def beam_width(distance: ArrayLike, split: float) -> FloatArray:
    """Width of one half at a range: neighbouring halves of a pair just touch.

    Parameters
    ----------
    distance : array_like, shape (...)
        Plan range. [m]
    split : float
        Between the two halves of a pair. [rad]

    Returns
    -------
    ndarray, shape (...)
        Width. [m]
    """
    return np.asarray(2.0 * np.asarray(distance) * np.tan(split / 2.0), dtype=np.float64)


def zone_amplitude(
    distance: ArrayLike, body_width: float, *, height_within: ArrayLike, split: float, contrast: ArrayLike
) -> FloatArray:
    """How strong the signal of a body in one half is, against the least that is sensed.

    Parameters
    ----------
    distance : array_like, shape (...)
        Plan range. [m]
    body_width : float
        Width of the body. [m]
    height_within : array_like, shape (...)
        How much of the half's height at that range the body fills. [m]
    split : float
        Between the two halves of a pair. [rad]
    contrast : array_like, shape (...)
        How many times the least contrast the body has when it fills a half wholly. [-]

    Returns
    -------
    ndarray, shape (...)
        At least 1 is sensed. [-]
    """
    wide = np.maximum(beam_width(distance, split), 1e-9)
    across = np.minimum(1.0, body_width / wide)
    high = np.minimum(1.0, np.asarray(height_within) / (BEAM_SHAPE * wide))
    return np.asarray(across * high * contrast, dtype=np.float64)


def pair_rate(speed_across: ArrayLike, distance: ArrayLike, *, split: float) -> FloatArray:
    """Rate of the signal of a body that crosses a pair of halves.

    Parameters
    ----------
    speed_across : array_like, shape (...)
        Speed at right angles to the half. [m/s]
    distance : array_like, shape (...)
        Plan range. [m]
    split : float
        Between the two halves of a pair: a pair is twice as wide. [rad]

    Returns
    -------
    ndarray, shape (...)
        Pairs a second. [Hz]

    Examples
    --------
    >>> float(pair_rate(3.0, 12.0, split=np.radians(1.6)).round(1))
    4.5
    """
    return np.asarray(
        np.asarray(speed_across) / (2.0 * split * np.maximum(np.asarray(distance), 1e-9)), dtype=np.float64
    )


def rate_gain(rate: ArrayLike) -> FloatArray:
    """How much of a change at a rate the detector passes on.

    Parameters
    ----------
    rate : array_like, shape (...)
        Rate of the change. [Hz]

    Returns
    -------
    ndarray, shape (...)
        1 within `BAND_HZ`; 0 below it, where slow movement is taken to be missed; above it falling as a filter of
        the first order does, since a body wider than the zones still passes many changes a second close in. [-]

    Examples
    --------
    >>> rate_gain([0.05, 1.0, 20.0]).tolist()
    [0.0, 1.0, 0.5]
    """
    changes = np.asarray(rate, dtype=np.float64)
    above = BAND_HZ[1] / np.maximum(changes, BAND_HZ[1])
    return np.where(changes < BAND_HZ[0], 0.0, above)
