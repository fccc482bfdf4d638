"""Where straight paths go through upright boxes: walls, openings, furniture."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray

HAIR_M = 1e-9
"""A path that moves less than this along an axis is level to it. [m]"""
AT_ONCE = 2048
"""So many paths are worked out together, which bounds the memory. [-]"""
ALONG = 4.0
"""A path that runs inside a box along it for so many times its thickness is through it. [-] (assumption)"""


class Boxes(NamedTuple):
    """Upright boxes about straight lines of the plan, B of them."""

    origin: FloatArray
    """First end of the line, shape (B, 2). [m]"""
    along: FloatArray
    """Unit vector of the line, shape (B, 2). [-]"""
    length: FloatArray
    half: FloatArray
    """Half its thickness. [m]"""
    low: FloatArray
    high: FloatArray
    """Foot and top. [m]"""


class Passages(NamedTuple):
    """How N paths meet B boxes."""

    share: FloatArray
    """How much of the thickness each path goes through, 0 to 1, shape (N, B). [-]"""
    at: FloatArray
    """How far along the path the middle of that is, 0 to 1; nan where it does not meet it. [-]"""
    inside: FloatArray
    """Length within the box. [m]"""
    incidence: FloatArray
    """Between the path and the normal of the box's line; 0 for a path that comes nowhere near. [rad]"""


def passages(starts: FloatArray, ends: FloatArray, boxes: Boxes) -> Passages:
    """How straight paths go through upright boxes.

    A path that only clips a corner goes through a share of the box, so that where two walls meet nothing is counted
    twice or left out, and nothing jumps when an end is moved a little.

    Parameters
    ----------
    starts, ends : ndarray, shape (N, 3)
        Both ends of each path. [m]
    boxes : Boxes
        B boxes. [m]

    Returns
    -------
    Passages
        Four arrays of shape (N, B). [-]
    """
    parts = [
        _passages(starts[i : i + AT_ONCE], ends[i : i + AT_ONCE], boxes)
        for i in range(0, max(1, len(starts)), AT_ONCE)
    ]
    if len(parts) == 1:
        return parts[0]
    return Passages(*(np.concatenate(each) for each in zip(*parts, strict=True)))


def _passages(starts: FloatArray, ends: FloatArray, boxes: Boxes) -> Passages:
    met = _may_meet(starts, ends, boxes)
    # Few paths come anywhere near a box: all else is worked out for those pairs only.
    path, box = np.nonzero(met)
    way, length = (ends - starts)[path], np.linalg.norm(ends - starts, axis=1)[path]
    to_start = starts[path, :2] - boxes.origin[box]
    ux, uy = boxes.along[box, 0], boxes.along[box, 1]
    # Along the box, across it, and up: where each path starts, how far it goes, and between what it is inside.
    u, du = to_start[:, 0] * ux + to_start[:, 1] * uy, way[:, 0] * ux + way[:, 1] * uy
    v, dv = to_start[:, 1] * ux - to_start[:, 0] * uy, way[:, 1] * ux - way[:, 0] * uy
    half = boxes.half[box]
    first, last = np.zeros(u.shape), np.ones(u.shape)
    for at, step, low, high in (
        (u, du, np.zeros(u.shape), boxes.length[box]),
        (v, dv, -half, half),
        (starts[path, 2], way[:, 2], boxes.low[box], boxes.high[box]),
    ):
        _cut(first, last, at=at, step=step, between=(low, high))
    is_met = last > first
    part = np.where(is_met, last - first, 0.0)
    inside, thickness = part * length, 2.0 * half
    share = np.clip(np.maximum(part * np.abs(dv), inside / ALONG) / thickness, 0.0, 1.0)
    with np.errstate(invalid="ignore", divide="ignore"):
        incidence = np.arccos(np.clip(np.abs(dv) / length, 0.0, 1.0))
    return Passages(
        _spread(share, met, blank=0.0),
        _spread(np.where(is_met, (first + last) / 2.0, np.nan), met, blank=np.nan),
        _spread(inside, met, blank=0.0),
        _spread(np.where(length > HAIR_M, incidence, 0.0), met, blank=0.0),
    )


def _may_meet(starts: FloatArray, ends: FloatArray, boxes: Boxes) -> BoolArray:
    """Which paths come into the upright space between the least and greatest x, y and height of each box; (N, B)."""
    across = boxes.half[:, None] * np.abs(boxes.along[:, ::-1])
    last = boxes.origin + boxes.length[:, None] * boxes.along
    lowest = np.column_stack([np.minimum(boxes.origin, last) - across, boxes.low]) - HAIR_M
    highest = np.column_stack([np.maximum(boxes.origin, last) + across, boxes.high]) + HAIR_M
    low, high = np.minimum(starts, ends), np.maximum(starts, ends)
    met: BoolArray = np.ones((len(starts), len(boxes.length)), dtype=np.bool_)
    for axis in range(3):
        met &= low[:, axis, None] <= highest[:, axis]
        met &= high[:, axis, None] >= lowest[:, axis]
    return met


def _spread(values: FloatArray, where: BoolArray, *, blank: float) -> FloatArray:
    """Values of some pairs in a table of all."""
    table = np.full(where.shape, blank)
    table[where] = values
    return table


def _cut(
    first: FloatArray,
    last: FloatArray,
    *,
    at: FloatArray,
    step: FloatArray,
    between: tuple[FloatArray, FloatArray],
) -> None:
    """Narrow the part of each path that is inside to one axis of the boxes; an empty part has no length."""
    low, high = between
    is_level = np.abs(step) < HAIR_M
    safe = np.where(is_level, 1.0, step)
    one, other = (low - at) / safe, (high - at) / safe
    is_out = is_level & ((at < low) | (at >= high))
    enter = np.where(is_level, np.where(is_out, 2.0, 0.0), np.minimum(one, other))
    leave = np.where(is_level, 1.0, np.maximum(one, other))
    np.maximum(first, enter, out=first)
    np.minimum(last, leave, out=last)
