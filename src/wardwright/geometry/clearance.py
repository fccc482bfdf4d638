"""Where the middle of a round thing may be: areas shrunk and obstacles grown by its radius.

The round thing is taken as the regular eight-sided figure inscribed in it, always turned the same way. So the
clearance is never more than the true one, at most `SHORTFALL` of the radius less, and it is monotone: more
obstacles never leave more room.
"""

from __future__ import annotations

import math

import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray

SIDES = 8
"""Sides of the figure that stands for a circle. [-]"""
SHORTFALL = 1.0 - math.cos(math.pi / SIDES)
"""By how much of the radius the figure falls short of its circle, at most. [-] (derived here)"""


def figure(radius: float) -> FloatArray:
    """Corners of the eight-sided figure inscribed in a circle about the origin.

    Parameters
    ----------
    radius : float
        Of the circle. [m]

    Returns
    -------
    ndarray, shape (8, 2)
        Its corners, the first on the x axis; a quarter turn maps them onto themselves exactly. [m]

    Examples
    --------
    >>> figure(1.0)[:2].round(4).tolist()
    [[1.0, 0.0], [0.7071, 0.7071]]
    """
    half = radius * math.sqrt(0.5)
    quarter = [(radius, 0.0), (half, half)]
    corners = list(quarter)
    for _ in range(3):
        quarter = [(-y, x) for x, y in quarter]
        corners.extend(quarter)
    return np.array(corners)


def shrunk(area: shapely.Geometry, radius: float) -> shapely.Geometry:
    """The part of an area that keeps clear of its edge.

    Parameters
    ----------
    area : shapely geometry
        Polygon or polygons. [m]
    radius : float
        The clearance. [m]

    Returns
    -------
    shapely geometry
        Where the middle of the eight-sided figure can be with the figure wholly inside. [m]

    Examples
    --------
    >>> float(shapely.area(shrunk(shapely.box(0, 0, 3, 2), 0.5)))
    2.0
    """
    if radius <= 0.0:
        return area
    rims = [_swept(part, radius) for part in shapely.get_parts(area) if part.geom_type == "Polygon"]
    return area.difference(shapely.union_all(np.concatenate(rims))) if rims else area


def grown(obstacle: shapely.Geometry, radius: float) -> shapely.Geometry:
    """An obstacle and the room about it that the middle of a round thing must keep out of.

    Parameters
    ----------
    obstacle : shapely geometry
        Polygon or polygons. [m]
    radius : float
        The clearance. [m]

    Returns
    -------
    shapely geometry
        The obstacle with the eight-sided figure laid about every point of it. [m]

    Examples
    --------
    >>> float(round(shapely.area(grown(shapely.box(0, 0, 1, 1), 0.1)), 4))
    1.4283
    """
    if radius <= 0.0:
        return obstacle
    rims = [_swept(part, radius) for part in shapely.get_parts(obstacle) if part.geom_type == "Polygon"]
    return shapely.union_all([obstacle, *np.concatenate(rims)]) if rims else obstacle


def _swept(polygon: shapely.Polygon, radius: float) -> shapely.Geometry:
    """The figure drawn along every edge of a polygon, one convex piece an edge."""
    rings = (polygon.exterior, *polygon.interiors)
    lines = [shapely.get_coordinates(ring) for ring in rings]
    starts = np.concatenate([line[:-1] for line in lines])
    ends = np.concatenate([line[1:] for line in lines])
    about = figure(radius)
    corners = np.concatenate([starts[:, None] + about, ends[:, None] + about], axis=1)
    # One line through them has the hull that they have, and is one geometry instead of many.
    return shapely.convex_hull(shapely.linestrings(corners))


def without_tiny_corners(area: shapely.Geometry, tolerance: float) -> shapely.Geometry:
    """An area with its finely stepped bulges cut short, so that it only grows.

    Runs of corners that bulge into the area (a round column drawn with many sides) lose those that stand out
    less than the tolerance from the straight line that replaces them. Nooks are left alone.

    Parameters
    ----------
    area : shapely geometry
        Polygon or polygons. [m]
    tolerance : float
        How far a corner may be cut back. [m]

    Returns
    -------
    shapely geometry
        The larger area with fewer corners; the same area where cutting back would break it. [m]

    Examples
    --------
    >>> room = shapely.box(-2, -2, 2, 2).difference(shapely.Point(0, 0).buffer(1.0, quad_segs=32))
    >>> simpler = without_tiny_corners(room, 0.01)
    >>> simpler.area > room.area, len(simpler.interiors[0].coords) < 40
    (True, True)
    """
    parts = []
    for part in shapely.get_parts(shapely.orient_polygons(area)):
        if part.geom_type != "Polygon":
            continue
        rings = [
            _cut_back(shapely.get_coordinates(r)[:-1], tolerance) for r in (part.exterior, *part.interiors)
        ]
        simpler = shapely.Polygon(rings[0], [ring for ring in rings[1:] if len(ring) > 2])
        parts.append(simpler if simpler.is_valid else part)
    return shapely.union_all(parts)


def _cut_back(ring: FloatArray, tolerance: float) -> FloatArray:
    """A ring, its inside on the left, less the bulging corners that stand out little."""
    count = len(ring)
    back, ahead = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
    bulges = back[:, 0] * ahead[:, 1] - back[:, 1] * ahead[:, 0] < 0.0
    # Begin at a corner that stays.
    first = int(np.argmin(bulges)) if not bulges.all() else 0
    order = [(first + i) % count for i in range(count)] + [first]
    kept = [order[0]]
    i = 0
    while i < count:
        j = i + 1
        while j < count and bulges[order[j]] and _stands_out(ring[order[i : j + 2]]) <= tolerance:
            j += 1
        kept.append(order[j])
        i = j
    return ring[kept[:-1]]


def _stands_out(chain: FloatArray) -> float:
    """How far the inner corners of a chain stand out from the line between its ends. [m]"""
    along = chain[-1] - chain[0]
    length = math.hypot(along[0], along[1])
    if length == 0.0:
        return math.inf
    away = chain[1:-1] - chain[0]
    return float(np.abs(away[:, 0] * along[1] - away[:, 1] * along[0]).max()) / length
