"""What somebody who stands outside sees of a thing on our walls, through glass that nothing covers."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.panels import Blockers, box, joined
from wardwright.geometry.rays import ray_ranges
from wardwright.model.device import Device, WallMount
from wardwright.model.opening import Opening
from wardwright.model.placement import Standing, along, opening_footprint, space_at, standing
from wardwright.model.record import Point2
from wardwright.model.sightlines import blockers_on
from wardwright.model.site import Site
from wardwright.model.surfaces import level_of
from wardwright.rules.finding import Mend
from wardwright.rules.outdoors import outdoor_side
from wardwright.rules.wall_spots import WallSpot, wall_spots

EYE_M = 1.6
"""Of somebody standing, above the ground. [m] (assumption)"""
AWAY_M = (0.5, 1.0, 2.0, 4.0, 8.0)
"""How far before a pane they stand. [m] (assumption)"""
ASIDE_M = (-2.0, -1.0, -0.5, 0.0, 0.5, 1.0, 2.0)
"""How far beside its middle. [m] (assumption)"""


class SeenFrom(NamedTuple):
    """A pane through which a thing is seen from the ground outside."""

    opening: str
    stand: Point2
    """Where the nearest onlooker stands. [m]"""
    distance_m: float
    """From there to the thing, on the plan. [m]"""


def is_bare(opening: Opening) -> bool:
    """Whether an opening has glass that nothing covers."""
    return (opening.glazing is not None or opening.kind == "window") and opening.covering == "none"


def seen_from_outside(site: Site, place: Standing) -> tuple[SeenFrom, ...]:
    """The panes through which somebody on the ground outside sees a place, nearest first, one for each opening.

    Parameters
    ----------
    site : Site
        The house, its furniture, and what stands outside.
    place : Standing
        The place that is looked at.

    Returns
    -------
    tuple of SeenFrom
        Empty where nobody sees it.
    """
    return _seen_from_outside(site.bare, place)


@lru_cache(maxsize=4096)
def _seen_from_outside(site: Site, place: Standing) -> tuple[SeenFrom, ...]:
    stands = _stands(site, place.storey)
    if not stands:
        return ()
    level = level_of(site, place.storey)
    eye = (place.x_m, place.y_m, level.floor_m + place.height_m)
    at = np.asarray([one for _, one in stands])
    lines = shapely.linestrings(np.stack([np.broadcast_to(eye[:2], at.shape), at], axis=1))
    away = at - np.asarray(eye[:2])
    reach = np.hypot(away[:, 0], away[:, 1])
    rise = (site.ground.level_m + EYE_M - eye[2]) / reach
    aims = (np.arctan2(away[:, 1], away[:, 0]), rise)
    blockers = joined([blockers_on(level, (), medium="light"), _things(site)])
    is_free = ray_ranges(eye, aims, blockers) >= reach - 1e-6
    best: dict[str, SeenFrom] = {}
    for i in np.flatnonzero(is_free).tolist():
        opening = site.opening(stands[i][0])
        seen = SeenFrom(opening.id, stands[i][1], float(reach[i]))
        if _goes_through(site, opening, lines[i], heights=(eye[2], float(rise[i]))) and (
            opening.id not in best or seen.distance_m < best[opening.id].distance_m - 1e-9
        ):
            best[opening.id] = seen
    return tuple(sorted(best.values(), key=lambda one: (round(one.distance_m, 6), one.opening)))


def _goes_through(
    site: Site, opening: Opening, line: shapely.LineString, *, heights: tuple[float, float]
) -> bool:
    """Whether a ray, by its height at its start and its rise, goes through the hole of an opening."""
    wall = site.wall(opening.wall)
    inside = line.intersection(shapely.Polygon(opening_footprint(wall, opening)))
    if inside.is_empty:
        return False
    floor = site.storey(wall.storey).elevation_m
    start = shapely.Point(line.coords[0])
    passed = [
        heights[0] + heights[1] * shapely.Point(at).distance(start) for at in shapely.get_coordinates(inside)
    ]
    low, high = floor + opening.sill_m, floor + opening.head_m
    return bool(low <= min(passed) and max(passed) <= high)


@lru_cache(maxsize=64)
def _stands(house: Site, storey: str) -> tuple[tuple[str, Point2], ...]:
    """Places on the ground before each bare pane of a storey, with the opening's id."""
    found: list[tuple[str, Point2]] = []
    for opening in sorted(house.openings, key=lambda one: one.id):
        side = outdoor_side(house, opening)
        wall = house.wall(opening.wall)
        if wall.storey != storey or side is None or not is_bare(opening):
            continue
        sign = 1.0 if side == "left" else -1.0
        for away in AWAY_M:
            for aside in ASIDE_M:
                point = along(
                    wall.line_m, opening.offset_m + aside, left_m=sign * (wall.thickness_m / 2 + away)
                )
                if space_at(house, storey, point) is None:
                    found.append((opening.id, point))
    return tuple(found)


@lru_cache(maxsize=16)
def _things(house: Site) -> Blockers:
    """What stands outside and hides, as boxes."""
    level = house.ground.level_m
    return joined(
        box(np.asarray(thing.outline_m), low=level + thing.base_m, high=level + thing.height_m)
        for thing in house.ground.things
        if len(thing.outline_m) > 2
    )


def unseen_spot(site: Site, device: Device, *, spaces: tuple[str, ...], height_m: float) -> tuple[Mend, ...]:
    """The nearest place on the walls of some spaces that nobody outside sees.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        What is to be moved.
    spaces : tuple of str
        Ids of the spaces that will do; those of its own storey go before others.
    height_m : float
        Middle of the device above the floor. [m]

    Returns
    -------
    tuple of Mend
        One; empty where there is no such place.
    """
    place = standing(site, device)

    def cost(spot: WallSpot) -> tuple[bool, float, WallSpot]:
        way = math.dist((spot.x_m, spot.y_m), (place.x_m, place.y_m))
        return (spot.storey != place.storey, round(way, 6), spot)

    for spot in sorted(_spots(site, spaces, height_m), key=cost):
        if not seen_from_outside(site, spot.standing(height_m)):
            return (Mend(action="move-device", subject=device.id, values=spot.values(height_m)),)
    return ()


def covered(site: Site, seen: tuple[SeenFrom, ...]) -> tuple[Mend, ...]:
    """A blind on the one pane through which a thing is seen; empty where several are."""
    if len(seen) != 1 or site.opening(seen[0].opening).kind != "window":
        return ()
    return (Mend(action="change-covering", subject=seen[0].opening, values=(("covering", "blind"),)),)


def usual_height(device: Device, usual_m: float) -> float:
    """The height of a device on a wall, else what is usual. [m]"""
    return device.mount.height_m if isinstance(device.mount, WallMount) else usual_m


def _spots(site: Site, spaces: tuple[str, ...], height_m: float) -> Iterator[WallSpot]:
    for name in spaces:
        yield from wall_spots(site, site.space(name), height_m=height_m)


def points_of(seen: SeenFrom, place: Standing) -> tuple[Point2, Point2]:
    """The line of sight on the plan, for a sketch. [m]"""
    return seen.stand, (place.x_m, place.y_m)
