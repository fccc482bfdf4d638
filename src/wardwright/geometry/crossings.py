"""Where straight paths go through upright boxes: walls, openings, furniture."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray

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
    """Between the path and the normal of the box's line. [rad]"""


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
    way = ends - starts
    to_start = starts[:, None, :2] - boxes.origin
    ux, uy = boxes.along[:, 0], boxes.along[:, 1]
    # Along the box, across it, and up: where each path starts, how far it goes, and between what it is inside.
    u, du = to_start[..., 0] * ux + to_start[..., 1] * uy, way[:, :1] * ux + way[:, 1:2] * uy
    v, dv = to_start[..., 1] * ux - to_start[..., 0] * uy, way[:, 1:2] * ux - way[:, :1] * uy
    z, dz = starts[:, 2:3], way[:, 2:3]
    first, last = np.zeros(u.shape), np.ones(u.shape)
    for at, step, low, high in (
        (u, du, np.zeros_like(boxes.length), boxes.length),
        (v, dv, -boxes.half, boxes.half),
        (z, dz, boxes.low, boxes.high),
    ):
        _cut(first, last, at=at, step=step, between=(low, high))
    is_met = last > first
    part = np.where(is_met, last - first, 0.0)
    length = np.linalg.norm(way, axis=1)[:, None]
    inside, thickness = part * length, 2.0 * boxes.half
    share = np.clip(np.maximum(part * np.abs(dv), inside / ALONG) / thickness, 0.0, 1.0)
    with np.errstate(invalid="ignore", divide="ignore"):
        incidence = np.arccos(np.clip(np.abs(dv) / length, 0.0, 1.0))
    return Passages(
        share,
        np.where(is_met, (first + last) / 2.0, np.nan),
        inside,
        np.where(length > HAIR_M, incidence, 0.0),
    )


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
