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
        Plan range at which the ray meets the body, inf where it is not filled: a shorter reach does not. [m]
    along : ndarray, shape (N, H)
        Plan range of the body's middle along the ray. [m]
    """
    rays, whose = _rays_of([detector]), np.zeros(len(walk.places), dtype=np.int64)
    row, half, least = _filled(walk, rays, whose, body=body)
    near = np.full((len(walk.places), len(detector.ends)), np.inf)
    near[row, half] = least
    every = np.indices(near.shape)
    return np.isfinite(near), near, _along(walk.places, rays, (every[0], whose[every[0]], every[1]))


class _Rays(NamedTuple):
    """The rays of several detectors of one sheet, a row for each."""

    eye: FloatArray
    """Shape (D, 3). [m]"""
    cos: FloatArray
    sin: FloatArray
    """Of the azimuths, shape (D, H). [-]"""
    rise: FloatArray
    """Shape (D, H). [-]"""
    ends: FloatArray
    """Shape (D, H). [m]"""


def _rays_of(detectors: Sequence[Detector]) -> _Rays:
    azimuth = np.array([one.halves.azimuth for one in detectors])
    return _Rays(
        np.array([one.eye for one in detectors]),
        np.cos(azimuth),
        np.sin(azimuth),
        np.array([one.halves.rise for one in detectors]),
        np.array([one.ends for one in detectors]),
    )


_At = tuple[IntArray, IntArray, IntArray]
# Number of a place, of a detector and of a half.


def _along(places: FloatArray, rays: _Rays, at: _At) -> FloatArray:
    """Plan range of a body's middle along a ray. [m]"""
    place, whose, half = at
    x, y = places[place, 0] - rays.eye[whose, 0], places[place, 1] - rays.eye[whose, 1]
    along: FloatArray = x * rays.cos[whose, half] + y * rays.sin[whose, half]
    return along


def _true_in(table: BoolArray) -> tuple[IntArray, IntArray]:
    """Rows and columns that are True: where few are, sooner than numpy's own."""
    row, column = np.divmod(np.flatnonzero(table), table.shape[1])
    return row, column


def _filled(walk: Walk, rays: _Rays, whose: IntArray, *, body: Body) -> tuple[IntArray, IntArray, FloatArray]:
    """As `filled_halves`, each place by the rays of one detector: which place, which half, and how near. [m]

    The places of each detector are together, in the order of the detectors.
    """
    rows, halves, besides = [], [], []
    # Detector by detector, so that what is worked out on the way stays in the processor's own memory.
    for detector, (first, last) in enumerate(
        pairwise(np.searchsorted(whose, range(len(rays.eye) + 1)).tolist())
    ):
        offset = walk.places[first:last] - rays.eye[detector, :2]
        aside = np.abs(offset[:, 1:] * rays.cos[detector] - offset[:, :1] * rays.sin[detector])
        # Few halves pass anywhere near a body.
        row, half = _true_in(aside <= body.radius)
        rows.append(row + first)
        halves.append(half)
        besides.append(aside[row, half])
    row, half, beside = np.concatenate(rows), np.concatenate(halves), np.concatenate(besides)
    mine = whose[row]
    along = _along(walk.places, rays, (row, mine, half))
    near = np.maximum(along - np.sqrt(np.maximum(body.radius**2 - beside**2, 0.0)), 0.0)
    height = rays.eye[mine, 2] + rays.rise[mine, half] * along - walk.floors[row]
    filled = (along > 0.0) & (height >= 0.0) & (height <= body.height) & (near <= rays.ends[mine, half])
    return row[filled], half[filled], near[filled]


def noticed_at(
    walks: Walks, floors: FloatArray, detectors: Sequence[Detector], *, reaches: ArrayLike, body: Body
) -> FloatArray:
    """How far somebody walks on each of some ways before each of some detectors notices, at several reaches.

    An edge is a half that is filled or left, strongly and quickly enough. Noticed is when enough edges of
    different halves lie within the window.

    Parameters
    ----------
    walks : Walks
        The ways, W of them, points a few centimetres apart.
    floors : ndarray, shape (D, N)
        What is stood on at each point, for each detector; nan where the body is hidden from it. [m]
    detectors : sequence of Detector, length D
        Detectors of one sheet: as many rays, and the same needs.
    reaches : array_like, shape (L,)
        How far they sense when nothing stops them. [m]
    body : Body
        The walker.

    Returns
    -------
    ndarray, shape (D, W, L)
        Walked distance on the plan, inf where never. [m]
    """
    limits = np.asarray(reaches, dtype=np.float64)
    found = np.full((len(detectors), len(walks.parts), len(limits)), np.inf)
    if not len(detectors) or not len(walks.parts):
        return found
    rays, needs = _rays_of(detectors), detectors[0].needs
    near_rays = _near_rays(walks.points, floors, rays, reach=float(limits.max()), body=body)
    whose, rows, of_walk = _worth_looking_at(near_rays, walks.parts)
    if not len(rows):
        return found
    some = Walk(walks.points[rows], floors[whose, rows], walks.clock[rows])
    row, half, near = _filled(some, rays, whose, body=body)
    # The least of the reaches that each filling lies within, as its place in their order: each reach has its own
    # fillings, and these lie within one another.
    order = np.argsort(limits)
    least = np.full((len(rows), len(rays.ends[0])), len(limits), dtype=np.int8)
    least[row, half] = np.searchsorted(limits[order], near)
    row, half = _true_in((least[1:] != least[:-1]) & (of_walk[1:] == of_walk[:-1])[:, None])
    strong = _strong(some, rays, needs, at=(row, whose[row], half), body=body)
    row, half = row[strong], half[strong]
    was, now = least[row, half], least[row + 1, half]
    edges = Edges(row + 1, half, np.minimum(was, now), np.maximum(was, now))
    by_walk, size = found.reshape(-1, len(limits)), (len(limits), least.shape[1])
    for walk, at, index in _first_noticed(edges, some.clock, of_walk, needs=needs, size=size):
        by_walk[walk, order[index]] = walks.walked[rows[at]]
    return found


def _worth_looking_at(near: BoolArray, parts: Sequence[slice]) -> tuple[IntArray, IntArray, IntArray]:
    """The points of each walk from just before the first near one to just after the last, for each detector.

    One point before and after, so that coming into reach and going out of it are edges too.

    Returns
    -------
    whose : ndarray of int, shape (R,)
        The detector. [-]
    rows : ndarray of int, shape (R,)
        The point. [-]
    of_walk : ndarray of int, shape (R,)
        The detector and the walk, as one number. [-]
    """
    lengths = [part.stop - part.start for part in parts]
    detector, point = np.nonzero(near)
    walk = detector * len(parts) + np.repeat(np.arange(len(parts)), lengths)[point]
    begins = np.nonzero(np.diff(walk, prepend=-1))[0].tolist()
    rows, of_walk = [np.zeros(0, dtype=np.int64)], [np.zeros(0, dtype=np.int64)]
    for begin, end in pairwise([*begins, len(walk)]):
        number = int(walk[begin])
        part = parts[number % len(parts)]
        if part.stop - part.start > 1:
            first, last = int(point[begin]) - 1, int(point[end - 1]) + 2
            rows.append(np.arange(max(part.start, first), min(part.stop, last)))
            of_walk.append(np.full(len(rows[-1]), number))
    numbers = np.concatenate(of_walk)
    return numbers // len(parts), np.concatenate(rows), numbers


def _near_rays(places: FloatArray, floors: FloatArray, rays: _Rays, *, reach: float, body: Body) -> BoolArray:
    """Which points lie in a block that holds every place where a body might fill a half, shape (D, N)."""
    far = np.minimum(rays.ends, reach)
    more = body.radius + _HAIR_M
    offset = [places[:, axis] - rays.eye[:, axis, None] for axis in (0, 1)]
    near: BoolArray = np.hypot(*offset) <= reach + more
    for away, way in zip(offset, (rays.cos, rays.sin), strict=True):
        tips = far * way
        near &= away >= tips.min(axis=1, keepdims=True, initial=0.0) - more
        near &= away <= tips.max(axis=1, keepdims=True, initial=0.0) + more
    eye = rays.eye[:, 2:]
    heights = eye + rays.rise * (far + more)
    low = np.minimum(heights.min(axis=1, keepdims=True), eye)
    high = np.maximum(heights.max(axis=1, keepdims=True), eye)
    near &= (floors + body.height >= low - _HAIR_M) & (floors <= high + _HAIR_M)
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
    edges: Edges, clock: FloatArray, of_walk: IntArray, *, needs: Needs, size: tuple[int, int]
) -> Iterator[tuple[int, IntArray, IntArray]]:
    """Of each walk, the first points at which enough edges lie within the window, and for which of the reaches.

    How many reaches and halves there are is given as the size.
    """
    count, halves = size
    if not len(edges.row):
        return
    # Rows with an edge are enough: between them edges only go out of the window.
    is_new = np.ones(len(edges.row), dtype=np.bool_)
    is_new[1:] = edges.row[1:] != edges.row[:-1]
    at, number = edges.row[is_new], np.cumsum(is_new) - 1
    # Reaches between which no edge comes or goes are alike.
    met = np.bincount(np.concatenate([edges.low, edges.high]), minlength=count + 1)
    alike = np.cumsum((met[:count] > 0) & (np.arange(count) > 0))
    last = np.full((len(at), int(alike[-1]) + 1, halves), -np.inf)
    for index in np.nonzero(np.diff(alike, prepend=-1))[0].tolist():
        mine = (edges.low <= index) & (index < edges.high)
        last[number[mine], alike[index], edges.half[mine]] = clock[edges.row[mine]]
    walk_of_row = of_walk[at]
    begins = np.nonzero(np.diff(walk_of_row, prepend=-1))[0].tolist()
    parts = [slice(*pair) for pair in pairwise([*begins, len(at)])]
    for part in parts:
        # Time of each half's last edge, at every such point of one walk.
        np.maximum.accumulate(last[part], axis=0, out=last[part])
    within = np.count_nonzero(clock[at][:, None, None] - last <= needs.window, axis=2)
    together = (within >= needs.edges)[:, alike]
    for part in parts:
        some = np.nonzero(together[part].any(axis=0))[0]
        yield int(walk_of_row[part.start]), at[part][together[part].argmax(axis=0)[some]], some


def _strong(walk: Walk, rays: _Rays, needs: Needs, *, at: _At, body: Body) -> BoolArray:
    """Whether changes of halves between a point and the next are strong and quick enough, shape (E,)."""
    row, whose, half = at
    cos, sin, rise = rays.cos[whose, half], rays.sin[whose, half], rays.rise[whose, half]
    along, then = (_along(walk.places, rays, (there, whose, half)) for there in (row, row + 1))
    middle = np.maximum((then + along) / 2.0, 1e-6)
    lasting = walk.clock[row + 1] - walk.clock[row]
    velocity = np.zeros((len(row), 2))
    np.divide(
        walk.places[row + 1] - walk.places[row], lasting[:, None], out=velocity, where=lasting[:, None] > 0.0
    )
    across = velocity[:, 1] * cos - velocity[:, 0] * sin
    # Toward it, a ray that slopes moves up or down the body; a half is higher than wide.
    climbing = (velocity[:, 0] * cos + velocity[:, 1] * sin) * rise / BEAM_SHAPE
    rate = pair_rate(np.hypot(across, climbing), middle, split=needs.split)
    # Where it is hidden, it stands on nothing: what comes in view is as high as it is seen.
    before, after = walk.floors[row], walk.floors[row + 1]
    stood = (np.where(np.isnan(before), after, before) + np.where(np.isnan(after), before, after)) / 2.0
    level = rays.eye[whose, 2] + rise * middle
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
