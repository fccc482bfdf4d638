"""Places on the outer faces of the house: out of reach of a hand, and served from a ladder on firm ground."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache

import numpy as np
import shapely

from wardwright.model.device import Device, WallMount
from wardwright.model.fabric import Wall
from wardwright.model.placement import FACE_GAP_M, PROBE_M, Standing, along, direction, is_way_in, standing
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.finding import Mend
from wardwright.rules.footings import footing_below, footings_near, level_of_place
from wardwright.rules.ladders import is_served_on_foot
from wardwright.rules.sheet_heights import ROUNDING_M, top_of_face
from wardwright.rules.wall_spots import CLEAR_OF_OPENING_M, END_M, SIDES, STEP_M, Side, WallSpot


def moved_outside(
    site: Site, device: Device, *, low_m: float, high_m: float, out_of_reach_m: float, ladder_m: float
) -> tuple[Mend, ...]:
    """The nearest place on an outer face that nobody reaches by hand and that is served from a ladder.

    Parameters
    ----------
    site : Site
        The house and the ground about it.
    device : Device
        The device, outside.
    low_m, high_m : float
        Between which heights above the ground, or the floor of its balcony, it may hang. [m]
    out_of_reach_m : float
        How far it has to be above all that anybody may stand on. [m]
    ladder_m : float
        How far up one works from a ladder. [m]

    Returns
    -------
    tuple of Mend
        One: straight up or down before others, then along its own wall, then the nearest; empty where none is fit.
    """
    now = standing(site, device)

    def fit_height(spot: WallSpot) -> float | None:
        at = Standing(spot.storey, spot.x_m, spot.y_m, 0.0, spot.normal_deg)
        floor = site.storey(spot.storey).elevation_m
        below = footing_below(site, at).level_m
        least = max(low_m + below, out_of_reach_m + footings_near(site, at)[0].level_m) - floor
        lowest = max(least, site.wall(spot.wall).base_m)
        top = min(high_m + below - floor, top_of_face(site, spot.wall, (spot.x_m, spot.y_m)))
        height = min(max(now.height_m if spot.storey == now.storey else lowest, lowest), top)
        fits = height >= lowest - ROUNDING_M and not _is_in_hole(site, spot, height)
        return height if fits and is_served_on_foot(site, at._replace(height_m=height), ladder_m) else None

    mount = device.mount
    if isinstance(mount, WallMount):
        normal = facing_off_its_wall(site, device).heading_deg
        height = fit_height(
            WallSpot(now.storey, "", mount.wall, mount.side, mount.offset_m, now.x_m, now.y_m, normal, 0)
        )
        if height is not None:
            return (Mend(action="move-device", subject=device.id, values=(("height_m", height),)),)
    level = level_of_place(site, now)
    found = []
    for spot in outer_spots(site):
        height = fit_height(spot)
        if height is not None:
            up = site.storey(spot.storey).elevation_m + height - level
            is_other = not isinstance(mount, WallMount) or spot.wall != mount.wall
            far = math.hypot(spot.x_m - now.x_m, spot.y_m - now.y_m, up)
            found.append((is_other, round(far, 6), spot, height))
    if not found:
        return ()
    is_other, _, spot, height = min(found)
    heading = spot.normal_deg % 360.0 if is_other else None
    return (Mend(action="move-device", subject=device.id, values=spot.values(height, heading_deg=heading)),)


def facing_off_its_wall(site: Site, device: Device) -> Standing:
    """Where a device is, looking straight off its wall wherever it is aimed: the way its ladder stands."""
    place = standing(site, device)
    if not isinstance(device.mount, WallMount):
        return place
    return place._replace(heading_deg=_normal_deg(site.wall(device.mount.wall), device.mount.side))


def outer_spots(site: Site) -> tuple[WallSpot, ...]:
    """Places along the outer faces of walls that have a room of ours behind them, by storey and wall."""
    return _outer_spots(site.bare)


@lru_cache(maxsize=64)
def _outer_spots(site: Site) -> tuple[WallSpot, ...]:
    found: list[WallSpot] = []
    for storey in sorted(site.storeys, key=lambda one: one.id):
        here = [space for space in site.spaces if space.storey == storey.id]
        indoors = shapely.union_all([shapely.Polygon(s.outline_m) for s in here if not s.is_outdoors])
        ours = shapely.union_all([shapely.Polygon(s.outline_m) for s in here if s.is_protected])
        walls = (w for w in site.walls if w.storey == storey.id and w.is_exterior is not False)
        for wall in sorted(walls, key=lambda one: one.id):
            for side in SIDES:
                found.extend(_on_face(site, wall, side, indoors=indoors, ours=ours))
    return tuple(found)


def _on_face(
    site: Site, wall: Wall, side: Side, *, indoors: shapely.Geometry, ours: shapely.Geometry
) -> Iterator[WallSpot]:
    sign = 1.0 if side == "left" else -1.0
    _, _, length = direction(wall.line_m)
    half = wall.thickness_m / 2
    for offset in np.arange(END_M, length - END_M + 1e-9, STEP_M).tolist():
        before = along(wall.line_m, offset, left_m=sign * (half + PROBE_M))
        behind = along(wall.line_m, offset, left_m=-sign * (half + PROBE_M))
        if not shapely.intersects_xy(ours, *behind) or shapely.intersects_xy(indoors, *before):
            continue
        boundary = site.ground.boundary_m
        if boundary is not None and not shapely.intersects_xy(shapely.Polygon(boundary), *before):
            continue
        x, y = along(wall.line_m, offset, left_m=sign * (half + FACE_GAP_M))
        yield WallSpot(wall.storey, "", wall.id, side, offset, x, y, _normal_deg(wall, side), 0)


def _normal_deg(wall: Wall, side: Side) -> float:
    _, (nx, ny), _ = direction(wall.line_m)
    sign = 1.0 if side == "left" else -1.0
    return math.degrees(math.atan2(sign * ny, sign * nx))


def _is_in_hole(site: Site, spot: WallSpot, height_m: float) -> bool:
    """Whether a place is on, or just beside, an opening of its wall, or of the wall above or below it."""
    level = site.storey(spot.storey).elevation_m + height_m
    for opening in site.openings:
        wall = site.wall(opening.wall)
        floor = site.storey(wall.storey).elevation_m
        sill, head = floor + opening.sill_m - CLEAR_OF_OPENING_M, floor + opening.head_m + CLEAR_OF_OPENING_M
        if not sill < level < head or not is_way_in(site, opening):
            continue
        middle: Point2 = along(wall.line_m, opening.offset_m)
        aside = math.dist(middle, (spot.x_m, spot.y_m))
        if aside < math.hypot(opening.width_m / 2 + CLEAR_OF_OPENING_M, wall.thickness_m / 2 + FACE_GAP_M):
            return True
    return False
