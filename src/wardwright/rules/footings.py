"""What one stands on at, or near, a place of the plan: a floor, the ground, a roof that can be climbed."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import shapely

from wardwright.model.flights import footprint, height_on
from wardwright.model.placement import Standing, space_at
from wardwright.model.record import Basis, Point2
from wardwright.model.site import Site
from wardwright.model.surroundings import GroundThing

ASIDE_M = 0.5
"""How far to the side somebody reaches who stretches a hand up. [m] (assumption)"""
STEPPED_UP_M = 1.0
"""A terrace of ours up to this height above the ground is stepped onto from it. [m] (assumption)"""


SOLID = ("wall", "shed", "flat-roof", "bin", "car")
"""What is taken for fit to stand on where nobody has said: any error is toward being reached. (assumption)"""


class Footing(NamedTuple):
    """Something to stand on."""

    level_m: float
    """Above the house's zero. [m]"""
    name: str
    subject: str | None
    """Id of the thing or space; None: the ground."""
    basis: Basis
    """How its level is known."""


def is_in_the_open(site: Site, place: Standing) -> bool:
    """Whether a device is outside, on an outer face or on a balcony."""
    space = space_at(site, place.storey, (place.x_m, place.y_m))
    return space is None or space.is_outdoors


def level_of_place(site: Site, place: Standing) -> float:
    """How high a device's middle is above the house's zero. [m]"""
    return site.storey(place.storey).elevation_m + place.height_m


def footing_below(site: Site, place: Standing) -> Footing:
    """The floor of the space that a device is in, or the ground where it is in none."""
    space = space_at(site, place.storey, (place.x_m, place.y_m))
    if space is None:
        return _ground(site)
    storey = site.storey(place.storey)
    return Footing(storey.elevation_m, space.name, space.id, storey.basis_of("elevation_m"))


def footings_near(site: Site, place: Standing) -> tuple[Footing, ...]:
    """All that anybody may stand on to reach a place outside, without passing a door of ours.

    Parameters
    ----------
    site : Site
        The house and the ground about it.
    place : Standing
        The place.

    Returns
    -------
    tuple of Footing
        Highest first: the ground, roofs and things that can be climbed, outside stairs, outdoor spaces that are not
        ours or are stepped onto from the ground.
    """
    at = (place.x_m, place.y_m)
    here = shapely.Point(at)
    ground = _ground(site)
    found = [ground]
    for thing in site.ground.things:
        can_be_stood_on = is_climbable(thing) or thing.kind == "flat-roof"
        if can_be_stood_on and outline_of(thing.outline_m).distance(here) <= ASIDE_M:
            top = ground.level_m + thing.height_m
            found.append(Footing(top, thing.name, thing.id, thing.basis_of("height_m")))
    for space in site.spaces:
        level = site.storey(space.storey).elevation_m
        is_reached = space.belongs != "ours" or level <= ground.level_m + STEPPED_UP_M
        if space.is_outdoors and is_reached and shapely.Polygon(space.outline_m).distance(here) <= ASIDE_M:
            found.append(Footing(level, space.name, space.id, space.basis_of("outline_m")))
    found.extend(_outside_stairs(site, at))
    return tuple(sorted(found, key=lambda one: (-one.level_m, one.subject or "", one.name)))


def _outside_stairs(site: Site, at: Point2) -> list[Footing]:
    found = []
    for stair in site.stairs:
        line, here = shapely.LineString(stair.line_m), shapely.Point(at)
        if footprint(stair).distance(here) > ASIDE_M or is_indoors(site, stair.lower, line):
            continue
        nearest = line.interpolate(line.project(here))
        storeys = (site.storey(stair.lower), site.storey(stair.upper))
        level = float(height_on(stair, storeys, np.array([[nearest.x, nearest.y]]))[0])
        found.append(Footing(level, stair.name, stair.id, stair.basis_of("line_m")))
    return found


def is_indoors(site: Site, storey: str, line: shapely.LineString) -> bool:
    """Whether the middle of a line on a storey's plan lies in a room."""
    middle = line.interpolate(0.5, normalized=True)
    space = space_at(site, storey, (float(middle.x), float(middle.y)))
    return space is not None and not space.is_outdoors


def _ground(site: Site) -> Footing:
    return Footing(site.ground.level_m, "the ground", None, site.ground.basis_of("level_m"))


def outline_of(ring: tuple[Point2, ...]) -> shapely.Geometry:
    """A ring as an area; two points are a line."""
    return shapely.Polygon(ring) if len(ring) > 2 else shapely.LineString(ring)


def is_climbable(thing: GroundThing) -> bool:
    """Whether somebody gets onto a thing: as it is told, or by its kind where nobody has said."""
    if thing.basis_of("can_be_climbed") == "default":
        return thing.kind in SOLID
    return thing.can_be_climbed
