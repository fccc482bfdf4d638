"""Shortest ways about an area: between which of its corners a taut line can run, and from where it can start.

A shortest way among polygons is a taut line that bends at corners only, and at each only toward the obstacle. So
a link between two corners is kept when each lies in a sector that a taut line can leave the other by.

References
----------
.. [1] D. T. Lee, "Proximity and reachability in the plane", report R-831, University of Illinois, 1978.
.. [2] M. de Berg et al., "Computational Geometry", 3rd ed., Springer, 2008, chapter 15.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.corners import Corners, corners_of, cross
from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.geometry.views import SAME_ANGLE, Views, angles_in, sees, views_at_corners

CROSSED = 1e-9
"""A line touched by less than this share of itself, or of the way, is not crossed. [-] (derived here)"""


class Links(NamedTuple):
    """Straight pieces of possible taut ways."""

    starts: IntArray
    """Where each starts, shape (M,). [-]"""
    ends: IntArray
    """Where each ends, shape (M,). [-]"""
    lengths: FloatArray
    """Shape (M,). [m]"""
    crossings: IntArray
    """Crossing lines passed, shape (M,). [-]"""


class Net(NamedTuple):
    """All taut lines between the corners of one area."""

    corners: Corners
    views: Views
    """Two sectors a corner, as `views_at_corners` makes them."""
    links: Links
    """Between corners, each pair once."""
    crossing_lines: FloatArray
    """Lines that cost something to cross, cut to the area, shape (D, 2, 2). [m]"""
    line_numbers: IntArray
    """Which of the given lines each is a piece of, shape (D,). [-]"""


def net_of(area: shapely.Geometry, crossing_lines: FloatArray) -> Net:
    """Find all taut lines between the corners of an area.

    Parameters
    ----------
    area : shapely geometry
        Polygon or polygons. [m]
    crossing_lines : ndarray, shape (D, 2, 2)
        Lines that cost something to cross, each wholly across a passage. [m]

    Returns
    -------
    Net
        The corners and their links.

    Examples
    --------
    >>> room = shapely.box(0, 0, 4, 4).difference(shapely.box(1, 1, 2, 2))
    >>> net_of(room, np.empty((0, 2, 2))).links.lengths.tolist()
    [1.0, 1.0, 1.0, 1.0]
    """
    corners = corners_of(area)
    lines, numbers = _within(area, crossing_lines, corners.points)
    views = views_at_corners(corners, crossing_lines=lines)
    sector = _sector_towards(views, corners.points)
    starts, ends = np.nonzero(np.triu((sector >= 0) & (sector.T >= 0), k=1))
    seen = sees(views, sector[starts, ends], corners.points[ends])
    seen |= sees(views, sector[ends, starts], corners.points[starts])
    starts, ends = starts[seen], ends[seen]
    links = _links(
        starts, ends, ways=np.stack([corners.points[starts], corners.points[ends]], axis=1), lines=lines
    )
    return Net(corners, views, links, lines, numbers)


def links_from(net: Net, points: FloatArray) -> Links:
    """Taut lines from points to the corners they see.

    Parameters
    ----------
    net : Net
        The area.
    points : ndarray, shape (M, 2)
        In the area. [m]

    Returns
    -------
    Links
        Starts number the points, ends the corners.
    """
    sector = _sector_towards(net.views, points)
    ends, starts = np.nonzero(sector >= 0)
    seen = sees(net.views, sector[ends, starts], points[starts])
    starts, ends = starts[seen], ends[seen]
    ways = np.stack([points[starts], net.corners.points[ends]], axis=1)
    return _links(starts, ends, ways=ways, lines=net.crossing_lines)


def crossed(ways: FloatArray, lines: FloatArray) -> FloatArray:
    """Where straight ways cross lines.

    Parameters
    ----------
    ways : ndarray, shape (M, 2, 2)
        Start and end of each. [m]
    lines : ndarray, shape (D, 2, 2)
        Start and end of each. [m]

    Returns
    -------
    ndarray, shape (M, D)
        Share of the way at the crossing, nan where there is none. [-]

    Examples
    --------
    >>> crossed(np.array([[[0.0, 0.0], [4.0, 0.0]]]), np.array([[[1.0, -1.0], [1.0, 1.0]]])).tolist()
    [[0.25]]
    """
    way = (ways[:, 1] - ways[:, 0])[:, None]
    line = (lines[:, 1] - lines[:, 0])[None]
    between = lines[None, :, 0] - ways[:, None, 0]
    area = cross(way, line)
    safe = np.where(np.abs(area) > 1e-15, area, np.nan)
    on_way, on_line = cross(between, line) / safe, cross(between, way) / safe
    met = (on_way > CROSSED) & (on_way < 1 - CROSSED) & (on_line > -CROSSED) & (on_line < 1 + CROSSED)
    return np.where(met, on_way, np.nan)


def is_crossed_from(start: tuple[float, float], ends: FloatArray, lines: FloatArray) -> BoolArray:
    """Which straight ways from one place cross any of some lines: those where `crossed` tells a share.

    Parameters
    ----------
    start : tuple of float
        Where all ways start. [m]
    ends : ndarray, shape (M, 2)
        Where each ends. [m]
    lines : ndarray, shape (D, 2, 2)
        Start and end of each. [m]

    Returns
    -------
    ndarray of bool, shape (M,)
        True where a line is crossed.

    Examples
    --------
    >>> line = np.array([[[1.0, -1.0], [1.0, 1.0]]])
    >>> is_crossed_from((0.0, 0.0), np.array([[4.0, 0.0], [0.0, 4.0]]), line).tolist()
    [True, False]
    """
    if not len(ends):
        return np.zeros(0, dtype=np.bool_)
    near = lines[_may_be_met(start, ends, lines)]
    way, line, between = (ends - start)[:, None], near[:, 1] - near[:, 0], near[:, 0] - start
    area = cross(way, line)
    safe = np.where(np.abs(area) > 1e-15, area, np.nan)
    on_way, on_line = cross(between, line) / safe, cross(between, way) / safe
    met = (on_way > CROSSED) & (on_way < 1 - CROSSED) & (on_line > -CROSSED) & (on_line < 1 + CROSSED)
    found: BoolArray = np.logical_or.reduce(met, axis=1)
    return found


_NEAR_M = 1e-6
# A line farther than this from a box crosses nothing in it. [m]


def _may_be_met(start: tuple[float, float], ends: FloatArray, lines: FloatArray) -> BoolArray:
    """Lines whose own box touches the box about some ways from one place, shape (D,)."""
    touches: BoolArray = np.ones(len(lines), dtype=np.bool_)
    for axis, there in enumerate(start):
        low, high = min(ends[:, axis].min(), there) - _NEAR_M, max(ends[:, axis].max(), there) + _NEAR_M
        first, last = lines[:, 0, axis], lines[:, 1, axis]
        touches &= (np.maximum(first, last) >= low) & (np.minimum(first, last) <= high)
    return touches


def _sector_towards(views: Views, points: FloatArray) -> IntArray:
    """For each corner and point, the corner's sector that holds the point, or -1; shape (corners, points)."""
    sectors = len(views.origins)
    rows = np.repeat(np.arange(sectors), len(points))
    angle = angles_in(views, rows, np.tile(points, (sectors, 1))).reshape(sectors, len(points))
    inside = (angle >= -SAME_ANGLE) & (angle <= views.widths[:, None] + SAME_ANGLE)
    at_corner = (np.abs(views.origins[::2, None] - points).max(axis=2) < 1e-12) if sectors else inside
    number = np.arange(0, sectors, 2)[:, None]
    held = np.where(inside[::2], number, np.where(inside[1::2], number + 1, -1))
    return np.where(at_corner, -1, held)


def _links(starts: IntArray, ends: IntArray, *, ways: FloatArray, lines: FloatArray) -> Links:
    lengths = np.linalg.norm(ways[:, 1] - ways[:, 0], axis=1)
    return Links(starts, ends, lengths, np.isfinite(crossed(ways, lines)).sum(axis=1))


def _within(area: shapely.Geometry, lines: FloatArray, points: FloatArray) -> tuple[FloatArray, IntArray]:
    """Crossing lines cut to the area, and moved aside by a hair where a corner lies on one.

    So that no way bends on a line, where whether it is crossed would be a matter of rounding.
    """
    cut, numbers = [np.empty((0, 2, 2))], list[int]()
    for number, line in enumerate(lines):
        along = line[1] - line[0]
        length = float(np.hypot(along[0], along[1]))
        if length == 0.0:
            continue
        normal = np.array([-along[1], along[0]]) / length
        placed = line
        for step in range(50):
            placed = line + normal * step * 1e-4
            away = points - placed[0]
            near = np.abs(away @ normal) < 1e-5
            held = (away @ along > -0.01 * length) & (away @ along < 1.01 * length**2)
            if not (near & held).any():
                break
        pieces = shapely.get_parts(shapely.intersection(area, shapely.LineString(placed)))
        held_in = [p for p in pieces if p.geom_type == "LineString" and not p.is_empty]
        cut.extend(shapely.get_coordinates(p)[None, [0, -1]] for p in held_in)
        numbers.extend(number for _ in held_in)
    return np.concatenate(cut), np.array(numbers, dtype=np.int64)
