"""Solids of triangles, and the flat shapes that a plan needs from them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

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
