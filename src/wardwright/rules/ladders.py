"""What is served on foot or from a ladder outside, and what only by leaning out of a window."""

from __future__ import annotations

import math
from typing import NamedTuple

import shapely

from wardwright.model.opening import Opening
from wardwright.model.placement import Standing, along, is_way_in, opening_line
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.footings import level_of_place, outline_of

SLOPE = 0.25
"""How far out a ladder's foot stands, as a share of its height: 1 in 4. [-] (common practice)"""
FOOT_M = 0.3
"""Room that a ladder's foot wants to each side. [m] (assumption)"""
STEPS_M = 3.0
"""How far up one works from steps on a balcony. [m] (assumption)"""
NOT_FIRM = ("shed", "flat-roof", "building", "wall", "fence", "tree", "pipe", "other")
"""What no ladder stands on; a car or a bin is moved away for the day."""


class Window(NamedTuple):
    """A window, and how far a place is from it."""

    opening: Opening
    distance_m: float
    """From the nearest point of its opening. [m]"""


def is_served_on_foot(site: Site, place: Standing, ladder_m: float) -> bool:
    """Whether a place outside is served from firm ground with a ladder, or from a balcony of ours with steps.

    Parameters
    ----------
    site : Site
        The house and the ground about it.
    place : Standing
        The place; its heading is straight off the wall.
    ladder_m : float
        How far up one works from a ladder. [m]

    Returns
    -------
    bool
        True where one does.
    """
    return is_over_balcony(site, place) or (
        height_over_ground(site, place) <= ladder_m and is_firm_below(site, place)
    )


def height_over_ground(site: Site, place: Standing) -> float:
    """How high a place is above the ground. [m]"""
    return level_of_place(site, place) - site.ground.level_m


def is_over_balcony(site: Site, place: Standing) -> bool:
    """Whether an outdoor space of ours lies under a place, near enough for steps."""
    level = level_of_place(site, place)
    here = shapely.Point(place.x_m, place.y_m).buffer(FOOT_M)
    return any(
        space.is_outdoors
        and space.belongs == "ours"
        and 0.0 <= level - site.storey(space.storey).elevation_m <= STEPS_M
        and shapely.Polygon(space.outline_m).intersects(here)
        for space in site.spaces
    )


def is_firm_below(site: Site, place: Standing) -> bool:
    """Whether a ladder's foot stands on open ground: on no roof of ours, no shed, nothing that stands there."""
    foot = shapely.Point(ladder_foot(site, place)).buffer(FOOT_M)
    level = level_of_place(site, place)
    roofs = [
        shapely.Polygon(space.outline_m)
        for space in site.spaces
        if not space.is_outdoors and site.storey(space.storey).elevation_m < level
    ]
    things = [outline_of(thing.outline_m) for thing in site.ground.things if thing.kind in NOT_FIRM]
    return not any(area.intersects(foot) for area in (*roofs, *things))


def ladder_foot(site: Site, place: Standing) -> Point2:
    """Where a ladder's foot stands that leans by a place. [m]"""
    out = max(FOOT_M, SLOPE * height_over_ground(site, place))
    angle = math.radians(place.heading_deg)
    return (place.x_m + out * math.cos(angle), place.y_m + out * math.sin(angle))


def nearest_window(site: Site, place: Standing) -> Window | None:
    """The nearest opening of ours to a place outside that opens and is no door to the ground; None without one."""
    level = level_of_place(site, place)
    found = []
    for opening in site.openings:
        floor = site.storey(site.wall(opening.wall).storey).elevation_m
        is_fixed = opening.hinge in ("fixed", "none")
        if opening.kind not in ("window", "rooflight", "door") or is_fixed or not is_way_in(site, opening):
            continue
        line = opening_line(site.wall(opening.wall), opening)
        thickness = site.wall(opening.wall).thickness_m
        flat = min(
            shapely.LineString(
                [along(line, 0.0, left_m=off), along(line, opening.width_m, left_m=off)]
            ).distance(shapely.Point(place.x_m, place.y_m))
            for off in (thickness / 2, -thickness / 2)
        )
        low, high = floor + opening.sill_m, floor + opening.head_m
        found.append(Window(opening, math.hypot(flat, max(low - level, 0.0, level - high))))
    return min(found, key=lambda one: (round(one.distance_m, 6), one.opening.id), default=None)
