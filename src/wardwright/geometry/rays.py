"""Straight rays from one point: how far each goes before something stops it."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.panels import Blockers
from wardwright.geometry.polar import CONTACT_M, Through
from wardwright.geometry.raster import BoolArray, FloatArray, IntArray


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
    nearest = np.full(len(azimuth), np.inf)
    for floor in through:
        nearest = np.minimum(nearest, _floor_range(at, toward, rise, floor=floor))
    met = _at_heights(blockers, *_heights_passed(at[2], rise, nearest))
    levels, boxed = met.panels[:, 4:], met.bodies >= 0
    reached = _plan_ranges(at, toward, met.panels[:, :4])
    with np.errstate(invalid="ignore"):
        height = at[2] + rise[:, None] * reached
        struck = (height >= levels[:, 0] - 1e-9) & (height <= levels[:, 1] + 1e-9) & ~boxed
    nearest = np.minimum(nearest, np.where(struck, reached, np.inf).min(axis=1, initial=np.inf))
    if boxed.any():
        side = np.nonzero(boxed)[0][np.argsort(met.bodies[boxed], kind="stable")]
        first = np.nonzero(np.diff(met.bodies[side], prepend=-1))[0]
        into = _into_boxes(reached[:, side], rise[:, None], first=first, levels=levels[side[first]] - at[2])
        nearest = np.minimum(nearest, into.min(axis=1))
    return np.asarray(nearest, dtype=np.float64)


def _heights_passed(eye: float, rise: FloatArray, ends: FloatArray) -> tuple[float, float]:
    """Lowest and highest that rays come before their ends."""
    with np.errstate(invalid="ignore"):
        last = np.where(rise == 0.0, 0.0, rise * ends)
    return eye + float(last.min(initial=0.0)), eye + float(last.max(initial=0.0))


def _at_heights(blockers: Blockers, low: float, high: float) -> Blockers:
    """Those that reach between two heights."""
    keep = (blockers.panels[:, 5] >= low - 1e-6) & (blockers.panels[:, 4] <= high + 1e-6)
    return Blockers(blockers.panels[keep], blockers.bodies[keep])


def _plan_ranges(eye: FloatArray, toward: FloatArray, ends: FloatArray) -> FloatArray:
    """Range at which each ray crosses each panel on the plan, shape (H, P); inf where it does not."""
    start, end = ends[:, 0:2] - eye[:2], ends[:, 2:4] - eye[:2]
    side_start = toward[:, :1] * start[:, 1] - toward[:, 1:] * start[:, 0]
    side_end = toward[:, :1] * end[:, 1] - toward[:, 1:] * end[:, 0]
    found = np.full(side_start.shape, np.inf)
    # Few rays cross any one panel: only of those it is worked out where.
    crossing = np.flatnonzero((side_start <= 0.0) != (side_end <= 0.0))
    ray, panel = np.divmod(crossing, len(ends))
    one, other = side_start.ravel()[crossing], side_end.ravel()[crossing]
    (cos, sin), (x, y), (span_x, span_y) = toward[ray].T, start[panel].T, (end - start)[panel].T
    reached = cos * x + sin * y
    reached += one / (one - other) * (cos * span_x + sin * span_y)
    is_ahead = reached > CONTACT_M
    found.ravel()[crossing[is_ahead]] = reached[is_ahead]
    return found


def _into_boxes(reached: FloatArray, rise: FloatArray, *, first: IntArray, levels: FloatArray) -> FloatArray:
    """Range at which each ray meets each of B convex boxes between two levels above the eye, shape (H, B).

    `reached` has the sides of one box after those of another, each box from an index in `first` on.
    """
    crossed = np.isfinite(reached)
    crossings = np.add.reduceat(crossed, first, axis=1, dtype=np.int64)
    near = np.where(crossings >= 2, np.minimum.reduceat(reached, first, axis=1), 0.0)
    far = np.maximum.reduceat(np.where(crossed, reached, -np.inf), first, axis=1)
    low, high = levels[:, 0], levels[:, 1]
    beside = (low <= 0.0) & (high >= 0.0)
    # Where the ray is between the two levels: an interval of range that must overlap [near, far].
    with np.errstate(divide="ignore", invalid="ignore"):
        one, other = low / rise, high / rise
    level = np.abs(rise) < 1e-12
    begin = np.where(level, np.where(beside, -np.inf, np.inf), np.minimum(one, other))
    end = np.where(level, np.inf, np.maximum(one, other))
    met = np.maximum(near, begin)
    holds_eye = beside & (crossings == 1).all(axis=0)
    return np.where((crossings >= 1) & (met <= np.minimum(far, end)) & ~holds_eye, met, np.inf)


def _floor_range(eye: FloatArray, toward: FloatArray, rise: FloatArray, *, floor: Through) -> FloatArray:
    """Range at which each ray meets a level floor away from its holes, shape (H,); inf where it does not."""
    with np.errstate(divide="ignore", invalid="ignore"):
        reached = (floor.level - eye[2]) / rise
    meets = np.isfinite(reached) & (reached > 0.0)
    if not meets.any():
        return np.full(len(rise), np.inf)
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
