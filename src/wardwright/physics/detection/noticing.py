"""How far somebody walks before a movement detector notices: zones filled and left, one after another.

Limits, said wherever this is used: crawling passes under most zones; movement too slow for the lower edge of the
rate band is not noticed at all; the layout of the zones is typical, not a maker's.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.physics.detection.walkers import Body
from wardwright.physics.detection.walks import Walks
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


def noticed_at(
    walks: Walks, floors: FloatArray, detector: Detector, *, reaches: ArrayLike, body: Body
) -> FloatArray:
    """How far somebody walks on each of some ways before the detector notices, at several reaches.

    An edge is a half that is filled or left, strongly and quickly enough. Noticed is when enough edges of
    different halves lie within the window.

    Parameters
    ----------
    walks : Walks
        The ways, W of them, points a few centimetres apart.
    floors : ndarray, shape (N,)
        What is stood on at each point. [m]
    detector : Detector
        The detector.
    reaches : array_like, shape (L,)
        How far it senses when nothing stops it. [m]
    body : Body
        The walker.

    Returns
    -------
    ndarray, shape (W, L)
        Walked distance on the plan, inf where never. [m]
    """
    limits = np.asarray(reaches, dtype=np.float64)
    found = np.full((len(walks.parts), len(limits)), np.inf)
    whole = Walk(walks.points, floors, walks.clock)
    rows, of_walk = _worth_looking_at(
        _near_rays(whole, detector, reach=float(limits.max()), body=body), walks.parts
    )
    if not len(rows):
        return found
    some = Walk(whole.places[rows], whole.floors[rows], whole.clock[rows])
    filled, near, along = filled_halves(some, detector, body=body)
    # The least of the reaches that each filling lies within, as its place in their order: each reach has its own
    # fillings, and these lie within one another.
    order = np.argsort(limits)
    least = np.full(filled.shape, len(limits))
    least[filled] = np.searchsorted(limits[order], near[filled])
    row, half = np.nonzero((least[1:] != least[:-1]) & (of_walk[1:] == of_walk[:-1])[:, None])
    strong = _strong(some, detector, row=row, half=half, along=along, body=body)
    row, half = row[strong], half[strong]
    was, now = least[row, half], least[row + 1, half]
    edges = Edges(row + 1, half, np.minimum(was, now), np.maximum(was, now))
    for walk, at, index in _first_noticed(edges, some.clock, of_walk, detector=detector, count=len(limits)):
        found[walk, order[index]] = walks.walked[rows[at]]
    return found


def _worth_looking_at(near: BoolArray, parts: Sequence[slice]) -> tuple[IntArray, IntArray]:
    """The points of each walk from just before the first near one to just after the last, and whose they are.

    One point before and after, so that coming into reach and going out of it are edges too.
    """
    rows, of_walk = [np.zeros(0, dtype=np.int64)], [np.zeros(0, dtype=np.int64)]
    for index, part in enumerate(parts):
        within = np.nonzero(near[part])[0]
        if len(within) and part.stop - part.start > 1:
            first, last = int(within[0]) + part.start - 1, int(within[-1]) + part.start + 2
            rows.append(np.arange(max(part.start, first), min(part.stop, last)))
            of_walk.append(np.full(len(rows[-1]), index))
    return np.concatenate(rows), np.concatenate(of_walk)


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


class Edges(NamedTuple):
    """Halves that are filled or left, strongly and quickly enough, in the order of rows; shape (E,) each."""

    row: IntArray
    """The point at which they are. [-]"""
    half: IntArray
    """Of the detector. [-]"""
    low: IntArray
    """The edge is one for the reaches from this on, in their order ... [-]"""
    high: IntArray
    """... up to before this. [-]"""


def _first_noticed(
    edges: Edges, clock: FloatArray, of_walk: IntArray, *, detector: Detector, count: int
) -> Iterator[tuple[int, IntArray, IntArray]]:
    """Of each walk, the first points at which enough edges lie within the window, and for which of the reaches."""
    if not len(edges.row):
        return
    # Rows with an edge are enough: between them edges only go out of the window.
    is_new = np.ones(len(edges.row), dtype=np.bool_)
    is_new[1:] = edges.row[1:] != edges.row[:-1]
    at, number = edges.row[is_new], np.cumsum(is_new) - 1
    # Reaches between which no edge comes or goes are alike.
    met = np.bincount(np.concatenate([edges.low, edges.high]), minlength=count + 1)
    alike = np.cumsum((met[:count] > 0) & (np.arange(count) > 0))
    last = np.full((len(at), int(alike[-1]) + 1, len(detector.ends)), -np.inf)
    for index in np.nonzero(np.diff(alike, prepend=-1))[0].tolist():
        mine = (edges.low <= index) & (index < edges.high)
        last[number[mine], alike[index], edges.half[mine]] = clock[edges.row[mine]]
    walk_of_row = of_walk[at]
    begins = np.nonzero(np.diff(walk_of_row, prepend=-1))[0].tolist()
    parts = [slice(*pair) for pair in pairwise([*begins, len(at)])]
    for part in parts:
        # Time of each half's last edge, at every such point of one walk.
        np.maximum.accumulate(last[part], axis=0, out=last[part])
    within = np.count_nonzero(clock[at][:, None, None] - last <= detector.needs.window, axis=2)
    together = (within >= detector.needs.edges)[:, alike]
    for part in parts:
        some = np.nonzero(together[part].any(axis=0))[0]
        yield int(walk_of_row[part.start]), at[part][together[part].argmax(axis=0)[some]], some


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
