"""What can be seen from points of an area, each through a sector of directions.

A sector's view is cut into wedges: in each, one edge of the area is the first thing met all the way across. So
whether a point is seen is one search by angle and one side test, and exact.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from wardwright.geometry.corners import Corners, cross, dot
from wardwright.geometry.raster import BoolArray, FloatArray, IntArray

SAME_ANGLE = 1e-9
"""Directions closer than this are one. [rad] (derived here: rounding of coordinates)"""
ON_LINE = 1e-7
"""A point this far behind an edge is still on it. [m] (derived here: rounding of coordinates)"""
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
    wedges, pieces = [np.empty((0, 2))], [np.empty((0, 6))]
    for sector in range(len(origins)):
        frame = (origins[sector], firsts[sector], float(widths[sector]))
        starts, walls, cut = _cut(frame, corners.edges, crossing_lines)
        wedges.append(np.stack([starts + sector * _KEY, walls], axis=1))
        pieces.append(np.column_stack([np.full(len(cut), sector), cut]))
    wedge, piece = np.concatenate(wedges), np.concatenate(pieces)
    owners, near, far, count = (piece[:, i].astype(np.int64) for i in (0, 3, 4, 5))
    lines = np.concatenate([corners.edges, crossing_lines])
    walls = wedge[:, 1].astype(np.int64)
    return Views(
        origins, firsts, widths, lines, wedge[:, 0].copy(), walls, owners, piece[:, 1:3], near, far, count
    )


def _spans(frame: tuple[FloatArray, FloatArray, float], a: FloatArray, b: FloatArray) -> FloatArray:
    """Angles from a sector's first side to the two ends of lines that run anticlockwise, and twice their area."""
    first = frame[1]
    area = cross(a, b)
    low = np.arctan2(cross(first, a), dot(first, a))
    return np.stack([low, low + np.arctan2(area, dot(a, b)), area])


def _cut(
    frame: tuple[FloatArray, FloatArray, float], edges: FloatArray, crossing_lines: FloatArray
) -> tuple[FloatArray, IntArray, FloatArray]:
    """Cut one sector: where its wedges start, the edge each ends at, and its pieces (lo, hi, near, far, n)."""
    origin, first, width = frame
    rel = edges - origin
    spans = _spans(frame, rel[:, 0], rel[:, 1])
    # Only edges that face the origin can be met first; those through the origin are skipped too.
    facing = np.flatnonzero((spans[2] > 1e-12) & (spans[0] < width) & (spans[1] > 0.0))
    low, high, area = spans[:, facing]
    across = crossing_lines - origin
    flip = cross(across[:, 0], across[:, 1]) < 0.0
    across[flip] = across[flip, ::-1]
    door_low, door_high, door_area = _spans(frame, across[:, 0], across[:, 1])
    bounds = np.concatenate([low, high, door_low, door_high])
    bounds = np.sort(bounds[(bounds > SAME_ANGLE) & (bounds < width - SAME_ANGLE)])
    bounds = np.concatenate([[0.0], bounds[np.diff(bounds, prepend=-1.0) > SAME_ANGLE], [width]])
    middle = (bounds[:-1] + bounds[1:]) / 2
    cos, sin = np.cos(middle), np.sin(middle)
    ray = np.stack([cos * first[0] - sin * first[1], sin * first[0] + cos * first[1]], axis=1)
    away = _distances(ray, middle, lines=rel[facing], spans=(low, high, area))
    nearest = away.argmin(axis=1) if len(facing) else np.zeros(len(middle), dtype=np.int64)
    reach = away[np.arange(len(middle)), nearest] if len(facing) else np.full(len(middle), np.inf)
    door = _distances(ray, middle, lines=across, spans=(door_low, door_high, door_area))
    door[(door >= reach[:, None] - ON_LINE) | (door <= ON_LINE)] = np.inf
    order = np.argsort(door, axis=1, kind="stable")
    met = np.isfinite(door).sum(axis=1)
    # Neighbouring wedges that end at the same edge, behind the same lines, are one.
    passed = np.where(np.arange(order.shape[1]) < met[:, None], order, -1)
    label = np.column_stack([nearest, passed])
    new = np.concatenate([[True], (np.diff(label, axis=0) != 0).any(axis=1)])
    new &= np.isfinite(reach)
    new[1:] |= np.isfinite(reach[1:]) & ~np.isfinite(reach[:-1])
    begin = np.flatnonzero(new)
    ends = np.append(bounds[begin[1:]], width)
    walls = facing[nearest[begin]] if len(facing) else np.zeros(0, dtype=np.int64)
    cut = _pieces((bounds[begin], ends), walls, lines=order[begin] + len(edges), met=met[begin])
    return bounds[begin], walls, cut


def _distances(
    ray: FloatArray,
    middle: FloatArray,
    *,
    lines: FloatArray,
    spans: tuple[FloatArray, FloatArray, FloatArray],
) -> FloatArray:
    """How far along each ray each line is met, shape (rays, lines), inf where it is not. [m]"""
    low, high, area = spans
    along = lines[:, 1] - lines[:, 0]
    met = (low <= middle[:, None]) & (high >= middle[:, None])
    slope = ray[:, :1] * along[:, 1] - ray[:, 1:] * along[:, 0]
    met &= slope > 0.0
    away = np.full(met.shape, np.inf)
    np.divide(np.broadcast_to(area, met.shape), slope, out=away, where=met)
    return away


def _pieces(
    sides: tuple[FloatArray, FloatArray], walls: IntArray, *, lines: IntArray, met: IntArray
) -> FloatArray:
    """Wedges cut by the lines met on the way: rows of lo, hi, near, far, number of lines before."""
    found = [np.empty((0, 5))]
    for level in range(int(met.max(initial=0)) + 1):
        rows = np.flatnonzero(met >= level)
        near = lines[rows, level - 1] if level else np.full(len(rows), -1)
        is_last = met[rows] == level
        beyond = lines[rows, np.minimum(level, lines.shape[1] - 1)] if lines.shape[1] else walls[rows]
        far = np.where(is_last, walls[rows], beyond)
        count = np.full(len(rows), level)
        found.append(np.column_stack([sides[0][rows], sides[1][rows], near, far, count]))
    return np.concatenate(found)
