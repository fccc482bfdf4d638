"""The sun thrown on by something smooth: a lens seen in a mirror is a lens behind it."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import ArrayLike

from wardwright.geometry.raster import BoolArray, FloatArray


def behind_floor(lens: tuple[float, float, float], level: float) -> tuple[float, float, float]:
    """Where a lens is seen in a level floor.

    Parameters
    ----------
    lens : tuple of float
        x, y, and height. [m]
    level : float
        Height of the floor. [m]

    Returns
    -------
    tuple of float
        As far below the floor as the lens is above it. [m]

    Examples
    --------
    >>> behind_floor((1.0, 2.0, 2.2), 0.0)
    (1.0, 2.0, -2.2)
    """
    return lens[0], lens[1], 2.0 * level - lens[2]


def behind_mirror(
    lens: tuple[float, float, float], face: ArrayLike, front: tuple[float, float]
) -> tuple[float, float, float] | None:
    """Where a lens is seen in an upright mirror.

    Parameters
    ----------
    lens : tuple of float
        x, y, and height. [m]
    face : array_like, shape (2, 2)
        Ends of the mirror on the plan. [m]
    front : tuple of float
        Unit vector out of its face. [-]

    Returns
    -------
    tuple of float or None
        As far behind the face as the lens is before it; None for a lens behind it. [m]

    Examples
    --------
    >>> behind_mirror((1.0, 2.0, 2.2), [(0.0, 0.0), (4.0, 0.0)], (0.0, 1.0))
    (1.0, -2.0, 2.2)
    """
    start = np.asarray(face, dtype=np.float64)[0]
    before = (lens[0] - start[0]) * front[0] + (lens[1] - start[1]) * front[1]
    if before <= 0.0:
        return None
    return float(lens[0] - 2.0 * before * front[0]), float(lens[1] - 2.0 * before * front[1]), lens[2]


class Glints(NamedTuple):
    """Where lines from behind something smooth come out of it."""

    places: FloatArray
    """On the plan, shape (K, 2). [m]"""
    shown: FloatArray
    """Floor by which one sees whether the spot is in view: there, or right before a mirror, shape (K, 2). [m]"""
    is_met: BoolArray
    """Whether the line comes out of it at all, shape (K,)."""


BEFORE_M = 0.2
"""Floor this far before a mirror tells whether it is in view. [m]"""


def through_floor(
    eye: tuple[float, float, float], bearing: FloatArray, rise: FloatArray, *, level: float, ring: ArrayLike
) -> Glints:
    """Where rising lines from below a floor come out of it.

    Parameters
    ----------
    eye : tuple of float
        Where they start, from `behind_floor`. [m]
    bearing : ndarray, shape (K,)
        On the plan, anticlockwise from x. [rad]
    rise : ndarray, shape (K,)
        Per metre on the plan. [-]
    level : float
        Height of the floor. [m]
    ring : array_like, shape (V, 2)
        Its outline. [m]

    Returns
    -------
    Glints
        Met where they come out within the outline.
    """
    far = (level - eye[2]) / np.maximum(rise, 1e-9)
    places = np.asarray(eye[:2]) + far[:, None] * np.stack([np.cos(bearing), np.sin(bearing)], axis=1)
    met = shapely.contains_xy(shapely.Polygon(np.asarray(ring)), places[:, 0], places[:, 1])
    return Glints(places, places, np.asarray(met, dtype=np.bool_))


def through_mirror(
    eye: tuple[float, float, float],
    bearing: FloatArray,
    rise: FloatArray,
    *,
    face: tuple[ArrayLike, tuple[float, float]],
    levels: tuple[float, float],
) -> Glints:
    """Where lines from behind an upright mirror come out of it.

    Parameters
    ----------
    eye : tuple of float
        Where they start, from `behind_mirror`. [m]
    bearing : ndarray, shape (K,)
        On the plan, anticlockwise from x. [rad]
    rise : ndarray, shape (K,)
        Per metre on the plan. [-]
    face : tuple
        Ends of the mirror on the plan, shape (2, 2) [m], and the unit vector out of its face [-].
    levels : tuple of float
        Its lower and upper edge. [m]

    Returns
    -------
    Glints
        Met where they cross between its ends and its edges.
    """
    start, end = np.asarray(face[0], dtype=np.float64) - np.asarray(eye[:2])
    toward = np.stack([np.cos(bearing), np.sin(bearing)], axis=1)
    span = end - start
    across = toward[:, 0] * span[1] - toward[:, 1] * span[0]
    with np.errstate(divide="ignore", invalid="ignore"):
        far = (start[0] * span[1] - start[1] * span[0]) / across
        share = (start[0] * toward[:, 1] - start[1] * toward[:, 0]) / across
    met = np.isfinite(far) & (far > 0.0) & (share >= 0.0) & (share <= 1.0)
    far = np.where(met, far, 0.0)
    height = eye[2] + rise * far
    places = np.asarray(eye[:2]) + far[:, None] * toward
    met &= (height >= levels[0]) & (height <= levels[1])
    return Glints(places, places + BEFORE_M * np.asarray(face[1]), met)
