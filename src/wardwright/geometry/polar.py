"""Half-planes round an eye: which panels each azimuth crosses, and the slopes that pass through holes in floors."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray, IntArray

CONTACT_M = 1e-6
"""A panel nearer than this stands in the eye itself and hides nothing. [m]"""
MAX_INTERVALS = 6
"""Slope intervals kept per azimuth; the narrowest beyond are dropped, so that less is seen, never more. [-]"""
STEEP = 1e6
"""A slope that stands for straight up. [-]"""
SLIVER = 1e-7
"""Slope intervals no wider than this are rounding. [-]"""


class Through(NamedTuple):
    """A level floor that sight can pass only at its holes."""

    level: float
    """Height of the floor. [m]"""
    holes: tuple[FloatArray, ...]
    """Outlines of its holes, each of shape (V, 2), not overlapping. [m]"""


class Frame(NamedTuple):
    """The half-planes round an eye."""

    eye: FloatArray
    first: float
    step: float
    around: int
    aims: FloatArray
    reach: float


def crossings(frame: Frame, ends: FloatArray) -> tuple[IntArray, IntArray, FloatArray]:
    """Which panel each azimuth crosses, and where.

    Parameters
    ----------
    frame : Frame
        The half-planes.
    ends : ndarray, shape (P, 4 or more)
        x and y of one end, x and y of the other, of each panel. [m]

    Returns
    -------
    panel : ndarray of int, shape (E,)
        Index of the panel. [-]
    azimuth : ndarray of int, shape (E,)
        Index of the half-plane. [-]
    reached : ndarray, shape (E,)
        Range of the crossing. [m]
    """
    x, y = ends[:, 0] - frame.eye[0], ends[:, 1] - frame.eye[1]
    span_x, span_y = ends[:, 2] - ends[:, 0], ends[:, 3] - ends[:, 1]
    at_start = (np.arctan2(y, x) - frame.first) / frame.step
    turned = (np.arctan2(y + span_y, x + span_x) - frame.first) / frame.step - at_start
    turned -= frame.around * np.round(turned / frame.around)
    begin = np.where(turned >= 0.0, at_start, at_start + turned)
    # Half-open, so that two panels that share a corner are crossed there just once.
    lowest = np.ceil(begin - 0.5).astype(np.int64)
    number = np.ceil(begin + np.abs(turned) - 0.5).astype(np.int64) - lowest
    panel = np.repeat(np.arange(len(ends)), number)
    before = np.cumsum(number) - number
    azimuth = (np.arange(len(panel)) + (lowest - before)[panel]) % frame.around
    keep = azimuth < frame.aims.shape[1]
    panel, azimuth = panel[keep], azimuth[keep]
    across = frame.aims[0][azimuth] * span_y[panel] - frame.aims[1][azimuth] * span_x[panel]
    with np.errstate(divide="ignore", invalid="ignore"):
        reached = (x * span_y - y * span_x)[panel] / across
    keep = (reached > CONTACT_M) & (reached <= frame.reach)
    return panel[keep], azimuth[keep], reached[keep]


def opening_slopes(frame: Frame, through: Sequence[Through]) -> tuple[FloatArray, FloatArray]:
    """Slopes that pass all floors between.

    Parameters
    ----------
    frame : Frame
        The half-planes, A of them.
    through : sequence of Through
        Floors, each to be passed at one of its holes.

    Returns
    -------
    bottoms : ndarray, shape (A, M)
        Lower ends of intervals of slope. [-]
    tops : ndarray, shape (A, M)
        Upper ends, not above the lower in an unused place. [-]
    """
    count = frame.aims.shape[1]
    bottoms = np.full((count, 1), -STEEP)
    tops = np.full((count, 1), STEEP)
    for floor in through:
        rise = floor.level - frame.eye[2]
        open_low: list[FloatArray] = []
        open_high: list[FloatArray] = []
        for hole in floor.holes:
            near, far = _hole_ranges(frame, hole)
            one, other = rise / np.maximum(near, CONTACT_M), rise / np.maximum(far, CONTACT_M)
            empty = np.isnan(near)
            open_low.append(np.where(empty, 1.0, np.minimum(one, other)))
            open_high.append(np.where(empty, 0.0, np.maximum(one, other)))
        if not open_low:
            return np.full((count, 1), 1.0), np.full((count, 1), 0.0)
        low, high = np.hstack(open_low), np.hstack(open_high)
        pairs_low = np.maximum(bottoms[:, :, None], low[:, None, :]).reshape(count, -1)
        pairs_high = np.minimum(tops[:, :, None], high[:, None, :]).reshape(count, -1)
        bottoms, tops = packed(pairs_low, pairs_high)
    return bottoms, tops


def _hole_ranges(frame: Frame, hole: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Ranges between which each azimuth is over a hole, shape (A, H) each; nan where unused."""
    _, azimuth, reached = crossings(
        frame._replace(reach=math.inf), np.hstack([hole, np.roll(hole, -1, axis=0)])
    )
    order = np.lexsort((reached, azimuth))
    azimuth, reached = azimuth[order], reached[order]
    counts = np.bincount(azimuth, minlength=frame.aims.shape[1])
    rank = np.arange(len(azimuth)) - (np.cumsum(counts) - counts)[azimuth]
    # An odd number of crossings: the eye itself is over (or under) the hole.
    rank += (counts % 2)[azimuth]
    table = np.full((frame.aims.shape[1], 2 * (int(counts.max(initial=0)) // 2 + 1)), np.nan)
    table[counts % 2 == 1, 0] = 0.0
    table[azimuth, rank] = reached
    return table[:, 0::2], table[:, 1::2]


def packed(bottoms: FloatArray, tops: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Drop empty intervals and keep the others in their order.

    Parameters
    ----------
    bottoms : ndarray, shape (N, M)
        Lower ends. [-]
    tops : ndarray, shape (N, M)
        Upper ends, not above the lower in an unused place. [-]

    Returns
    -------
    bottoms : ndarray, shape (N, K)
        As few as will do, at most `MAX_INTERVALS`. [-]
    tops : ndarray, shape (N, K)
        Likewise. [-]
    """
    width = tops - bottoms
    used = width > SLIVER
    if used.shape[1] == 1:
        return np.where(used, bottoms, 1.0), np.where(used, tops, 0.0)
    most = int(used.sum(axis=1).max(initial=0))
    if most > MAX_INTERVALS:
        rank = np.argsort(np.argsort(-width, axis=1, kind="stable"), axis=1)
        used &= rank < MAX_INTERVALS
        most = MAX_INTERVALS
    row, column = np.nonzero(used)
    place = (used.cumsum(axis=1) - 1)[row, column]
    low, high = np.full((len(used), max(most, 1)), 1.0), np.zeros((len(used), max(most, 1)))
    low[row, place], high[row, place] = bottoms[row, column], tops[row, column]
    return low, high
