"""By which panes sun comes into a house, and what in it is so smooth that it throws the sun on."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import shapely

from wardwright.geometry.panes import Pane
from wardwright.model.opening import Opening
from wardwright.model.placement import along, direction, fixture_outline, sides_of_opening
from wardwright.model.record import Point2, Ring
from wardwright.model.site import Site
from wardwright.model.surfaces import level_of, solid


class SitePane(NamedTuple):
    """A pane of the house, by which sun comes in."""

    opening: str
    storey: str
    pane: Pane
    is_covered: bool
    """Whether a curtain, a blind or a shutter is drawn before it, as told."""

    @property
    def normal(self) -> float:
        """Direction of its outward normal on the plan, anticlockwise from x. [rad]"""
        return math.atan2(self.pane.normal[1], self.pane.normal[0])


@lru_cache(maxsize=64)
def panes_of(house: Site) -> tuple[SitePane, ...]:
    """All panes and gaps to the open air.

    Parameters
    ----------
    house : Site
        A bare house.

    Returns
    -------
    tuple of SitePane
        In the order of the openings' ids.
    """
    found = []
    for opening in sorted(house.openings, key=lambda one: one.id):
        sign = _outward(house, opening)
        lets_light_in = opening.glazing is not None or opening.kind in ("window", "rooflight", "gap")
        if sign == 0.0 or not lets_light_in:
            continue
        wall = house.wall(opening.wall)
        floor = house.storey(wall.storey).elevation_m
        _, (nx, ny), _ = direction(wall.line_m)
        pane = Pane(
            along(wall.line_m, opening.offset_m),
            (sign * nx, sign * ny),
            opening.width_m,
            floor + opening.sill_m,
            floor + opening.head_m,
            wall.thickness_m,
        )
        found.append(SitePane(opening.id, wall.storey, pane, opening.covering != "none"))
    return tuple(found)


def _outward(house: Site, opening: Opening) -> float:
    """1 where the open air is on the left of an opening's wall, -1 on the right, 0 where not on just one side."""
    sides = [s is None or house.space(s).is_outdoors for s in sides_of_opening(house, opening)]
    return 0.0 if sides[0] == sides[1] else 1.0 if sides[0] else -1.0


class GlossyFloor(NamedTuple):
    """A floor that throws the sun on like water."""

    id: str
    name: str
    ring: Ring
    level: float
    """Above the house's zero. [m]"""


class Mirror(NamedTuple):
    """An upright mirror."""

    id: str
    name: str
    ends: tuple[Point2, Point2]
    """Of its face on the plan. [m]"""
    front: tuple[float, float]
    """Unit vector out of its face, on the plan. [-]"""
    low: float
    """Above the house's zero. [m]"""
    high: float
    """Above the house's zero. [m]"""


@lru_cache(maxsize=64)
def shiny_in(house: Site, storey: str) -> tuple[GlossyFloor | Mirror, ...]:
    """The glossy floors and the mirrors of one storey, by id.

    Parameters
    ----------
    house : Site
        A bare house.
    storey : str
        Which storey.

    Returns
    -------
    tuple of GlossyFloor or Mirror
        A mirror's face is its wider side that is the farther from any wall.
    """
    level = level_of(house, storey)
    floors: list[GlossyFloor | Mirror] = [
        GlossyFloor(one.id, f"floor of {one.name}", one.outline_m, level.floor_m)
        for one in level.parts.spaces
        if one.has_glossy_floor
    ]
    walls = solid(level.parts)
    for fixture in level.parts.fixtures:
        if fixture.kind != "mirror":
            continue
        ring = fixture_outline(fixture)
        sides = [(ring[i], ring[(i + 1) % 4]) for i in range(4)]
        longest = sorted(sides, key=lambda one: -math.dist(*one))[:2]
        face = max(longest, key=lambda one: shapely.distance(walls, shapely.LineString(one)))
        (ax, ay), (bx, by) = face
        length = math.dist(*face)
        # The outline runs anticlockwise: out of it is to the right of each side.
        front = ((by - ay) / length, (ax - bx) / length)
        low = level.floor_m + fixture.base_m
        floors.append(Mirror(fixture.id, fixture.name, face, front, low, low + fixture.height_m))
    return tuple(sorted(floors, key=lambda one: one.id))
