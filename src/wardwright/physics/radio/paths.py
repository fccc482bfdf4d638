"""What the things on straight paths take from a level: walls less their openings, leaves, panes, floors."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.crossings import Boxes, passages
from wardwright.geometry.raster import FloatArray, IntArray
from wardwright.physics.radio.distance_laws import floor_factor

ANGLES_RAD = np.radians([0.0, 15.0, 30.0, 45.0, 60.0])
"""Angles at which a thing's loss is worked out; between them it is straight, beyond them it stays. [rad]"""


class Obstacles(NamedTuple):
    """What can stand in the way: B upright boxes."""

    boxes: Boxes
    within: IntArray
    """For an opening, the box of the wall that it is cut out of; -1 for what is cut out of nothing. (B,)"""
    classes: IntArray
    """What each is counted as, (B,); -1: it takes nothing, as a gap."""
    stands_open: IntArray
    """1 for leaves that usually stand open, else 0. (B,)"""
    blocks: IntArray
    """1 for what is no wall: gone through by the length inside, whatever the direction; else 0. (B,)"""


class Floors(NamedTuple):
    """Floors that can be met on the way, K of them."""

    levels: FloatArray
    """Height of each. [m]"""
    areas: Sequence[shapely.Geometry]
    """Where each is, its stairwells cut out. [m]"""
    classes: IntArray
    """What each is counted as, (K,)."""


class Taken(NamedTuple):
    """What each of N paths meets."""

    loss: FloatArray
    """Of each thing on each path, leaves shut, (N, B + K). [dB]"""
    counts: FloatArray
    """How many things of each class each path meets, leaves shut, (N, C). [-]"""
    total: FloatArray
    """Together, leaves shut, (N,). [dB]"""
    counts_told: FloatArray
    total_told: FloatArray
    """The same with leaves as they usually stand."""
    at: FloatArray
    """How far along each path each thing is met, nan where it is not, (N, B + K). [-]"""


def met_on_the_way(
    ways: tuple[FloatArray, FloatArray],
    obstacles: Obstacles,
    floors: Floors,
    *,
    losses: FloatArray,
    kinds: int,
) -> Taken:
    """What each straight path meets, and what that takes.

    Parameters
    ----------
    ways : tuple of ndarray, each of shape (N, 3)
        Both ends of each path. [m]
    obstacles : Obstacles
        B boxes. [m]
    floors : Floors
        K floors. [m]
    losses : ndarray, shape (B + K, 5)
        What each takes at the angles of `ANGLES_RAD`, floors last. [dB]
    kinds : int
        How many classes there are, C.

    Returns
    -------
    Taken
        Of all N paths. [dB]
    """
    starts, ends = ways
    many, boxes = len(starts), len(obstacles.classes)
    met = passages(starts, ends, obstacles.boxes)
    share = met.share.copy()
    block = np.flatnonzero(obstacles.blocks)
    share[:, block] = np.clip(met.inside[:, block] / (2.0 * obstacles.boxes.half[block]), 0.0, 1.0)
    inner = np.flatnonzero(obstacles.within >= 0)
    for opening in inner.tolist():
        share[:, obstacles.within[opening]] -= met.share[:, opening]
    np.maximum(share, 0.0, out=share)
    share[:, obstacles.classes < 0] = 0.0
    loss = np.zeros((many, boxes + len(floors.levels)))
    rows, columns = np.nonzero(share)
    loss[rows, columns] = share[rows, columns] * _at_angle(losses[columns], met.incidence[rows, columns])
    over, where = _floors_met(starts, ends, floors)
    # Each further floor takes less, as in the multi-wall law: all of a path's floors share that.
    count = over.sum(axis=1)
    bent = floor_factor(count) / np.maximum(count, 1.0)
    over *= bent[:, None]
    if len(floors.levels):
        loss[:, boxes:] = over * losses[boxes:, 0]
    is_there = np.where(loss > 0.0, np.concatenate([met.at, where], axis=1), np.nan)
    classes = np.concatenate([obstacles.classes, floors.classes])
    every = np.concatenate([share, over], axis=1)
    opened = np.concatenate([obstacles.stands_open, np.zeros(len(floors.levels), dtype=np.int64)]) > 0
    told = np.where(opened, 0.0, 1.0)
    return Taken(
        loss,
        _by_class(every, classes, kinds),
        loss.sum(axis=1),
        _by_class(every * told, classes, kinds),
        (loss * told).sum(axis=1),
        is_there,
    )


def _by_class(shares: FloatArray, classes: IntArray, kinds: int) -> FloatArray:
    """Sums (N, C) of shares (N, B + K) by class.

    Added up path by path, not by a product of matrices, whose last digit hangs on how many paths there are: a path
    has the same sums alone and among others.
    """
    found = np.zeros((len(shares), kinds))
    order = np.argsort(classes, kind="stable")
    order = order[np.searchsorted(classes[order], 0) :]
    if len(order):
        there, firsts = np.unique(classes[order], return_index=True)
        found[:, there] = np.add.reduceat(np.take(shares, order, axis=1), firsts, axis=1)
    return found


def _at_angle(losses: FloatArray, incidence: FloatArray) -> FloatArray:
    """Losses (M, 5) at angles (M,), straight between the table's."""
    place = np.clip(incidence / (ANGLES_RAD[1] - ANGLES_RAD[0]), 0.0, len(ANGLES_RAD) - 1.0)
    below = np.minimum(place.astype(np.int64), len(ANGLES_RAD) - 2)
    part = place - below
    rows = np.arange(len(losses))
    return np.asarray(losses[rows, below] * (1.0 - part) + losses[rows, below + 1] * part, dtype=np.float64)


def _floors_met(starts: FloatArray, ends: FloatArray, floors: Floors) -> tuple[FloatArray, FloatArray]:
    """Which floors each path goes through, 1 or 0, and how far along it; shape (N, K) both."""
    over = np.zeros((len(starts), len(floors.levels)))
    where = np.full(over.shape, np.nan)
    for k, (level, area) in enumerate(zip(floors.levels.tolist(), floors.areas, strict=True)):
        low, high = np.minimum(starts[:, 2], ends[:, 2]), np.maximum(starts[:, 2], ends[:, 2])
        rows = np.flatnonzero((low < level) & (high >= level))
        if len(rows):
            rise = ends[rows, 2] - starts[rows, 2]
            part = (level - starts[rows, 2]) / rise
            points = starts[rows, :2] + part[:, None] * (ends[rows, :2] - starts[rows, :2])
            inside = shapely.contains_xy(area, points[:, 0], points[:, 1])
            over[rows, k] = inside
            where[rows[inside], k] = part[inside]
    return over, where
