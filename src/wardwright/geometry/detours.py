"""The shortest way round a convex block between places outside it."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import BoolArray, FloatArray

TOUCH_M = 1e-6
"""What comes no deeper than this into the block passes it by. [m] (derived here: clear of rounding)"""


def ways_round(block: ArrayLike, starts: ArrayLike, ends: ArrayLike) -> FloatArray:
    """Length of the shortest way from each start to each end that does not cross a convex block.

    Parameters
    ----------
    block : array_like, shape (V, 2)
        Corners of the block, anticlockwise, first not repeated. [m]
    starts : array_like, shape (S, 2)
        Places to start from. One inside the block, as in a recess of a house, is taken to see straight out. [m]
    ends : array_like, shape (E, 2)
        Places to reach, the same. [m]

    Returns
    -------
    ndarray, shape (S, E)
        Length of the way; the straight one where nothing is in it. [m]

    Notes
    -----
    Derived here. A shortest way leaves for a corner that is seen from its start, follows the block's edge one way or
    the other, and leaves it for its end from a corner that is seen from there.

    Examples
    --------
    >>> square = [(0, 0), (2, 0), (2, 2), (0, 2)]
    >>> ways_round(square, [(1, -1)], [(1, 3), (3, -1)]).round(3).tolist()
    [[4.828, 2.0]]
    """
    corners = np.asarray(block, dtype=np.float64)
    one, other = (np.asarray(a, dtype=np.float64).reshape(-1, 2) for a in (starts, ends))
    straight = np.linalg.norm(one[:, None] - other[None], axis=-1)
    sides = np.linalg.norm(np.roll(corners, -1, axis=0) - corners, axis=1)
    walked = np.concatenate([[0.0], np.cumsum(sides)])
    forward = np.abs(walked[:-1, None] - walked[None, :-1])
    along = np.minimum(forward, walked[-1] - forward)
    # From each place to each corner: straight where seen, otherwise never.
    first, last = (_to_corners(corners, places) for places in (one, other))
    round_it = (first[:, None, :] + along[None]).min(axis=-1)
    detours = (round_it[:, None, :] + last[None]).min(axis=-1)
    blocked = _crossed(corners, one, other) & np.isfinite(detours)
    return np.asarray(np.where(blocked, np.maximum(detours, straight), straight), dtype=np.float64)


def _outward(corners: FloatArray, places: FloatArray) -> FloatArray:
    """How far each place lies outside each edge, shape (N, V). [m]"""
    edges = np.roll(corners, -1, axis=0) - corners
    lengths = np.maximum(np.linalg.norm(edges, axis=1), 1e-12)
    normals = np.stack([edges[:, 1], -edges[:, 0]], axis=1) / lengths[:, None]
    return np.asarray(((places[:, None] - corners[None]) * normals[None]).sum(axis=-1))


def _to_corners(corners: FloatArray, places: FloatArray) -> FloatArray:
    """From each place to each corner that it sees; inf to the others."""
    faced: BoolArray = np.asarray(_outward(corners, places) >= -TOUCH_M, dtype=np.bool_)
    # A corner is seen where one of its two edges is faced.
    before = np.concatenate([faced[:, -1:], faced[:, :-1]], axis=1)
    seen = faced | before
    away = np.linalg.norm(places[:, None] - corners[None], axis=-1)
    can = faced.sum(axis=1, keepdims=True) > 0
    return np.where(seen & can, away, np.inf)


def _crossed(corners: FloatArray, one: FloatArray, other: FloatArray) -> BoolArray:
    """Whether the straight line between each two places goes through the block."""
    a = _outward(corners, one)[:, None, :]
    b = _outward(corners, other)[None, :, :]
    span = a - b
    with np.errstate(divide="ignore", invalid="ignore"):
        at = a / span
    # Going in where the line comes from outside of an edge, out where it leaves.
    enters = np.where(span > TOUCH_M, at, 0.0).max(axis=-1)
    leaves = np.where(span < -TOUCH_M, at, 1.0).min(axis=-1)
    beside = ((np.abs(span) <= TOUCH_M) & (a >= -TOUCH_M)).any(axis=-1)
    return np.asarray(~beside & (leaves - enters > TOUCH_M), dtype=np.bool_)
