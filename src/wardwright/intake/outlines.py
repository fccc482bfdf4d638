"""Flat shapes of a plan: the largest part of an area, its ring, and the straight strip about it."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.model.record import Line2, Point2, Ring


def largest(area: shapely.Geometry) -> shapely.Polygon | None:
    """The largest polygon of an area; None of an empty one."""
    polygons = [part for part in shapely.get_parts(area) if part.geom_type == "Polygon" and part.area > 0]
    return max(polygons, key=lambda part: float(part.area)) if polygons else None


def ring_of(polygon: shapely.Polygon) -> Ring:
    """The outer ring of a polygon, anticlockwise, straight corners dropped, to a tenth of a millimetre. [m]"""
    smooth = shapely.orient_polygons(polygon.simplify(1e-3))
    corners = tuple((round(float(x), 4), round(float(y), 4)) for x, y in smooth.exterior.coords[:-1])
    # The first corner may lie within a straight side: simplify never drops it.
    if (
        len(corners) > 3
        and shapely.LineString((corners[-1], corners[1])).distance(shapely.Point(corners[0])) < 1e-3
    ):
        corners = corners[1:]
    return corners


class Strip(NamedTuple):
    """A straight strip on the plan: its middle line, how wide it is, and how much of it is filled."""

    line: Line2
    width: float
    filled: float

    @property
    def length(self) -> float:
        """Its length. [m]"""
        (ax, ay), (bx, by) = self.line
        return math.hypot(bx - ax, by - ay)


def strip_along(area: shapely.Geometry, way: Point2) -> Strip:
    """The narrowest strip along a direction that holds an area. [m]"""
    ux, uy = way
    points = shapely.get_coordinates(area)
    along = points @ np.array((ux, uy))
    across = points @ np.array((-uy, ux))
    start, end = float(along.min()), float(along.max())
    middle = float(across.min() + across.max()) / 2
    width = float(across.max() - across.min())
    line = tuple((round(s * ux - middle * uy, 4), round(s * uy + middle * ux, 4)) for s in (start, end))
    filled = float(area.area) / max((end - start) * width, 1e-9)
    return Strip((line[0], line[1]), width, filled)


def long_way(area: shapely.Geometry) -> Point2:
    """The direction of the long side of the smallest turned rectangle about an area. [-]"""
    corners = shapely.get_coordinates(shapely.minimum_rotated_rectangle(area))
    if len(corners) < 4:
        return (1.0, 0.0)
    sides = (corners[1] - corners[0], corners[2] - corners[1])
    side = max(sides, key=lambda s: float(np.hypot(*s)))
    length = float(np.hypot(*side))
    return (float(side[0] / length), float(side[1] / length)) if length > 0 else (1.0, 0.0)
