"""How far somebody walks before a movement detector notices: zones filled and left, one after another.

Limits, said wherever this is used: crawling passes under most zones; movement too slow for the lower edge of the
rate band is not noticed at all; the layout of the zones is typical, not a maker's.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.physics.detection.walkers import Body
from wardwright.physics.detection.zones import (
    BEAM_SHAPE,
    Halves,
    beam_width,
    pair_rate,
    rate_gain,
    zone_amplitude,
)


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
    steps = np.diff(walk.places, axis=0)
    walked = np.concatenate([[0.0], np.cumsum(np.hypot(steps[:, 0], steps[:, 1]))])
    offset = walk.places - detector.eye[:2]
    within = np.nonzero(np.hypot(offset[:, 0], offset[:, 1]) <= limits.max() + body.radius)[0]
    if len(walk.places) < 2 or not len(within):
        return np.full(len(limits), np.inf)
    # One point before and after, so that coming into reach and going out of it are edges too.
    part = slice(max(0, int(within[0]) - 1), int(within[-1]) + 2)
    return _first_noticed(walk.part(part), detector, reaches=limits, body=body, walked=walked[part])


def _first_noticed(
    walk: Walk, detector: Detector, *, reaches: FloatArray, body: Body, walked: FloatArray
) -> FloatArray:
    filled, near, along = filled_halves(walk, detector, body=body)
    busy = np.nonzero(filled.any(axis=0))[0]
    filled, near, along = filled[:, busy], near[:, busy], along[:, busy]
    some = detector._replace(halves=Halves(detector.halves.azimuth[busy], detector.halves.rise[busy]))
    sensed = filled & (near <= reaches[:, None, None])
    edges = np.diff(sensed, axis=1) & _strong(walk, some, along=along, body=body)
    needed = detector.needs.edges
    number = np.count_nonzero(edges.any(axis=1), axis=1)
    times = walk.clock[1:, None]
    found = np.full(len(reaches), np.inf)
    for row in np.nonzero(number >= needed)[0]:
        # Time of each half's last edge, at every point.
        last = np.maximum.accumulate(np.where(edges[row], times, -np.inf), axis=0)
        together = np.count_nonzero(times - last <= detector.needs.window, axis=1) >= needed
        if together.any():
            found[row] = walked[int(together.argmax()) + 1]
    return found


def _strong(walk: Walk, detector: Detector, *, along: FloatArray, body: Body) -> BoolArray:
    """Whether a change of a half between two points would be strong and quick enough, shape (N - 1, H)."""
    halves, needs = detector.halves, detector.needs
    middle = np.maximum((along[1:] + along[:-1]) / 2.0, 1e-6)
    lasting = np.diff(walk.clock)[:, None]
    velocity = np.zeros((len(lasting), 2))
    np.divide(np.diff(walk.places, axis=0), lasting, out=velocity, where=lasting > 0.0)
    cos, sin = np.cos(halves.azimuth), np.sin(halves.azimuth)
    across = velocity[:, 1:] * cos - velocity[:, :1] * sin
    # Toward it, a ray that slopes moves up or down the body; a half is higher than wide.
    climbing = (velocity[:, :1] * cos + velocity[:, 1:] * sin) * halves.rise / BEAM_SHAPE
    rate = pair_rate(np.hypot(across, climbing), middle, split=needs.split)
    stood = ((walk.floors[1:] + walk.floors[:-1]) / 2.0)[:, None]
    level = detector.eye[2] + halves.rise * middle
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
