"""Sight with height: the map of lowest visible heights against bisection with a general-purpose ray caster.

The same invented floor, the same 5 cm cells of one 12 m, 90 degree fan, both in one process. The other side asks, for
every cell at once, whether a height is visible, and halves the interval until it is at most 5 cm wide.
"""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from typing import Any

import numpy as np
import shapely
import trimesh
from trimesh.ray.ray_pyembree import RayMeshIntersector

from wardwright.geometry.panels import Blockers, box, extruded, joined
from wardwright.geometry.raster import BoolArray, FloatArray, grid_over
from wardwright.geometry.sight import look, lowest_visible

REACH_M = 12.0
HALF_ANGLE = math.radians(45.0)
CELL_M = 0.05
CEILING_M = 2.4
EYE = (0.06, 0.06, 2.2)
HEADING = math.radians(45.0)

# Invented: x low, y low, x high, y high, underside, top. [m]
WALLS = (
    (-0.3, -0.3, 13.0, 0.0, 0.0, 2.4), (-0.3, 0.0, 0.0, 13.0, 0.0, 2.4),
    (5.0, 0.0, 5.1, 2.0, 0.0, 2.4), (5.0, 2.9, 5.1, 4.0, 0.0, 2.4), (5.0, 2.0, 5.1, 2.9, 2.0, 2.4),
    (0.0, 6.0, 2.0, 6.1, 0.0, 2.4), (2.8, 6.0, 4.0, 6.1, 0.0, 2.4), (2.0, 6.0, 2.8, 6.1, 2.05, 2.4),
    (8.0, 5.0, 8.15, 9.0, 0.0, 2.4), (8.0, 3.0, 8.15, 5.0, 0.0, 1.1), (4.0, 9.0, 8.0, 9.1, 0.0, 2.4),
    (9.0, 1.0, 9.1, 2.0, 0.0, 2.4),
)  # fmt: skip
FURNITURE = (
    (1.2, 2.0, 3.1, 2.9, 0.0, 0.8), (2.4, 3.8, 4.0, 4.7, 0.7, 0.75), (0.0, 3.2, 0.4, 4.4, 0.0, 1.9),
    (6.0, 1.0, 7.6, 1.9, 0.0, 0.9), (6.2, 4.6, 7.4, 5.2, 0.0, 1.3), (5.4, 6.4, 6.0, 7.8, 0.0, 0.5),
    (3.4, 0.0, 4.6, 0.35, 1.4, 2.1), (1.0, 7.0, 1.8, 8.8, 0.0, 0.6),
)  # fmt: skip


def floor_cells() -> FloatArray:
    """Middles of the cells of the fan, shape (N, 2). [m]"""
    grid = grid_over((-0.5, -0.5, 12.5, 12.5), cell=CELL_M)
    points = grid.centres().reshape(-1, 2)
    offset = points - EYE[:2]
    bearing = np.arctan2(offset[:, 1], offset[:, 0]) - HEADING
    return points[(np.hypot(*offset.T) <= REACH_M) & (np.abs(bearing) <= HALF_ANGLE)]


def own_blockers() -> Blockers:
    """The floor as this program holds it."""
    by_levels: dict[tuple[float, float], list[shapely.Polygon]] = {}
    for x0, y0, x1, y1, low, high in WALLS:
        by_levels.setdefault((low, high), []).append(shapely.box(x0, y0, x1, y1))
    parts = [
        extruded(shapely.union_all(areas), low=low, high=high) for (low, high), areas in by_levels.items()
    ]
    for x0, y0, x1, y1, low, high in FURNITURE:
        parts.append(box([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], low=low, high=high))
    return joined(parts)


def other_caster() -> RayMeshIntersector:
    """The same floor as closed meshes."""
    meshes = []
    for x0, y0, x1, y1, low, high in (*WALLS, *FURNITURE):
        mesh = trimesh.creation.box(extents=(x1 - x0, y1 - y0, high - low))
        mesh.apply_translation(((x0 + x1) / 2, (y0 + y1) / 2, (low + high) / 2))
        meshes.append(mesh)
    return RayMeshIntersector(trimesh.util.concatenate(meshes))


def sees(caster: RayMeshIntersector, points: FloatArray, heights: FloatArray) -> BoolArray:
    """Whether each height over its cell is seen, by one ray each from the eye."""
    ends = np.column_stack([points, heights])
    ways = ends - EYE
    places, ray, _ = caster.intersects_location(np.broadcast_to(EYE, ends.shape), ways, multiple_hits=False)
    seen = np.ones(len(points), dtype=np.bool_)
    seen[ray] = ((places - EYE) ** 2).sum(axis=1) >= (ways[ray] ** 2).sum(axis=1) - 1e-6
    return seen


def bisected(caster: RayMeshIntersector, points: FloatArray) -> FloatArray:
    """Lowest visible heights to 5 cm, nan where not even the eye's own height is seen."""
    low = np.zeros(len(points))
    high = np.full(len(points), EYE[2])
    any_seen = sees(caster, points, high)
    while high[0] - low[0] > CELL_M:
        middle = (low + high) / 2
        seen = sees(caster, points, middle)
        high = np.where(seen, middle, high)
        low = np.where(seen, low, middle)
    return np.where(any_seen, high, np.nan)


def run() -> dict[str, Any]:
    """Time both, compare the cells; figures, ratio and budget."""
    points, blockers, caster = floor_cells(), own_blockers(), other_caster()

    def own() -> FloatArray:
        sight = look(
            EYE, blockers, heading=HEADING, half_angle=HALF_ANGLE, reach=REACH_M, band=(0.0, CEILING_M)
        )
        return lowest_visible(sight, points)

    own()
    mine, theirs = (
        min(_timed(own) for _ in range(15)),
        min(_timed(lambda: bisected(caster, points)) for _ in range(3)),
    )
    agreeing, compared = agreement(own(), caster, points)
    return {
        "name": "sight with height: 12 m, 90 degree fan, 5 cm cells",
        "figures": {
            "cells": len(points),
            "panels": len(blockers.panels),
            "map_ms": round(mine * 1e3, 2),
            "bisection_ms": round(theirs * 1e3, 1),
            "cells_compared": compared,
            "agreeing": round(agreeing, 5),
        },
        "ratio": round(theirs / mine, 1),
        "budget": "at least 50 times faster, agreeing on at least 0.995 of the cells away from an edge",
        "is_met": bool(theirs / mine >= 50.0 and agreeing >= 0.995),
    }


def scanned(caster: RayMeshIntersector, points: FloatArray) -> FloatArray:
    """Lowest visible heights by asking for every height in turn, nan where none is seen.

    Bisection takes it that all heights above a seen one are seen, which a door head breaks; this does not.
    """
    lowest = np.full(len(points), np.nan)
    for height in np.arange(CELL_M / 2, EYE[2], CELL_M)[::-1]:
        lowest[sees(caster, points, np.full(len(points), height))] = height
    return lowest


def agreement(lowest: FloatArray, caster: RayMeshIntersector, points: FloatArray) -> tuple[float, int]:
    """Share of cells where both maps agree to 5 cm, among those farther than one cell from an edge; and how many.

    An edge is where the scanned map itself changes: one of the eight neighbours differs by more than 10 cm, or one is
    seen and the other is not.
    """
    reference = scanned(caster, points)
    keys = np.round((points - points.min(axis=0)) / CELL_M).astype(int) + 1
    table = np.full(keys.max(axis=0) + 2, -1.0)
    table[tuple(keys.T)] = np.nan_to_num(reference, nan=-10.0)
    smooth = np.ones(len(points), dtype=np.bool_)
    for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (1, -1), (-1, 1), (-1, -1)):
        beside = table[tuple((keys + np.array([x, y])).T)]
        inside = beside != -1.0
        smooth &= ~inside | (np.abs(beside - table[tuple(keys.T)]) <= 2 * CELL_M)
    own = np.where(lowest <= EYE[2] - CELL_M / 2, lowest, np.nan)
    with np.errstate(invalid="ignore"):
        same = np.where(np.isnan(reference), np.isnan(own), np.abs(own - reference) <= CELL_M)
    return float(same[smooth].mean()), int(smooth.sum())


def _timed(work: Callable[[], FloatArray]) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


if __name__ == "__main__":
    for key, value in run().items():
        print(f"{key}: {value}")
