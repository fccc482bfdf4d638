"""What stands before the sun: lines from one point held against panels and boxes."""

from __future__ import annotations

import math

import numpy as np

from wardwright.geometry.panels import Blockers
from wardwright.geometry.polar import CONTACT_M
from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.geometry.rays import ray_ranges
from wardwright.physics.sunlight.panes import Aims

PIECE = 20_000_000
"""Lines times panels that are looked at at once: what keeps memory small. [-]"""
WEDGE = 2000
"""Lines that are looked at together: of a year's lines in the order of their turns they make a narrow sheaf. [-]"""
LESS_THAN_HALF_RAD = math.radians(178.5)
"""A sheaf wider than this is not held against single panels. [rad]"""


def reach_the_sun(
    eye: tuple[float, float, float], aims: Aims, blockers: Blockers, *, normal: float
) -> BoolArray:
    """Which lines from a point meet nothing on their way to the sun.

    Parameters
    ----------
    eye : tuple of float
        x, y, and height above the house's zero. [m]
    aims : Aims
        The lines, K of them; in the order of their turns it is quickest.
    blockers : Blockers
        Panels and boxes with heights above the house's zero. [m]
    normal : float
        Direction on the plan that turns are counted from, anticlockwise from x. [rad]

    Returns
    -------
    ndarray of bool, shape (K,)
        True where nothing stops it.
    """
    free = np.ones(len(aims.turn), dtype=np.bool_)
    if not len(free):
        return free
    near = blockers if len(free) <= WEDGE else in_the_way(eye, aims, blockers, normal=normal)
    piece = min(WEDGE, max(1, PIECE // (8 * max(1, len(near.panels)))))
    for start in range(0, len(free), piece):
        part = slice(start, start + piece)
        free[part] = _are_free(eye, Aims(aims.turn[part], aims.rise[part]), near, normal=normal)
    return free


def _are_free(eye: tuple[float, float, float], aims: Aims, blockers: Blockers, *, normal: float) -> BoolArray:
    """Which of a few lines meet nothing: only what reaches into their own sheaf is held against each."""
    near = in_the_way(eye, aims, blockers, normal=normal)
    if not len(near.panels):
        return np.ones(len(aims.turn), dtype=np.bool_)
    if _is_shut_off(eye, aims, near, normal=normal):
        return np.zeros(len(aims.turn), dtype=np.bool_)
    return np.isinf(ray_ranges(eye, (normal + aims.turn, aims.rise), near))


def _is_shut_off(eye: tuple[float, float, float], aims: Aims, blockers: Blockers, *, normal: float) -> bool:
    """Whether one panel alone stands before a whole sheaf of lines, as a wall of another room does."""
    if float(aims.rise.min()) < 0.0 or float(np.ptp(aims.turn)) > LESS_THAN_HALF_RAD:
        return False
    panels = blockers.panels[(blockers.bodies < 0) & (blockers.panels[:, 4] <= eye[2])]
    ends = panels[:, :4].reshape(-1, 2, 2) - np.asarray(eye[:2])
    farthest = np.zeros(len(panels))
    spans = np.ones(len(panels), dtype=np.bool_)
    for angle in (normal + float(aims.turn.min()) - 1e-6, normal + float(aims.turn.max()) + 1e-6):
        side = _side(ends, angle)
        spans &= side[:, 0] * side[:, 1] < 0.0
        with np.errstate(divide="ignore", invalid="ignore"):
            share = side[:, 0] / (side[:, 0] - side[:, 1])
        place = ends[:, 0] + share[:, None] * (ends[:, 1] - ends[:, 0])
        along = place @ np.array([math.cos(angle), math.sin(angle)])
        spans &= along > 2.0 * CONTACT_M
        farthest = np.maximum(farthest, along)
    return bool((spans & (panels[:, 5] >= eye[2] + float(aims.rise.max()) * farthest)).any())


def in_the_way(eye: tuple[float, float, float], aims: Aims, blockers: Blockers, *, normal: float) -> Blockers:
    """The blockers that some of a sheaf of rising lines may meet; boxes are kept whole.

    Parameters
    ----------
    eye : tuple of float
        x, y, and height above the house's zero. [m]
    aims : Aims
        The lines, at least one, within a half turn.
    blockers : Blockers
        Panels and boxes with heights above the house's zero. [m]
    normal : float
        Direction on the plan that turns are counted from, anticlockwise from x. [rad]

    Returns
    -------
    Blockers
        Those that reach into the sheaf on the plan and are as high as its lowest line there.
    """
    right, left = normal + float(aims.turn.min()) - 1e-6, normal + float(aims.turn.max()) + 1e-6
    ends = blockers.panels[:, :4].reshape(-1, 2, 2) - np.asarray(eye[:2])
    # Wholly to the right of the rightmost line, to the left of the leftmost, or behind both.
    off_right = (_side(ends, right) < 0.0).all(axis=1)
    off_left = (_side(ends, left) > 0.0).all(axis=1)
    ahead = (ends @ np.array([math.cos(normal), math.sin(normal)]) > -1e-9).any(axis=1)
    # No line comes down again: a panel that is lower than the lowest line at its nearest hides nothing.
    lowest = eye[2] + float(aims.rise.min()) * _nearest(ends)
    reached = ahead & ~off_right & ~off_left & (blockers.panels[:, 5] >= lowest - 1e-6)
    boxed = blockers.bodies >= 0
    if boxed.any():
        kept = np.zeros(int(blockers.bodies.max()) + 1, dtype=np.bool_)
        kept[blockers.bodies[boxed & ahead & ~(off_right | off_left)]] = True
        reached[boxed] = kept[blockers.bodies[boxed]]
    return Blockers(blockers.panels[reached], blockers.bodies[reached])


def beyond(
    blockers: Blockers, point: tuple[float, float], *, normal: tuple[float, float], edge: float
) -> Blockers:
    """The blockers that reach farther out than a line across the plan; boxes are kept whole.

    Parameters
    ----------
    blockers : Blockers
        Panels and boxes.
    point : tuple of float
        A place on the plan. [m]
    normal : tuple of float
        Unit vector outward. [-]
    edge : float
        How far out from the place the line is. [m]

    Returns
    -------
    Blockers
        Those beyond it, at least in part.
    """
    ends = blockers.panels[:, :4].reshape(-1, 2, 2) - np.asarray(point)
    kept = (ends @ np.asarray(normal) > edge).any(axis=1)
    boxed = blockers.bodies >= 0
    if boxed.any():
        whole = np.zeros(int(blockers.bodies.max()) + 1, dtype=np.bool_)
        whole[blockers.bodies[boxed & kept]] = True
        kept[boxed] = whole[blockers.bodies[boxed]]
    return Blockers(blockers.panels[kept], blockers.bodies[kept])


def _side(ends: FloatArray, angle: float) -> FloatArray:
    """On which side of a direction points lie: above zero to its left."""
    side: FloatArray = math.cos(angle) * ends[..., 1] - math.sin(angle) * ends[..., 0]
    return side


def _nearest(ends: FloatArray) -> FloatArray:
    """How near the origin each stretch comes, shape (P,)."""
    start, span = ends[:, 0], ends[:, 1] - ends[:, 0]
    length = (span**2).sum(axis=1)
    share = np.clip(-(start * span).sum(axis=1) / np.maximum(length, 1e-12), 0.0, 1.0)
    place = start + share[:, None] * span
    near: FloatArray = np.hypot(place[:, 0], place[:, 1])
    return near
