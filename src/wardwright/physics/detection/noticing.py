"""How far somebody walks before a movement detector notices: zones filled and left, one after another.

Limits, said wherever this is used: crawling passes under most zones; movement too slow for the lower edge of the
rate band is not noticed at all; the layout of the zones is typical, not a maker's.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.physics.detection.walkers import Body
from wardwright.physics.detection.zones import (
    BEAM_SHAPE,
    Halves,
    beam_width,
    pair_rate,
    rate_gain,
    zone_amplitude,
)

_HAIR_M = 1e-6
# Given to a block of places so that rounding leaves none out.


class Needs(NamedTuple):
    """What makes a detector signal."""

    edges: int
    """Edges of different halves. [-]"""
    window: float
    """Within this time. [s]"""
    split: float
    """Between the two halves of a pair. [rad]"""
    contrast: float
    """How many times the least contrast the body has. [-]"""


class Walk(NamedTuple):
    """Somebody's way, point by point."""

    places: FloatArray
    """On the plan, shape (N, 2). [m]"""
    floors: FloatArray
    """What is stood on, shape (N,). [m]"""
    clock: FloatArray
    """Time, shape (N,). [s]"""

    def part(self, rows: slice) -> Walk:
        """Some of the points."""
        return Walk(self.places[rows], self.floors[rows], self.clock[rows])


class Detector(NamedTuple):
    """A movement detector in its place."""

    eye: FloatArray
    """x, y, z, shape (3,). [m]"""
    halves: Halves
    """Its rays, H of them."""
    ends: FloatArray
    """Plan range at which something stops each ray, shape (H,). [m]"""
    needs: Needs
    """What makes it signal."""


def filled_halves(walk: Walk, detector: Detector, *, body: Body) -> tuple[BoolArray, FloatArray, FloatArray]:
    """Which halves a body fills at each place, reach apart.

    Parameters
    ----------
    walk : Walk
        The places, N of them.
    detector : Detector
        The rays, H of them.
    body : Body
        The walker.

    Returns
    -------
    filled : ndarray of bool, shape (N, H)
        Whether the ray passes within the radius at a height between floor and top, before it ends.
    near : ndarray, shape (N, H)
        Plan range at which the ray meets the body: a shorter reach than this does not. [m]
    along : ndarray, shape (N, H)
        Plan range of the body's middle along the ray. [m]
    """
    offset = walk.places - detector.eye[:2]
    cos, sin = np.cos(detector.halves.azimuth), np.sin(detector.halves.azimuth)
    along = offset[:, :1] * cos + offset[:, 1:] * sin
    aside = np.abs(offset[:, 1:] * cos - offset[:, :1] * sin)
    near = np.maximum(along - np.sqrt(np.maximum(body.radius**2 - aside**2, 0.0)), 0.0)
    height = detector.eye[2] + detector.halves.rise * along - walk.floors[:, None]
    filled = (aside <= body.radius) & (along > 0.0) & (height >= 0.0) & (height <= body.height)
    return filled & (near <= detector.ends), near, along


def noticed_at(walk: Walk, detector: Detector, *, reaches: ArrayLike, body: Body) -> FloatArray:
    """How far somebody walks before the detector notices, at several reaches.

    An edge is a half that is filled or left, strongly and quickly enough. Noticed is when enough edges of
    different halves lie within the window.

    Parameters
    ----------
    walk : Walk
        The way, points a few centimetres apart.
    detector : Detector
        The detector.
    reaches : array_like, shape (L,)
        How far it senses when nothing stops it. [m]
    body : Body
        The walker.

    Returns
    -------
    ndarray, shape (L,)
        Walked distance on the plan, inf where never. [m]
    """
    limits = np.asarray(reaches, dtype=np.float64)
    found = np.full(len(limits), np.inf)
    within = np.nonzero(_near_rays(walk, detector, reach=float(limits.max()), body=body))[0]
    if len(walk.places) < 2 or not len(within):
        return found
    # One point before and after, so that coming into reach and going out of it are edges too.
    part = slice(max(0, int(within[0]) - 1), int(within[-1]) + 2)
    some = walk.part(part)
    filled, near, along = filled_halves(some, detector, body=body)
    row, half = np.nonzero(filled)
    beyond = near[row, half]
    # Reaches that as many fillings lie within share their fillings, since these lie within one another.
    reached = [int(np.count_nonzero(beyond <= limit)) for limit in limits]
    points = {
        number: _first_noticed(some, detector, sensed=filled & (near <= limit), along=along, body=body)
        for number, limit in dict(zip(reached, limits, strict=True)).items()
    }
    steps = np.diff(walk.places, axis=0)
    walked = np.concatenate([[0.0], np.cumsum(np.hypot(steps[:, 0], steps[:, 1]))])
    for index, number in enumerate(reached):
        point = points[number]
        if point >= 0:
            found[index] = walked[part.start + point]
    return found


def _near_rays(walk: Walk, detector: Detector, *, reach: float, body: Body) -> BoolArray:
    """Which points lie in a block that holds every place where a body might fill a half, shape (N,)."""
    offset = walk.places - detector.eye[:2]
    azimuth, rise = detector.halves
    far = np.minimum(detector.ends, reach)
    more = body.radius + _HAIR_M
    near: BoolArray = np.hypot(offset[:, 0], offset[:, 1]) <= reach + more
    for axis, way in enumerate((np.cos(azimuth), np.sin(azimuth))):
        tips = far * way
        near &= (offset[:, axis] >= min(float(tips.min()), 0.0) - more) & (
            offset[:, axis] <= max(float(tips.max()), 0.0) + more
        )
    heights = detector.eye[2] + rise * (far + more)
    low, high = min(float(heights.min()), detector.eye[2]), max(float(heights.max()), detector.eye[2])
    near &= (walk.floors + body.height >= low - _HAIR_M) & (walk.floors <= high + _HAIR_M)
    return near


def _first_noticed(
    walk: Walk, detector: Detector, *, sensed: BoolArray, along: FloatArray, body: Body
) -> int:
    """The first point at which enough edges lie within the window; -1: none."""
    needed = detector.needs.edges
    row, half = np.nonzero(sensed[1:] != sensed[:-1])
    strong = _strong(walk, detector, row=row, half=half, along=along, body=body)
    row, half = row[strong], half[strong]
    if not len(row):
        return -1
    # Rows with an edge are enough: between them edges only go out of the window.
    first = np.ones(len(row), dtype=np.bool_)
    first[1:] = row[1:] != row[:-1]
    last = np.full((int(np.count_nonzero(first)), sensed.shape[1]), -np.inf)
    last[np.cumsum(first) - 1, half] = walk.clock[row + 1]
    # Time of each half's last edge, at every such point.
    np.maximum.accumulate(last, axis=0, out=last)
    at = row[first] + 1
    together = np.count_nonzero(walk.clock[at, None] - last <= detector.needs.window, axis=1) >= needed
    return int(at[int(together.argmax())]) if together.any() else -1


def _strong(
    walk: Walk, detector: Detector, *, row: IntArray, half: IntArray, along: FloatArray, body: Body
) -> BoolArray:
    """Whether changes of halves between a point and the next are strong and quick enough, shape (E,)."""
    needs = detector.needs
    azimuth, rise = detector.halves.azimuth[half], detector.halves.rise[half]
    middle = np.maximum((along[row + 1, half] + along[row, half]) / 2.0, 1e-6)
    lasting = walk.clock[row + 1] - walk.clock[row]
    velocity = np.zeros((len(row), 2))
    np.divide(
        walk.places[row + 1] - walk.places[row], lasting[:, None], out=velocity, where=lasting[:, None] > 0.0
    )
    cos, sin = np.cos(azimuth), np.sin(azimuth)
    across = velocity[:, 1] * cos - velocity[:, 0] * sin
    # Toward it, a ray that slopes moves up or down the body; a half is higher than wide.
    climbing = (velocity[:, 0] * cos + velocity[:, 1] * sin) * rise / BEAM_SHAPE
    rate = pair_rate(np.hypot(across, climbing), middle, split=needs.split)
    stood = (walk.floors[row + 1] + walk.floors[row]) / 2.0
    level = detector.eye[2] + rise * middle
    half_high = BEAM_SHAPE * beam_width(middle, needs.split) / 2.0
    within = np.minimum(level + half_high, stood + body.height) - np.maximum(level - half_high, stood)
    amplitude = zone_amplitude(
        middle,
        2.0 * body.radius,
        height_within=np.maximum(within, 0.0),
        split=needs.split,
        contrast=needs.contrast,
    )
    strong: BoolArray = amplitude * rate_gain(rate) >= 1.0
    return strong
