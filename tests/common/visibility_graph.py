"""An independent reference for quickest walks: every corner and every straight line, by networkx and shapely.

Nothing of the engine is used here: sight is `covers`, doors are `intersects`, the way is networkx's Dijkstra.
"""

from __future__ import annotations

from typing import Any

import networkx as nx
import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray

HAIR_M = 1e-9
"""Grazing a corner is not blocked."""


class VisibilityGraph:
    """Least times from one point of an area to any other."""

    def __init__(
        self, area: Any, lines: FloatArray, start: FloatArray, *, pace: float, pass_door: float
    ) -> None:
        self.area = area.buffer(HAIR_M)
        shapely.prepare(self.area)
        self.doors = shapely.linestrings(lines) if len(lines) else np.empty(0, dtype=object)
        self.pace, self.pass_door = pace, pass_door
        corners = np.unique(shapely.get_coordinates(area), axis=0)
        self.points = np.vstack([corners, start])
        first, second = np.triu_indices(len(self.points), 1)
        time = self.straight(self.points[first], self.points[second])
        kept = np.isfinite(time)
        graph = nx.Graph()
        graph.add_nodes_from(range(len(self.points)))
        edges = zip(first[kept].tolist(), second[kept].tolist(), time[kept].tolist(), strict=True)
        graph.add_weighted_edges_from(edges)
        found = nx.single_source_dijkstra_path_length(graph, len(self.points) - 1)
        self.times = np.array([found.get(i, np.inf) for i in range(len(self.points))])

    def straight(self, a: FloatArray, b: FloatArray) -> FloatArray:
        """Times of straight ways, inf where a wall is between; doors at an end do not count."""
        ways = shapely.linestrings(np.stack([a, b], axis=1))
        time = np.linalg.norm(a - b, axis=1) / self.pace
        if len(self.doors):
            time += self.pass_door * shapely.intersects(ways[:, None], self.doors[None]).sum(axis=1)
        clear = shapely.covers(self.area, ways)
        return np.where(clear, time, np.inf)

    def time_to(self, point: FloatArray) -> float:
        """Least time to a point."""
        return float((self.times + self.straight(self.points, np.tile(point, (len(self.points), 1)))).min())


def invented_floor(seed: int = 3, *, boxes: int = 20) -> tuple[Any, FloatArray]:
    """Nine rooms with twelve doorways and furniture at any angle: the area between, and the doors' lines."""
    draw = np.random.default_rng(seed)
    walls = [shapely.box(x - 0.05, 0, x + 0.05, 10) for x in (4, 8)]
    walls += [shapely.box(0, y - 0.05, 12, y + 0.05) for y in (3.3, 6.6)]
    upright = [(x, y) for x in (4, 8) for y in (1.2, 5.0, 8.2)]
    level = [(x, y) for y in (3.3, 6.6) for x in (2.1, 6.3, 10.4)]
    gaps = [shapely.box(x - 0.06, y - 0.45, x + 0.06, y + 0.45) for x, y in upright]
    gaps += [shapely.box(x - 0.45, y - 0.06, x + 0.45, y + 0.06) for x, y in level]
    lines = [[(x, y - 0.45), (x, y + 0.45)] for x, y in upright]
    lines += [[(x - 0.45, y), (x + 0.45, y)] for x, y in level]
    doorways = shapely.union_all(gaps)
    area = shapely.box(0, 0, 12, 10).difference(shapely.union_all(walls).difference(doorways))
    near_doors = doorways.buffer(0.55)
    for _ in range(boxes):
        (x, y), (w, d) = draw.uniform((0.5, 0.5), (11.5, 9.5)), draw.uniform(0.2, 0.6, 2)
        box = shapely.affinity.rotate(shapely.box(x - w, y - d, x + w, y + d), draw.uniform(0, 90))
        if not box.intersects(near_doors):
            area = area.difference(box)
    return area, np.array(lines, dtype=np.float64)
