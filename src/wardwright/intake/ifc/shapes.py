"""Solids of triangles, and the flat shapes that a plan needs from them."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from wardwright.model.record import Line2, Point2, Ring

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]

SAME_PLACE_M = 1e-4
"""Corners closer than this are one. [m] (assumption)"""


class Solid(NamedTuple):
    """A shape made of triangles."""

    points: FloatArray
    """Corners, shape (n, 3). [m]"""
    faces: IntArray
    """Triangles, shape (m, 3): rows of `points`."""

    @property
    def low(self) -> float:
        """Its lowest height. [m]"""
        return float(self.points[:, 2].min())

    @property
    def high(self) -> float:
        """Its greatest height. [m]"""
        return float(self.points[:, 2].max())


class Level(NamedTuple):
    """One level face of a solid."""

    height: float
    area: shapely.Geometry


def joined(solids: Iterable[Solid]) -> Solid | None:
    """Make one solid of several; None of none."""
    points: list[FloatArray] = []
    faces: list[IntArray] = []
    count = 0
    for solid in solids:
        points.append(solid.points)
        faces.append(solid.faces + count)
        count += len(solid.points)
    return Solid(np.concatenate(points), np.concatenate(faces)) if points else None


def normals(solid: Solid) -> FloatArray:
    """Outward normals of the triangles, their length twice the area, shape (m, 3). [m2]"""
    a, b, c = (solid.points[solid.faces[:, k]] for k in range(3))
    crossed: FloatArray = np.cross(b - a, c - a)
    return crossed


def _flat(solid: Solid, chosen: NDArray[np.bool_]) -> shapely.Geometry:
    corners = solid.points[solid.faces[chosen]][:, :, :2]
    area = shapely.area(shapely.polygons(corners)) if len(corners) else np.zeros(0)
    rings = [shapely.Polygon(corner) for corner, size in zip(corners, area, strict=True) if size > 1e-9]
    return shapely.set_precision(shapely.union_all(rings), SAME_PLACE_M)


def plan_outline(solid: Solid) -> shapely.Geometry:
    """The shadow of a solid on the plan. [m]"""
    return _flat(solid, np.ones(len(solid.faces), dtype=np.bool_))


def cut(solid: Solid, height: float) -> shapely.Geometry:
    """The area that a level plane cuts out of a solid. [m]"""
    z = solid.points[:, 2][solid.faces] - height
    # A corner just on the plane counts as above it, so that each edge is either cut or not.
    above = z >= 0.0
    crossing = above.any(axis=1) & ~above.all(axis=1)
    pieces = []
    for face, heights, over in zip(solid.faces[crossing], z[crossing], above[crossing], strict=True):
        ends = []
        for i, j in ((0, 1), (1, 2), (2, 0)):
            if over[i] != over[j]:
                share = heights[i] / (heights[i] - heights[j])
                p, q = solid.points[face[i]], solid.points[face[j]]
                ends.append((p + share * (q - p))[:2].round(5))
        if len(ends) == 2 and not np.array_equal(ends[0], ends[1]):
            pieces.append(shapely.LineString(ends))
    if not pieces:
        return shapely.Polygon()
    return shapely.build_area(shapely.union_all(pieces))


def levels(solid: Solid, *, least: float, upward: bool = True) -> list[Level]:
    """The level faces of a solid of at least an area, lowest first. [m]"""
    normal = normals(solid)
    size = np.linalg.norm(normal, axis=1)
    flat = (size > 1e-12) & ((normal[:, 2] if upward else -normal[:, 2]) > 0.99 * size)
    height = solid.points[solid.faces[:, 0], 2].round(2)
    found = [Level(float(h), _flat(solid, flat & (height == h))) for h in np.unique(height[flat])]
    return [level for level in found if level.area.area >= least]


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
