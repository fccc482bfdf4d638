"""Straight rays from one point: how far each goes before something stops it."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.panels import Blockers
from wardwright.geometry.polar import CONTACT_M, Through
from wardwright.geometry.raster import BoolArray, FloatArray


def ray_ranges(
    eye: ArrayLike,
    aims: tuple[ArrayLike, ArrayLike],
    blockers: Blockers,
    *,
    through: Sequence[Through] = (),
) -> FloatArray:
    """How far rays go on the plan before the first panel, box or floor stops them.

    Parameters
    ----------
    eye : array_like, shape (3,)
        Where they start: x, y, z. [m]
    aims : tuple of two array_like, shape (H,) each
        Azimuth of each ray, anticlockwise from x [rad], and its rise per metre on the plan [-].
    blockers : Blockers
        What stops them. A box that holds the eye stops nothing.
    through : sequence of Through, default ()
        Level floors and ceilings, which a ray passes only at their holes.

    Returns
    -------
    ndarray, shape (H,)
        Range on the plan, inf where nothing stops it. [m]

    Examples
    --------
    Over, and into, a screen 1 m high:

    >>> from wardwright.geometry.panels import sheets
    >>> screen = sheets([(2.0, -1.0, 2.0, 1.0, 0.0, 1.0)])
    >>> ray_ranges((0.0, 0.0, 2.0), ([0.0, 0.0], [-0.4, -0.6]), screen).tolist()
    [inf, 2.0]
    """
    at = np.asarray(eye, dtype=np.float64)
    azimuth, rise = (np.asarray(value, dtype=np.float64) for value in aims)
    toward = np.stack([np.cos(azimuth), np.sin(azimuth)], axis=1)
    ends, levels = blockers.panels[:, :4], blockers.panels[:, 4:]
    reached = _plan_ranges(at, toward, ends)
    with np.errstate(invalid="ignore"):
        height = at[2] + rise[:, None] * reached
        struck = (height >= levels[:, 0] - 1e-9) & (height <= levels[:, 1] + 1e-9)
    first: FloatArray = np.where(struck, reached, np.inf)
    nearest = np.full(len(azimuth), np.inf)
    number = int(blockers.bodies.max(initial=-1)) + 1
    for body in range(number):
        side = blockers.bodies == body
        nearest = np.minimum(nearest, _into_box(reached[:, side], rise, low=levels[side, 0][0] - at[2],
                                                high=levels[side, 1][0] - at[2]))  # fmt: skip
        first[:, side] = np.inf
    nearest = np.minimum(nearest, first.min(axis=1, initial=np.inf))
    for floor in through:
        nearest = np.minimum(nearest, _floor_range(at, toward, rise, floor=floor))
    return np.asarray(nearest, dtype=np.float64)


def _plan_ranges(eye: FloatArray, toward: FloatArray, ends: FloatArray) -> FloatArray:
    """Range at which each ray crosses each panel on the plan, shape (H, P); inf where it does not."""
    start, end = ends[:, 0:2] - eye[:2], ends[:, 2:4] - eye[:2]
    side_start = toward[:, :1] * start[:, 1] - toward[:, 1:] * start[:, 0]
    side_end = toward[:, :1] * end[:, 1] - toward[:, 1:] * end[:, 0]
    with np.errstate(divide="ignore", invalid="ignore"):
        share = side_start / (side_start - side_end)
        reached = (toward @ start.T) + share * (toward @ (end - start).T)
    crosses = ((side_start <= 0.0) != (side_end <= 0.0)) & (reached > CONTACT_M)
    found: FloatArray = np.where(crosses, reached, np.inf)
    return found


def _into_box(reached: FloatArray, rise: FloatArray, *, low: float, high: float) -> FloatArray:
    """Range at which each ray meets a convex box between two levels above the eye, shape (H,)."""
    crossings = np.isfinite(reached).sum(axis=1)
    near = np.where(crossings >= 2, reached.min(axis=1), 0.0)
    far = np.where(np.isfinite(reached), reached, -np.inf).max(axis=1)
    if low <= 0.0 <= high and bool((crossings == 1).all()):
        return np.full(len(rise), np.inf)
    # Where the ray is between the two levels: an interval of range that must overlap [near, far].
    with np.errstate(divide="ignore", invalid="ignore"):
        one, other = low / rise, high / rise
    begin, end = np.minimum(one, other), np.maximum(one, other)
    level = np.abs(rise) < 1e-12
    begin = np.where(level, -np.inf if low <= 0.0 <= high else np.inf, begin)
    end = np.where(level, np.inf, end)
    met = np.maximum(near, begin)
    return np.where((crossings >= 1) & (met <= np.minimum(far, end)), met, np.inf)


def _floor_range(eye: FloatArray, toward: FloatArray, rise: FloatArray, *, floor: Through) -> FloatArray:
    """Range at which each ray meets a level floor away from its holes, shape (H,); inf where it does not."""
    with np.errstate(divide="ignore", invalid="ignore"):
        reached = (floor.level - eye[2]) / rise
    meets = np.isfinite(reached) & (reached > 0.0)
    reached = np.where(meets, reached, 0.0)
    place = eye[:2] + reached[:, None] * toward
    for hole in floor.holes:
        meets &= ~_in_ring(place, hole)
    return np.where(meets, reached, np.inf)


def _in_ring(places: FloatArray, ring: FloatArray) -> BoolArray:
    """Whether places lie in an outline, by counting crossings; shape (N,)."""
    after = np.roll(ring, -1, axis=0)
    x, y = places[:, :1], places[:, 1:]
    spans = (ring[:, 1] > y) != (after[:, 1] > y)
    rise = np.where(after[:, 1] == ring[:, 1], 1.0, after[:, 1] - ring[:, 1])
    crossed = spans & (ring[:, 0] + (y - ring[:, 1]) / rise * (after[:, 0] - ring[:, 0]) > x)
    odd: BoolArray = crossed.sum(axis=1) % 2 == 1
    return odd
