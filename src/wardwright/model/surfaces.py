"""What stops sight in a house, as arrays: walls with their openings, leaves, panes, furniture, flights, balusters.

Heights here are above the house's zero, not above a storey's floor. Memoised by the parts that matter.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
import shapely

from wardwright.geometry.panels import Blockers, box, extruded, joined, sheets
from wardwright.geometry.raster import FloatArray
from wardwright.model.fabric import Storey, Wall
from wardwright.model.fixture import Fixture
from wardwright.model.floor import StoreyParts, storey_parts
from wardwright.model.leaves import Leaves, Medium, leaf_panels
from wardwright.model.opening import Opening
from wardwright.model.placement import fixture_outline, is_way_in, opening_footprint, wall_footprint
from wardwright.model.site import Site

HAIR_M = 0.002
"""A hole is cut this much wider than its wall is thick, so that no sliver is left at the faces. [m]"""


@dataclass(frozen=True)
class Level:
    """One storey with what stands on it: hashable, so that answers can be remembered by it."""

    storey: Storey
    parts: StoreyParts

    def __hash__(self) -> int:
        """The hash of the content, kept: engines look answers up by it again and again."""
        return self._kept_hash

    @cached_property
    def _kept_hash(self) -> int:
        return hash((self.storey, self.parts))

    @property
    def floor_m(self) -> float:
        """Its finished floor above the house's zero. [m]"""
        return self.storey.elevation_m

    @cached_property
    def ceiling_m(self) -> float:
        """Its highest ceiling above the house's zero. [m]"""
        heights = [self.storey.height_m, *(s.height_m for s in self.parts.spaces if s.height_m is not None)]
        heights.extend(z for slope in self.storey.slopes for _, _, z in slope.corners_m)
        return self.storey.elevation_m + max(heights)


def level_of(site: Site, storey_id: str) -> Level:
    """One storey of a site with what stands on it."""
    return _level_of(site.bare, storey_id)


@lru_cache(maxsize=256)
def _level_of(house: Site, storey_id: str) -> Level:
    return Level(house.storey(storey_id), storey_parts(house, storey_id))


def levels_by_stairs(site: Site, storey_id: str) -> tuple[Level, ...]:
    """The storeys that a stair joins to one, in the order of their ids."""
    return _levels_by_stairs(site.bare, storey_id)


@lru_cache(maxsize=256)
def _levels_by_stairs(house: Site, storey_id: str) -> tuple[Level, ...]:
    beside = {
        other
        for stair in house.stairs
        for one, other in ((stair.lower, stair.upper), (stair.upper, stair.lower))
        if one == storey_id
    }
    return tuple(level_of(house, other) for other in sorted(beside))


@lru_cache(maxsize=256)
def surfaces(level: Level, medium: Medium = "heat", leaves: Leaves = "told") -> Blockers:
    """What stops sight on one storey, its stairs left out.

    Parameters
    ----------
    level : Level
        The storey.
    medium : {"heat", "light"}
        Glass stops body heat (8-14 um) and lets light through; so do a curtain and a blind stop light only.
    leaves : {"told", "shut", "away"}
        How doors stand: as the site says (shut where it does not), all shut, or as if there were none, which shows
        whatever any state of them would show.

    Returns
    -------
    Blockers
        Panels with heights above the house's zero. [m]
    """
    openings = sorted(level.parts.openings, key=lambda one: one.id)
    walls = {wall.id: wall for wall in level.parts.walls}
    parts = [_walls(level)]
    for opening in openings:
        wall = walls[opening.wall]
        parts.append(_above_and_below(level, wall, opening))
        parts.append(
            leaf_panels(
                wall,
                opening,
                floor=level.floor_m,
                whole=_wall_levels(level, wall),
                medium=medium,
                leaves=leaves,
            )
        )
    parts.extend(_furniture(level, fixture) for fixture in level.parts.fixtures)
    return joined(parts)


@lru_cache(maxsize=64)
def solid(parts: StoreyParts) -> shapely.Geometry:
    """All walls of a storey as one area, every opening cut out. [m]"""
    return _cut(parts, parts.walls)


def _cut(parts: StoreyParts, walls: tuple[Wall, ...]) -> shapely.Geometry:
    by_id = {wall.id: wall for wall in parts.walls}
    area = shapely.union_all([shapely.Polygon(wall_footprint(wall)).buffer(0) for wall in walls])
    holes = [
        shapely.Polygon(opening_footprint(by_id[o.wall], o)).buffer(HAIR_M, join_style="mitre")
        for o in parts.openings
    ]
    return area.difference(shapely.union_all(holes)) if holes else area


def _walls(level: Level) -> Blockers:
    """Faces of all walls and reveals of all openings, walls of one height joined."""
    groups: dict[tuple[float, float], list[Wall]] = {}
    for wall in level.parts.walls:
        low, high = _wall_levels(level, wall)
        groups.setdefault((low, high), []).append(wall)
    return joined(
        extruded(_cut(level.parts, tuple(walls)), low=low, high=high)
        for (low, high), walls in sorted(groups.items())
    )


def _wall_levels(level: Level, wall: Wall) -> tuple[float, float]:
    low = level.floor_m + wall.base_m
    return low, level.ceiling_m if wall.height_m is None else min(level.ceiling_m, low + wall.height_m)


def _above_and_below(level: Level, wall: Wall, opening: Opening) -> Blockers:
    """The wall under a sill and over a head, by its two faces."""
    low, high = _wall_levels(level, wall)
    sill, head = level.floor_m + opening.sill_m, level.floor_m + opening.head_m
    a, b, c, d = opening_footprint(wall, opening)
    return sheets(
        (*start, *end, *heights) for start, end in ((a, b), (d, c)) for heights in ((low, sill), (head, high))
    )


def _furniture(level: Level, fixture: Fixture) -> Blockers:
    low = level.floor_m + fixture.base_m
    return box(fixture_outline(fixture), low=low, high=low + fixture.height_m)


@lru_cache(maxsize=2048)
def clear_of_walls(
    level: Level, place: tuple[float, float], heading: tuple[float, float], *, most: float = 0.5
) -> tuple[float, float]:
    """The nearest place along a heading that is in no wall, for a device whose wall is drawn thicker than told.

    Parameters
    ----------
    level : Level
        The storey.
    place : tuple of float
        Where it would be. [m]
    heading : tuple of float
        Unit vector of where it looks. [-]
    most : float, default 0.5
        How far it may be moved; where that does not help it stays. [m]

    Returns
    -------
    tuple of float
        The place. [m]
    """
    walls = solid(level.parts)
    for step in np.arange(0.0, most, 0.02):
        moved = (float(place[0] + step * heading[0]), float(place[1] + step * heading[1]))
        if not shapely.intersects_xy(walls, *moved):
            return moved
    return place


@lru_cache(maxsize=64)
def way_in_areas(level: Level) -> tuple[shapely.Geometry, ...]:
    """Holes in walls of one storey by which one comes into our spaces from elsewhere. [m]"""
    walls = {wall.id: wall for wall in level.parts.walls}
    # A site with this storey only: enough to tell which spaces lie on the two sides.
    site = Site.model_construct(
        name="", storeys=(level.storey,), spaces=level.parts.spaces, walls=level.parts.walls
    )
    return tuple(
        shapely.Polygon(opening_footprint(walls[opening.wall], opening))
        for opening in level.parts.openings
        if is_way_in(site, opening)
    )


@lru_cache(maxsize=64)
def ceilings(level: Level, places: tuple[float, float, float, int, int]) -> FloatArray:
    """Ceiling over the middles of a grid's cells, above the house's zero, shape (ny, nx). [m]

    Parameters
    ----------
    level : Level
        The storey.
    places : tuple
        The grid: left edge, lower edge and side of a cell [m], columns and rows [-].

    Returns
    -------
    ndarray, shape (ny, nx)
        The lowest of the storey's height, the space's own and the slopes over each cell. [m]
    """
    x0, y0, cell, nx, ny = places
    x, y = np.meshgrid(x0 + (np.arange(nx) + 0.5) * cell, y0 + (np.arange(ny) + 0.5) * cell)
    height = np.full((ny, nx), level.storey.height_m)
    for space in level.parts.spaces:
        if space.height_m is not None:
            height[shapely.contains_xy(shapely.Polygon(space.outline_m), x, y)] = space.height_m
    for slope in level.storey.slopes:
        corners = np.asarray(slope.corners_m, dtype=np.float64)
        plane, *_ = np.linalg.lstsq(
            np.column_stack([corners[:, :2], np.ones(len(corners))]), corners[:, 2], rcond=None
        )
        over = shapely.contains_xy(shapely.Polygon(corners[:, :2]).buffer(1e-6), x, y)
        height = np.where(over, np.minimum(height, plane[0] * x + plane[1] * y + plane[2]), height)
    return np.asarray(level.floor_m + height, dtype=np.float64)
