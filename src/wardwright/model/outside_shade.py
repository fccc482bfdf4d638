"""What shades a storey's panes from outside, as boxes and panels. Memoised by the bare house."""

from __future__ import annotations

from functools import lru_cache

import shapely

from wardwright.geometry.panels import NOTHING, Blockers, box, extruded, joined
from wardwright.model.record import Ring
from wardwright.model.site import Site
from wardwright.model.surfaces import Level, level_of

SLAB_M = 0.2
"""Thickness of a floor that stands out over the storey below. [m] (assumption)"""
HIDING = ("wall", "fence", "shed", "flat-roof", "building", "overhang")
"""What stands or hangs outside and hides the sun; leaves, cars and bins are not counted on."""


@lru_cache(maxsize=64)
def outside_shade(house: Site, storey: str) -> Blockers:
    """What shades one storey: other storeys' walls, floors that stand out, and what stands or hangs outside.

    Parameters
    ----------
    house : Site
        A bare house.
    storey : str
        The storey whose panes are asked about; its own walls are left out.

    Returns
    -------
    Blockers
        Panels and boxes with heights above the house's zero. [m]
    """
    parts: list[Blockers] = [NOTHING]
    for one in house.storeys:
        level = level_of(house, one.id)
        if one.id != storey:
            parts.append(_walls_alone(level))
        if one.elevation_m > 0.0:
            parts += [
                _solid(space.outline_m, low=one.elevation_m - SLAB_M, high=one.elevation_m)
                for space in level.parts.spaces
            ]
    ground = house.ground.level_m
    parts += [
        _solid(thing.outline_m, low=ground + thing.base_m, high=ground + thing.height_m)
        for thing in house.ground.things
        if thing.kind in HIDING
    ]
    return joined(parts)


def _walls_alone(level: Level) -> Blockers:
    """The outside of another storey as one solid area."""
    areas = [
        shapely.Polygon(space.outline_m).buffer(0) for space in level.parts.spaces if not space.is_outdoors
    ]
    return extruded(shapely.union_all(areas), low=level.floor_m, high=level.ceiling_m) if areas else NOTHING


def _solid(ring: Ring, *, low: float, high: float) -> Blockers:
    """A thing with an underside and a top: one box where its outline is convex, else one for each triangle of it."""
    if len(ring) == 2:  # a fence without thickness
        return extruded(shapely.LineString(ring).buffer(0.01, cap_style="flat"), low=low, high=high)
    shape = shapely.Polygon(ring).buffer(0)
    if shape.convex_hull.area - shape.area < 1e-6:
        return box(shapely.get_coordinates(shape.convex_hull)[:-1], low=low, high=high)
    triangles = shapely.get_parts(shapely.constrained_delaunay_triangles(shape))
    return joined(box(shapely.get_coordinates(one)[:-1], low=low, high=high) for one in triangles)
