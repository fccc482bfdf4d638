"""What can be seen from points of an area, each through a sector of directions.

A sector's view is cut into wedges: in each, one edge of the area is the first thing met all the way across. So
whether a point is seen is one search by angle and one side test, and exact.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from wardwright.geometry.corners import Corners, cross, dot
from wardwright.geometry.raster import BoolArray, FloatArray, IntArray

SAME_ANGLE = 1e-9
"""Directions closer than this are one. [rad] (derived here: rounding of coordinates)"""
ON_LINE = 1e-7
"""A point this far behind an edge is still on it. [m] (derived here: rounding of coordinates)"""
_PAIRS = 200_000  # of rays and edges that are worked out at once, so that they stay in the processor's cache
_KEY = 8.0  # greater than any angle in a sector, so that sector and angle sort as one number


class Views(NamedTuple):
    """Sectors, the wedges each is cut into, and the pieces of the wedges between crossing lines."""

    origins: FloatArray
    """Where each sector is seen from, shape (S, 2). [m]"""
    firsts: FloatArray
    """Unit vector along each sector's first (clockwise) side, shape (S, 2). [-]"""
    widths: FloatArray
    """Angle of each sector, under pi, shape (S,). [rad]"""
    lines: FloatArray
    """Edges of the area, then crossing lines, shape (L, 2, 2). [m]"""
    keys: FloatArray
    """Sorted wedge starts, eight times the sector plus the angle, shape (W,). [-]"""
    walls: IntArray
    """The edge that ends each wedge, shape (W,). [-]"""
    owners: IntArray
    """The sector of each piece, shape (P,). [-]"""
    spans: FloatArray
    """Angles from the sector's first side to each piece's two sides, shape (P, 2). [rad]"""
    near: IntArray
    """The line where each piece begins, -1 for the origin itself, shape (P,). [-]"""
    far: IntArray
    """The line where each piece ends, shape (P,). [-]"""
    crossings: IntArray
    """Crossing lines between the origin and each piece, shape (P,). [-]"""


def angles_in(views: Views, sectors: IntArray, points: FloatArray) -> FloatArray:
    """Angle from a sector's first side to a point.

    Parameters
    ----------
    views : Views
        The sectors.
    sectors : ndarray of int, shape (M,)
        Which of them. [-]
    points : ndarray, shape (M, 2)
        The points. [m]

    Returns
    -------
    ndarray, shape (M,)
        In (-pi, pi], 0 for a point at the origin. [rad]
    """
    away = points - views.origins[sectors]
    first = views.firsts[sectors]
    return np.arctan2(cross(first, away), dot(first, away))


def sees(views: Views, sectors: IntArray, points: FloatArray) -> BoolArray:
    """Whether points are inside a sector and nothing is in the way; grazing an edge is not in the way.

    Parameters
    ----------
    views : Views
        The sectors.
    sectors : ndarray of int, shape (M,)
        Which of them. [-]
    points : ndarray, shape (M, 2)
        The points. [m]

    Returns
    -------
    ndarray of bool, shape (M,)
        True where seen.
    """
    seen = np.zeros(len(sectors), dtype=np.bool_)
    if not len(views.keys):
        return seen
    angle = angles_in(views, sectors, points)
    width = views.widths[sectors]
    inside = (angle >= -SAME_ANGLE) & (angle <= width + SAME_ANGLE)
    for nudge in (-2.0 * SAME_ANGLE, 2.0 * SAME_ANGLE):
        key = sectors * _KEY + np.clip(angle + nudge, 0.0, width)
        wedge = np.clip(np.searchsorted(views.keys, key, side="right") - 1, 0, len(views.keys) - 1)
        wall = views.lines[views.walls[wedge]]
        along = wall[:, 1] - wall[:, 0]
        beyond = cross(along, points - wall[:, 0]) < -ON_LINE * np.hypot(along[:, 0], along[:, 1])
        # A sector with no wedge at all (an origin walled in) would be answered by its neighbour's.
        own = np.floor(views.keys[wedge] / _KEY).astype(np.int64) == sectors
        seen |= inside & own & ~beyond
    return seen


def views_round(points: FloatArray, corners: Corners, *, crossing_lines: FloatArray) -> Views:
    """Views all round from points: four sectors each, in the order of the points.

    Parameters
    ----------
    points : ndarray, shape (M, 2)
        Inside the area. [m]
    corners : Corners
        The area's boundary.
    crossing_lines : ndarray, shape (D, 2, 2)
        Lines that are seen through but counted, each from edge to edge of the area. [m]

    Returns
    -------
    Views
        Sectors 4 i to 4 i + 3 belong to point i.
    """
    quarter = np.array([[1.0, 0.0], [0.0, 1.0], [-1.0, 0.0], [0.0, -1.0]])
    return views_of(
        np.repeat(points, 4, axis=0),
        np.tile(quarter, (len(points), 1)),
        np.full(4 * len(points), math.pi / 2),
        corners=corners,
        crossing_lines=crossing_lines,
    )


def views_at_corners(corners: Corners, *, crossing_lines: FloatArray) -> Views:
    """Views from every corner into the two sectors that a shortest path can leave it by.

    A shortest path bends toward the obstacle, so it leaves a corner between one edge and the lengthening of the
    other; it arrived from the opposite sector.

    Parameters
    ----------
    corners : Corners
        The area's boundary.
    crossing_lines : ndarray, shape (D, 2, 2)
        Lines that are seen through but counted, each from edge to edge of the area. [m]

    Returns
    -------
    Views
        Sectors 2 i (obstacle on the right) and 2 i + 1 (obstacle on the left) belong to corner i.
    """
    firsts = np.stack([corners.ahead, -corners.ahead], axis=1).reshape(-1, 2)
    return views_of(
        np.repeat(corners.points, 2, axis=0),
        firsts,
        np.repeat(corners.turn, 2),
        corners=corners,
        crossing_lines=crossing_lines,
    )


def views_of(
    origins: FloatArray,
    firsts: FloatArray,
    widths: FloatArray,
    *,
    corners: Corners,
    crossing_lines: FloatArray,
) -> Views:
    """Views from points through sectors.

    Parameters
    ----------
    origins : ndarray, shape (S, 2)
        In the area; on its edge only where the sector looks into the area. [m]
    firsts : ndarray, shape (S, 2)
        Unit vectors along the sectors' first sides. [-]
    widths : ndarray, shape (S,)
        Their angles, under pi. [rad]
    corners : Corners
        The area's boundary.
    crossing_lines : ndarray, shape (D, 2, 2)
        Lines that are seen through but counted, each from edge to edge of the area. [m]

    Returns
    -------
    Views
        The wedges of each sector in order.
    """
    sectors = _Sectors(origins, firsts, widths)
    count = len(origins)
    spans = _spans(sectors, np.arange(count), _from_each(origins, corners.edges))
    # Only edges that face the origin can be met first; those through the origin are skipped too.
    is_facing = (spans[2] > 1e-12) & (spans[0] < widths[:, None]) & (spans[1] > 0.0)
    wedges, pieces = [np.empty((0, 2))], [np.empty((0, 6))]
    for chosen in _few_at_once(is_facing.sum(axis=1), len(crossing_lines)):
        starts, walls, cut = _cut(
            sectors,
            chosen,
            edges=corners.edges,
            spans=spans[:, chosen],
            is_facing=is_facing[chosen],
            crossing_lines=crossing_lines,
        )
        wedges.append(np.stack([starts, walls], axis=1))
        pieces.append(cut)
    wedge, piece = np.concatenate(wedges), np.concatenate(pieces)
    owners, near, far, crossed = (piece[:, i].astype(np.int64) for i in (0, 3, 4, 5))
    lines = np.concatenate([corners.edges, crossing_lines])
    walls = wedge[:, 1].astype(np.int64)
    return Views(
        origins, firsts, widths, lines, wedge[:, 0].copy(), walls, owners, piece[:, 1:3], near, far, crossed
    )


class _Sectors(NamedTuple):
    """Where sectors are seen from, their first sides and their angles."""

    origins: FloatArray
    firsts: FloatArray
    widths: FloatArray


def _from_each(origins: FloatArray, lines: FloatArray) -> FloatArray:
    """Lines as seen from each origin, shape (S, L, 2, 2). [m]"""
    seen: FloatArray = lines[None] - origins[:, None, None, :]
    return seen


def _spans(sectors: _Sectors, chosen: IntArray, lines: FloatArray) -> FloatArray:
    """Angles from each sector's first side to the two ends of its lines, and twice their area, shape (3, S, L)."""
    first = sectors.firsts[chosen][:, None]
    a, b = lines[:, :, 0], lines[:, :, 1]
    area = cross(a, b)
    low = np.arctan2(cross(first, a), dot(first, a))
    return np.stack([low, low + np.arctan2(area, dot(a, b)), area])


def _few_at_once(facing: IntArray, doors: int) -> Iterator[IntArray]:
    """Sectors, so many at a time that what is worked out for them stays small."""
    size = (2 * (facing + doors) + 1) * facing
    group = np.cumsum(size) // _PAIRS
    starts = np.flatnonzero(np.diff(group, prepend=-1))
    yield from np.split(np.arange(len(facing)), starts[1:]) if len(facing) else ()


def _cut(
    sectors: _Sectors,
    chosen: IntArray,
    *,
    edges: FloatArray,
    spans: FloatArray,
    is_facing: BoolArray,
    crossing_lines: FloatArray,
) -> tuple[FloatArray, IntArray, FloatArray]:
    """Cut sectors: the keys at which their wedges start, the edge each ends at, and rows of pieces.

    Each row of pieces is the sector, lo, hi, near, far, and the number of lines before.
    """
    origins, width = sectors.origins[chosen], sectors.widths[chosen]
    across = _from_each(origins, crossing_lines)
    flip = cross(across[:, :, 0], across[:, :, 1]) < 0.0
    across[flip] = across[flip][:, ::-1]
    door = _spans(sectors, chosen, across)
    owner, bounds = _bounds(np.concatenate([spans[:2], door[:2]], axis=2), is_facing, width=width)
    # A ray through the middle of what lies between two bounds of one sector stands for all of it.
    ray = np.flatnonzero(owner[:-1] == owner[1:])
    of, middle = owner[ray], (bounds[ray] + bounds[ray + 1]) / 2
    cos, sin = np.cos(middle), np.sin(middle)
    first = sectors.firsts[chosen][of]
    toward = np.stack([cos * first[:, 0] - sin * first[:, 1], sin * first[:, 0] + cos * first[:, 1]], axis=1)
    nearest, reach = _first_met(
        toward, middle, of, edges=edges, origins=origins, spans=spans, is_facing=is_facing
    )
    order, met = _doors_met(toward, middle, of, across=across, door=door, reach=reach)
    # Neighbouring wedges that end at the same edge, behind the same lines, are one.
    passed = np.where(np.arange(order.shape[1]) < met[:, None], order, -1)
    label = np.column_stack([of, nearest, passed])
    new = (
        np.concatenate([[True], (np.diff(label, axis=0) != 0).any(axis=1)])
        if len(of)
        else np.zeros(0, np.bool_)
    )
    new &= np.isfinite(reach)
    new[1:] |= np.isfinite(reach[1:]) & ~np.isfinite(reach[:-1])
    begin = np.flatnonzero(new)
    start, whose = bounds[ray[begin]], of[begin]
    is_last = np.append(whose[1:] != whose[:-1], np.ones(min(len(whose), 1), dtype=np.bool_))
    ends = np.where(is_last, width[whose], np.append(start[1:], 0.0)[: len(start)])
    walls = nearest[begin]
    cut = _pieces((start, ends), walls, lines=order[begin] + len(edges), met=met[begin])
    piece = np.column_stack([chosen[whose[cut[:, 0].astype(np.int64)]], cut[:, 1:]])
    return start + chosen[whose] * _KEY, walls, piece[np.argsort(piece[:, 0], kind="stable")]


def _bounds(spans: FloatArray, is_facing: BoolArray, *, width: FloatArray) -> tuple[IntArray, FloatArray]:
    """The angles at which something begins or ends in each sector, in order, and whose they are. [rad]"""
    count = len(width)
    counts = np.concatenate(
        [is_facing, np.ones((count, spans.shape[2] - is_facing.shape[1]), np.bool_)], axis=1
    )
    inside = counts & (spans > SAME_ANGLE) & (spans < width[:, None] - SAME_ANGLE)
    _, owner, _ = np.nonzero(inside)
    angle = spans[inside]
    owner = np.concatenate([np.arange(count), owner, np.arange(count)])
    angle = np.concatenate([np.zeros(count), angle, width])
    order = np.lexsort((angle, owner))
    owner, angle = owner[order], angle[order]
    is_end = np.append(owner[1:] != owner[:-1], np.ones(min(count, 1), dtype=np.bool_))
    is_apart = np.diff(angle, prepend=-1.0) > SAME_ANGLE
    kept = is_apart | is_end | (np.diff(owner, prepend=-1) != 0)
    return owner[kept], angle[kept]


def _first_met(
    toward: FloatArray,
    middle: FloatArray,
    of: IntArray,
    *,
    edges: FloatArray,
    origins: FloatArray,
    spans: FloatArray,
    is_facing: BoolArray,
) -> tuple[IntArray, FloatArray]:
    """The edge that each ray meets first, and how far along; inf where it meets none. [m]"""
    sector, edge = np.nonzero(is_facing)
    count = is_facing.sum(axis=1)
    nearest, reach = np.zeros(len(of), dtype=np.int64), np.full(len(of), np.inf)
    rays = np.flatnonzero(count[of])
    many = count[of[rays]]
    if not len(many):
        return nearest, reach
    ray = np.repeat(rays, many)
    begin = np.cumsum(many) - many
    first = np.searchsorted(sector, of[rays])
    pair = np.arange(len(ray)) - np.repeat(begin - first, many)
    low, high, area = (one[is_facing][pair] for one in spans)
    met = (low <= middle[ray]) & (high >= middle[ray])
    ray, which, area = ray[met], edge[pair[met]], area[met]
    rel = edges[which] - origins[of[ray]][:, None]
    along = rel[:, 1] - rel[:, 0]
    slope = toward[ray, 0] * along[:, 1] - toward[ray, 1] * along[:, 0]
    met = slope > 0.0
    ray, which = ray[met], which[met]
    away = area[met] / slope[met]
    # Of edges that are equally far the first in their order, as it would be found one by one.
    order = np.lexsort((which, away, ray))
    begin = np.flatnonzero(np.diff(ray[order], prepend=-1))
    best = order[begin]
    nearest[ray[best]], reach[ray[best]] = which[best], away[best]
    return nearest, reach


def _doors_met(
    toward: FloatArray,
    middle: FloatArray,
    of: IntArray,
    *,
    across: FloatArray,
    door: FloatArray,
    reach: FloatArray,
) -> tuple[IntArray, IntArray]:
    """The crossing lines in the order in which each ray meets them, shape (R, D), and how many it does. [-]"""
    low, high, area = door[:, of]
    along = (across[:, :, 1] - across[:, :, 0])[of]
    met = (low <= middle[:, None]) & (high >= middle[:, None])
    slope = toward[:, :1] * along[:, :, 1] - toward[:, 1:] * along[:, :, 0]
    met &= slope > 0.0
    away = np.full(met.shape, np.inf)
    np.divide(area, slope, out=away, where=met)
    away[(away >= reach[:, None] - ON_LINE) | (away <= ON_LINE)] = np.inf
    return np.argsort(away, axis=1, kind="stable"), np.isfinite(away).sum(axis=1)


def _pieces(
    sides: tuple[FloatArray, FloatArray], walls: IntArray, *, lines: IntArray, met: IntArray
) -> FloatArray:
    """Wedges cut by the lines met on the way: rows of wedge, lo, hi, near, far, number of lines before."""
    found = [np.empty((0, 6))]
    for level in range(int(met.max(initial=0)) + 1):
        rows = np.flatnonzero(met >= level)
        near = lines[rows, level - 1] if level else np.full(len(rows), -1)
        is_last = met[rows] == level
        beyond = lines[rows, np.minimum(level, lines.shape[1] - 1)] if lines.shape[1] else walls[rows]
        far = np.where(is_last, walls[rows], beyond)
        count = np.full(len(rows), level)
        found.append(np.column_stack([rows, sides[0][rows], sides[1][rows], near, far, count]))
    return np.concatenate(found)
