"""The floor of a storey as areas: what is solid, and where a person can stand.

Memoised by the content of the parts that matter, so that moving a device works nothing out again.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import shapely

from wardwright.model.fabric import Space, Stair, Wall
from wardwright.model.fixture import Fixture
from wardwright.model.opening import Opening
from wardwright.model.placement import fixture_outline, opening_footprint, wall_footprint
from wardwright.model.site import Site

STEP_OVER_M = 0.3
"""A sill up to this height is stepped over like a door's. [m] (assumption)"""
BLOCKING_HEIGHT_M = 1.0
"""Furniture at least this high is walked round; lower things are vaulted or pushed aside. [m] (assumption)"""
CRAWL_UNDER_M = 0.6
"""A box whose underside is higher than this does not block a walk. [m] (assumption)"""


class StoreyParts(NamedTuple):
    """What bounds walking on one storey: hashable, so that answers can be remembered by it."""

    storey: str
    spaces: tuple[Space, ...]
    walls: tuple[Wall, ...]
    openings: tuple[Opening, ...]
    fixtures: tuple[Fixture, ...]
    stairs: tuple[Stair, ...]


def storey_parts(site: Site, storey_id: str) -> StoreyParts:
    """Pick the parts of one storey, each list in the order of ids."""
    return _storey_parts(site.bare, storey_id)


@lru_cache(maxsize=256)
def _storey_parts(site: Site, storey_id: str) -> StoreyParts:
    walls = tuple(sorted((w for w in site.walls if w.storey == storey_id), key=lambda w: w.id))
    names = {w.id for w in walls}
    return StoreyParts(
        storey_id,
        tuple(sorted((s for s in site.spaces if s.storey == storey_id), key=lambda s: s.id)),
        walls,
        tuple(sorted((o for o in site.openings if o.wall in names), key=lambda o: o.id)),
        tuple(sorted((f for f in site.fixtures if f.storey == storey_id), key=lambda f: f.id)),
        tuple(sorted((s for s in site.stairs if storey_id in (s.lower, s.upper)), key=lambda s: s.id)),
    )


def lets_through(opening: Opening) -> bool:
    """Whether a person walks through an opening without climbing."""
    return opening.kind in ("door", "gap", "garage-door") and opening.sill_m <= STEP_OVER_M


@lru_cache(maxsize=64)
def solid_walls(parts: StoreyParts) -> shapely.Geometry:
    """All walls of a storey as one area, doors and gaps cut out, windows left in. [m]"""
    by_id = {wall.id: wall for wall in parts.walls}
    walls = shapely.union_all([shapely.Polygon(wall_footprint(w)).buffer(0) for w in parts.walls])
    holes = [
        # A hair wider than the wall, so that no sliver is left at its faces.
        shapely.Polygon(opening_footprint(by_id[o.wall], o)).buffer(0.002, join_style="mitre")
        for o in parts.openings
        if lets_through(o)
    ]
    return walls.difference(shapely.union_all(holes)) if holes else walls


@lru_cache(maxsize=64)
def rooms_and_doorways(parts: StoreyParts) -> shapely.Geometry:
    """All spaces and the doorways between them as one area, whatever stands in them. [m]"""
    by_id = {wall.id: wall for wall in parts.walls}
    floors = [shapely.Polygon(s.outline_m).buffer(0.01, join_style="mitre") for s in parts.spaces]
    doorways = [
        shapely.Polygon(opening_footprint(by_id[o.wall], o)).buffer(0.02, join_style="mitre")
        for o in parts.openings
        if lets_through(o)
    ]
    return shapely.union_all(floors + doorways)


@lru_cache(maxsize=64)
def walkable(parts: StoreyParts) -> shapely.Geometry:
    """Where a person's middle may be on a storey, before their own width is allowed for.

    Parameters
    ----------
    parts : StoreyParts
        What bounds it.

    Returns
    -------
    shapely geometry
        Spaces and doorways, less walls, tall furniture and the wells of stairs from below. [m]
    """
    boxes = [
        shapely.Polygon(fixture_outline(f))
        for f in parts.fixtures
        if f.base_m < CRAWL_UNDER_M and f.base_m + f.height_m >= BLOCKING_HEIGHT_M
    ]
    area = rooms_and_doorways(parts).difference(solid_walls(parts))
    return area.difference(shapely.union_all(boxes)) if boxes else area
