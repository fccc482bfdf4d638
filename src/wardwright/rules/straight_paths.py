"""Straight paths between devices: how long, and through how many walls and floors."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import shapely

from wardwright.model.fabric import Wall
from wardwright.model.floor import StoreyParts, storey_parts
from wardwright.model.placement import Standing, opening_footprint, wall_footprint
from wardwright.model.site import Site

WALL_DB = 5.0
"""What one inner wall takes from a radio path. [dB] (assumption: between plasterboard and brick)"""
FLOOR_DB = 9.0
"""What one floor takes. [dB] (from memory of ITU-R P.1238; the radio question works it out)"""
NEAREST_M = 1.0
"""Nearer than this a path is taken for this long. [m] (assumption)"""
IN_WALL_M = 0.02
"""A path that is in a wall for less than this only grazes it. [m] (assumption)"""


class StraightPath(NamedTuple):
    """A straight path between two places."""

    length_m: float
    walls: int
    floors: int

    @property
    def loss_db(self) -> float:
        """A rough loss, to tell a better path from a worse: spreading, walls and floors. [dB]"""
        spread = 20.0 * math.log10(max(self.length_m, NEAREST_M))
        return spread + WALL_DB * self.walls + FLOOR_DB * self.floors

    @property
    def words(self) -> str:
        """What it goes through."""
        parts = [
            f"{count} {word}{'' if count == 1 else 's'}"
            for count, word in ((self.walls, "wall"), (self.floors, "floor"))
            if count
        ]
        return "through " + " and ".join(parts) if parts else "through nothing"


def straight_path(site: Site, one: Standing, other: Standing) -> StraightPath:
    """The straight path between two places.

    Parameters
    ----------
    site : Site
        The house; doors count as free, walls by their count, whatever they are made of.
    one, other : Standing
        The two ends.

    Returns
    -------
    StraightPath
        Its length [m], and the walls and floors that it crosses [-].
    """
    return _straight_path(site.bare, one._replace(heading_deg=0.0), other._replace(heading_deg=0.0))


@lru_cache(maxsize=8192)
def _straight_path(site: Site, one: Standing, other: Standing) -> StraightPath:
    floor_of = {storey.id: storey.elevation_m for storey in site.storeys}
    a = (one.x_m, one.y_m, floor_of[one.storey] + one.height_m)
    b = (other.x_m, other.y_m, floor_of[other.storey] + other.height_m)
    low, high = sorted((a[2], b[2]))
    floors = len({level for level in floor_of.values() if low < level <= high})
    walls = 0
    rising = sorted(site.storeys, key=lambda storey: storey.elevation_m)
    for i, storey in enumerate(rising):
        top = rising[i + 1].elevation_m if i + 1 < len(rising) else math.inf
        bottom = storey.elevation_m if i else -math.inf
        piece = _between(a, b, low=bottom, high=top)
        if piece is not None:
            walls += _walls(storey_parts(site, storey.id), piece)
    return StraightPath(math.dist(a, b), walls, floors)


def _between(
    a: tuple[float, float, float], b: tuple[float, float, float], *, low: float, high: float
) -> shapely.LineString | None:
    """The piece of a path between two levels, on the plan."""
    rise = b[2] - a[2]
    if abs(rise) < 1e-9:
        return shapely.LineString([a[:2], b[:2]]) if low <= a[2] < high else None
    first, last = sorted(((low - a[2]) / rise, (high - a[2]) / rise))
    first, last = max(first, 0.0), min(last, 1.0)
    if first >= last:
        return None
    ends = [(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])) for t in (first, last)]
    return shapely.LineString(ends)


@lru_cache(maxsize=4096)
def _solid(wall: Wall) -> shapely.Geometry:
    solid = shapely.Polygon(wall_footprint(wall)).buffer(0)
    shapely.prepare(solid)
    return solid


def _walls(parts: StoreyParts, piece: shapely.LineString) -> int:
    """How many walls a path goes through, doorways apart."""
    count = 0
    for wall in parts.walls:
        solid = _solid(wall)
        if not solid.intersects(piece):
            continue
        inside = piece.intersection(solid)
        if inside.length <= IN_WALL_M:
            continue
        doors = [
            shapely.Polygon(opening_footprint(wall, one)).buffer(0.002)
            for one in parts.openings
            if one.wall == wall.id and one.kind in ("door", "gap")
        ]
        if inside.difference(shapely.union_all(doors)).length > IN_WALL_M:
            count += 1
    return count
