"""Which steps of the year shine through a pane on a point: rectangles in the order of the sun's turns."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.panes import Pane
from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.physics.sunlight.position import HALF_SUN_RAD
from wardwright.physics.sunlight.year import PROFILE_BINS, TURN_BINS, Facing, bin_of

TOUCHING_M = 1e-3
"""A point nearer than this to the inner face of the pane's wall has no beam through it. [m]"""


class Bounds(NamedTuple):
    """Between which angles the sun shines through a pane on each of N points; left above right where never."""

    right: FloatArray
    """Least turn from the pane's outward normal, anticlockwise, shape (N,), as all. [rad]"""
    left: FloatArray
    """Greatest turn. [rad]"""
    low: FloatArray
    """Least profile angle. [rad]"""
    high: FloatArray
    """Greatest profile angle. [rad]"""


def bounds_of(pane: Pane, points: ArrayLike) -> Bounds:
    """Between which angles the sun shines through a pane on points, past its reveal, sill and head.

    Parameters
    ----------
    pane : Pane
        The pane.
    points : array_like, shape (N, 3)
        x, y, and height above the house's zero. [m]

    Returns
    -------
    Bounds
        Empty (right above left) for points outside or in the wall.

    Examples
    --------
    A south pane in a wall without thickness, from 1 m behind its middle:

    >>> pane = Pane((0.0, 0.0), (0.0, -1.0), 2.0, 0.0, 1.0, 0.0)
    >>> [round(float(np.degrees(one[0])), 1) for one in bounds_of(pane, [(0.0, 1.0, 0.0)])]
    [-45.0, 45.0, 0.0, 45.0]
    """
    deep, aside, height = _before_pane(pane, np.asarray(points, dtype=np.float64))
    return _bounds(pane, deep, (aside, aside), height=height)


def in_rows(pane: Pane, points: ArrayLike, *, cell: float) -> IntArray:
    """The order in which neighbours along the pane's wall follow one another, row by row.

    Parameters
    ----------
    pane : Pane
        The pane.
    points : array_like, shape (N, 3)
        Middles of cells: x, y, and height above the house's zero. [m]
    cell : float
        Side of a cell: rows lie so far apart. [m]

    Returns
    -------
    ndarray of int, shape (N,)
        Which point comes first, and so on; some of the points so ordered are in order too. [-]
    """
    deep, aside, height = _before_pane(pane, np.asarray(points, dtype=np.float64))
    row, level = _row_of(deep, height, cell=cell)
    return np.lexsort((aside, level, row))


def _row_of(deep: FloatArray, height: FloatArray, *, cell: float) -> tuple[IntArray, IntArray]:
    """By how many cells and how many centimetres points lie behind a pane and above the house's zero."""
    return np.round(deep / cell).astype(np.int64), np.round(height / 0.01).astype(np.int64)


def row_bounds(pane: Pane, points: ArrayLike, *, cell: float) -> Bounds:
    """Between which angles the sun shines on any of the points of each row of neighbours along the pane's wall.

    Parameters
    ----------
    pane : Pane
        The pane.
    points : array_like, shape (N, 3)
        Middles of cells, in the order of `in_rows`: x, y, and height above the house's zero. [m]
    cell : float
        Side of a cell: rows lie so far apart, and a gap of half as much more ends a row. [m]

    Returns
    -------
    Bounds
        One entry a row, at the mean of its distances from the pane.

    Examples
    --------
    Eleven points side by side are one row, a twelfth farther in is another:

    >>> pane = Pane((0.0, 0.0), (0.0, -1.0), 2.0, 0.0, 1.0, 0.0)
    >>> places = [(i / 10.0, 1.0, 0.0) for i in range(11)] + [(0.0, 1.1, 0.0)]
    >>> len(row_bounds(pane, places, cell=0.1).right)
    2
    """
    deep, aside, height = _before_pane(pane, np.asarray(points, dtype=np.float64))
    row, level = _row_of(deep, height, cell=cell)
    new = (np.diff(row) != 0) | (np.diff(level) != 0) | (np.diff(aside) > 1.5 * cell)
    first = np.concatenate([[0], np.nonzero(new)[0] + 1])
    last = np.concatenate([first[1:], [len(row)]]) - 1
    middle = np.add.reduceat(deep, first) / (last - first + 1)
    return _bounds(pane, middle, (aside[first], aside[last]), height=height[first])


def _before_pane(pane: Pane, places: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
    """How far points lie behind the middle of a pane's wall, how far to its left seen from inside, how high. [m]"""
    nx, ny = pane.normal
    x, y = places[:, 0] - pane.middle[0], places[:, 1] - pane.middle[1]
    return -(x * nx + y * ny), -x * ny + y * nx, places[:, 2]


def _bounds(
    pane: Pane, deep: FloatArray, aside: tuple[FloatArray, FloatArray], *, height: FloatArray
) -> Bounds:
    """Angles of the sun on any place of some stretches along a pane's wall."""
    inner, outer = deep - pane.depth / 2.0, deep + pane.depth / 2.0
    is_behind = inner > TOUCHING_M
    inner, outer = np.where(is_behind, inner, 1.0), np.where(is_behind, outer, 1.0)
    lowest, highest = pane.sill - height, pane.head - height
    half = pane.width / 2.0
    right = np.maximum((-half - aside[1]) / inner, (-half - aside[1]) / outer)
    left = np.minimum((half - aside[0]) / inner, (half - aside[0]) / outer)
    low = np.maximum(lowest / inner, lowest / outer)
    high = np.minimum(highest / inner, highest / outer)
    empty = ~is_behind
    return Bounds(
        np.where(empty, 1.0, np.arctan(right)),
        np.where(empty, -1.0, np.arctan(left)),
        np.where(empty, 1.0, np.arctan(low)),
        np.where(empty, -1.0, np.arctan(high)),
    )


def shining(facing: Facing, bounds: Bounds, *, index: int = 0) -> IntArray:
    """Which steps of an order shine through a pane on one point.

    Parameters
    ----------
    facing : Facing
        The year before the pane's wall.
    bounds : Bounds
        From `bounds_of`.
    index : int, default 0
        Which of its points.

    Returns
    -------
    ndarray of int
        Places in the order, ascending.
    """
    start, mask = _stretch(facing, tuple(float(one[index]) for one in bounds))
    return np.asarray(start + np.nonzero(mask)[0])


def lit_sky(bounds: Bounds, *, spread: float = HALF_SUN_RAD) -> BoolArray:
    """From where in the sky the sun shines through a pane on any of several places, to a quarter of a degree.

    Parameters
    ----------
    bounds : Bounds
        Of the places.
    spread : float, default HALF_SUN_RAD
        Half of the sun's disc. [rad]

    Returns
    -------
    ndarray of bool, shape (TURN_BINS * PROFILE_BINS,)
        By bin, so that the steps that shine are looked up by `Facing.bins`.

    Notes
    -----
    The places' rectangles of angles are painted into one picture.
    """
    sky = np.zeros((TURN_BINS, PROFILE_BINS), dtype=np.bool_)
    kept = (bounds.right < bounds.left) & (bounds.high > np.maximum(0.0, bounds.low))
    right, left, low, high = (side[kept] for side in bounds)
    (first, last), (bottom, top) = bin_of(
        np.stack([right - spread, left + spread]), np.stack([low - spread, high + spread])
    )
    for i, j, k, m in zip(first.tolist(), last.tolist(), bottom.tolist(), top.tolist(), strict=True):
        sky[i : j + 1, k : m + 1] = True
    return sky.ravel()


def most_lit(facing: Facing, bounds: Bounds, places: IntArray) -> BoolArray:
    """The points that are lit together at that one of some steps that lights most of them.

    Parameters
    ----------
    facing : Facing
        The year before the pane's wall.
    bounds : Bounds
        Of the points, N of them.
    places : ndarray of int
        Of the steps in the order, ascending. [-]

    Returns
    -------
    ndarray of bool, shape (N,)
        At the first of those that light as many.
    """
    turn, profile = facing.turn[places, None], facing.profile[places, None]
    lit = (turn >= bounds.right) & (turn <= bounds.left) & (profile >= bounds.low) & (profile <= bounds.high)
    most: BoolArray = lit[np.argmax(lit.sum(axis=1))]
    return most


class ByTime(NamedTuple):
    """Some steps of an order as they follow one another in the year."""

    steps: IntArray
    """Which steps of the year, ascending, shape (S,), as all. [-]"""
    places: IntArray
    """Where in the order each of them is. [-]"""
    bins: IntArray
    """The order's bin of each. [-]"""


def by_time(facing: Facing, kept: BoolArray) -> ByTime:
    """Some steps of an order as they follow one another in the year.

    Parameters
    ----------
    facing : Facing
        The year before a wall, F steps.
    kept : ndarray of bool, shape (F,)
        Which of them.

    Returns
    -------
    ByTime
        S steps.
    """
    # Laid out over the whole year, which sorts them sooner than sorting would.
    at = np.full(int(facing.steps.max(initial=-1)) + 1, -1)
    at[facing.steps[kept]] = np.nonzero(kept)[0]
    steps = np.nonzero(at >= 0)[0]
    return ByTime(steps, at[steps], facing.bins[at[steps]])


def _stretch(facing: Facing, sides: tuple[float, ...]) -> tuple[int, BoolArray]:
    """The first place of a stretch of the order, and which of its steps lie in a rectangle of angles."""
    right, left, low, high = sides
    if right >= left or low >= high or high <= 0.0:
        return 0, np.zeros(0, dtype=np.bool_)
    wide = facing.widest
    edges = np.searchsorted(facing.turn, (right - wide, right + wide, left - wide, left + wide)).tolist()
    start, end = edges[0], edges[3]
    mask = (facing.highest[start:end] >= low) & (facing.lowest[start:end] <= high)
    if wide > 0.0:
        # Only near its edges does it hang on the disc whether the pane is met.
        for part in (slice(start, min(edges[1], end)), slice(max(edges[2], start), end)):
            turn, aside = facing.turn[part], facing.turn_slack[part]
            inside = (turn + aside >= right) & (turn - aside <= left)
            mask[part.start - start : part.stop - start] &= inside
    return start, mask


class Aims(NamedTuple):
    """Where lines from a point toward the sun go, kept within the pane where only the disc's edge shines."""

    turn: FloatArray
    """From the pane's outward normal, anticlockwise, shape (K,). [rad]"""
    rise: FloatArray
    """Per metre on the plan, shape (K,). [-]"""


HAIR_RAD = 1e-5
"""How far inside the pane's edge a line is kept. [rad]"""


def aims_of(facing: Facing, bounds: Bounds, places: IntArray, *, index: int = 0) -> Aims:
    """Lines from one point toward the sun at some steps.

    Parameters
    ----------
    facing : Facing
        The year before the pane's wall.
    bounds : Bounds
        From `bounds_of`.
    places : ndarray of int, shape (K,)
        Places in the order, from `shining`.
    index : int, default 0
        Which of its points.

    Returns
    -------
    Aims
        Each within the pane.
    """
    right, left, low, high = (float(one[index]) for one in bounds)
    side = min(HAIR_RAD, (left - right) / 4.0)
    up = min(HAIR_RAD, (high - low) / 4.0)
    turn = np.clip(facing.turn[places], right + side, left - side)
    profile = np.clip(facing.profile[places], low + up, high - up)
    return Aims(turn, np.tan(profile) * np.cos(turn))
