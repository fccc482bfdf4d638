"""The shapes of rooms: their floors, their heights, and the hull of them all."""

from __future__ import annotations

from functools import lru_cache

import shapely

from wardwright.model.fabric import Space
from wardwright.model.record import Ring
from wardwright.model.site import Site


def indoors(site: Site) -> tuple[Space, ...]:
    """All spaces that are not in the open air, ours or not, in the order of ids."""
    return tuple(sorted((s for s in site.spaces if not s.is_outdoors), key=lambda s: s.id))


@lru_cache(maxsize=1024)
def floor_polygon(space: Space) -> shapely.Polygon:
    """A space's floor, mended where its outline is not clean. [m]"""
    drawn = shapely.Polygon(space.outline_m)
    if drawn.is_valid:
        return drawn
    parts = [one for one in shapely.get_parts(drawn.buffer(0)) if one.area > 0.0]
    return max(parts, key=lambda one: one.area, default=drawn)


def space_height(site: Site, space: Space) -> float:
    """Floor to ceiling, slopes left out. [m]"""
    return space.height_m if space.height_m is not None else site.storey(space.storey).height_m


@lru_cache(maxsize=64)
def hull_of(spaces: tuple[Space, ...]) -> Ring:
    """Corners of the convex hull of some floors, anticlockwise; none where they have no area. [m]"""
    hull = shapely.union_all([floor_polygon(space) for space in spaces]).convex_hull
    if not isinstance(hull, shapely.Polygon):
        return ()
    ring = shapely.get_coordinates(shapely.geometry.polygon.orient(hull).exterior)[:-1]
    return tuple((float(x), float(y)) for x, y in ring)
