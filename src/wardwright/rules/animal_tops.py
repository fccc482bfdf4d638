"""What an animal may stand on: floors, the tops of things, the steps of flights."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely
from shapely.ops import substring

from wardwright.geometry.raster import FloatArray
from wardwright.model.fabric import Stair
from wardwright.model.fixture import Fixture
from wardwright.model.flights import RISER_M, footprint
from wardwright.model.placement import ceiling_height, fixture_outline, space_at
from wardwright.model.site import Site

STEP_M = 0.1
"""Between places on a thing that are looked at. [m] (assumption)"""
NOT_STOOD_ON = ("curtain", "vent")
"""What no animal stands on."""
HEADROOM_M = 0.2
"""Nothing stands where less is free above. [m] (assumption)"""
FOOTING_M2 = 0.01
"""Nothing stands on less. [m2] (assumption)"""


class Top(NamedTuple):
    """Something an animal may stand on: the floor of a space, the top of a thing, a step of a flight."""

    kind: str
    """`floor`, `stair`, or the kind of the fixture."""
    name: str
    thing: str | None
    """Id of the fixture or stair; None: the floor."""
    storeys: tuple[str, ...]
    """Whose plan it is on; of a flight the lower one and the upper."""
    spaces: tuple[str, ...]
    """The spaces that it is got onto from: a flight's steps from both ends."""
    area: shapely.Geometry
    """On the plan. [m]"""
    top_m: float
    """Above the house's zero. [m]"""
    foot_m: float
    """Its underside above the house's zero: from there one that climbs goes up by stages. [m]"""
    width_m: float
    """Across it where it is narrowest; inf: a floor or a step. [m]"""
    points: FloatArray
    """Places on it, shape (N, 2); of a floor none: its cells are known elsewhere. [m]"""


@lru_cache(maxsize=64)
def tops_of(house: Site) -> tuple[Top, ...]:
    """All that an animal may stand on inside, in the order of storeys, spaces and things.

    Parameters
    ----------
    house : Site
        The bare house.

    Returns
    -------
    tuple of Top
        A thing that stands in several spaces comes once for each.
    """
    found: list[Top] = []
    spaces = sorted((one for one in house.spaces if one.is_protected), key=lambda one: (one.storey, one.id))
    things = sorted(house.fixtures, key=lambda one: one.id)
    outlines = {thing.id: shapely.Polygon(fixture_outline(thing)) for thing in things}
    for space in spaces:
        room = shapely.Polygon(space.outline_m)
        floor = house.storey(space.storey).elevation_m
        found.append(
            Top(
                "floor",
                "the floor",
                None,
                (space.storey,),
                (space.id,),
                room,
                floor,
                floor,
                math.inf,
                np.zeros((0, 2)),
            )
        )
        here = [one for one in things if one.storey == space.storey and outlines[one.id].intersects(room)]
        for thing in here:
            area = _free_top(house, thing, here, outlines=outlines).intersection(room)
            if area.area < FOOTING_M2:
                continue
            points = _over(thing)
            points = points[shapely.covers(area.buffer(1e-6), shapely.points(points))]
            foot = floor + thing.base_m
            top = foot + thing.height_m
            found.append(
                Top(
                    thing.kind,
                    thing.name,
                    thing.id,
                    (space.storey,),
                    (space.id,),
                    area,
                    top,
                    foot,
                    min(thing.size_m),
                    points,
                )
            )
    for stair in sorted(house.stairs, key=lambda one: one.id):
        found.extend(_steps(house, stair))
    return tuple(found)


def _free_top(
    house: Site, thing: Fixture, others: list[Fixture], *, outlines: dict[str, shapely.Polygon]
) -> shapely.Geometry:
    """The part of a box's top with room above it."""
    area = outlines[thing.id]
    top = thing.base_m + thing.height_m
    if thing.kind in NOT_STOOD_ON or ceiling_height(house, thing.storey, thing.centre_m) < top + HEADROOM_M:
        return shapely.Polygon()
    over = [
        outlines[one.id]
        for one in others
        if one.id != thing.id and one.base_m < top + HEADROOM_M and one.base_m + one.height_m > top
    ]
    free: shapely.Geometry = area.difference(shapely.union_all(over)) if over else area
    return free


def _steps(house: Site, stair: Stair) -> list[Top]:
    """The treads of a flight, the lowest first."""
    lower, upper = house.storey(stair.lower), house.storey(stair.upper)
    ends = ((stair.lower, stair.line_m[0]), (stair.upper, stair.line_m[-1]))
    at_ends = [_space_near(house, storey, point) for storey, point in ends]
    spaces = tuple(one for one in at_ends if one is not None)
    line, area = shapely.LineString(stair.line_m), footprint(stair)
    count = max(1, round((upper.elevation_m - lower.elevation_m) / RISER_M))
    places = math.ceil(line.length / count / STEP_M)
    along = (np.arange(places) + 0.5) / places
    found = []
    for index in range(count):
        points = shapely.get_coordinates(
            shapely.line_interpolate_point(line, (index + along) / count, normalized=True)
        )
        piece = substring(line, index / count, (index + 1) / count, normalized=True)
        tread = piece.buffer(stair.width_m / 2, cap_style="flat").intersection(area)
        top = lower.elevation_m + (index + 1) / count * (upper.elevation_m - lower.elevation_m)
        foot = lower.elevation_m
        found.append(
            Top(
                "stair",
                stair.name,
                stair.id,
                (stair.lower, stair.upper),
                spaces,
                tread,
                top,
                foot,
                math.inf,
                points,
            )
        )
    return found


def _space_near(house: Site, storey: str, point: tuple[float, float]) -> str | None:
    """The space in which a flight begins or ends: the one there, or else the nearest of its storey."""
    there = space_at(house, storey, point)
    if there is not None:
        return there.id
    place = shapely.Point(point)
    near = [
        (round(shapely.Polygon(one.outline_m).distance(place), 6), one.id)
        for one in house.spaces
        if one.storey == storey
    ]
    return min(near)[1] if near else None


def _over(fixture: Fixture) -> FloatArray:
    """Places all over the top of a box, shape (N, 2). [m]"""
    width, depth = fixture.size_m
    across = (np.arange(max(1, round(width / STEP_M))) + 0.5) / max(1, round(width / STEP_M)) - 0.5
    along = (np.arange(max(1, round(depth / STEP_M))) + 0.5) / max(1, round(depth / STEP_M)) - 0.5
    x, y = (axis.ravel() for axis in np.meshgrid(across * width, along * depth))
    cos, sin = math.cos(math.radians(fixture.turn_deg)), math.sin(math.radians(fixture.turn_deg))
    cx, cy = fixture.centre_m
    return np.stack([cx + x * cos - y * sin, cy + x * sin + y * cos], axis=1)
