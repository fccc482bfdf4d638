"""Panes that a glass-break detector listens to: how far, in plain sight or not, and from where it would hear them."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import shapely

from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import USUAL_MOUNTS, Device
from wardwright.model.device_sheets import DeviceSheet, GlassBreakSheet
from wardwright.model.fabric import Space
from wardwright.model.fixture import Fixture
from wardwright.model.floor import StoreyParts, lets_through, solid_walls, storey_parts
from wardwright.model.opening import Opening
from wardwright.model.placement import (
    fixture_outline,
    is_way_in,
    opening_footprint,
    opening_line,
    sides_of_opening,
    standing,
)
from wardwright.model.record import Point3
from wardwright.model.site import Site
from wardwright.rules.finding import Mend
from wardwright.rules.kit import some_of
from wardwright.rules.wall_spots import WallSpot, joined_to, room_of, wall_spots

HEIGHT_M = 2.0
"""Where a glass-break detector is tried on a wall. [m] (common practice)"""


class Ear(NamedTuple):
    """A glass-break detector in its place."""

    device: Device
    row: DeviceSheet
    sheet: GlassBreakSheet
    storey: str
    point: Point3
    """Plan x, plan y, height above the storey's floor. [m]"""
    room: tuple[Space, ...]
    """Its space with those open to it."""


def ears(site: Site, catalogue: Catalogue) -> tuple[Ear, ...]:
    """All glass-break detectors with their sheets and rooms, by id; NoneOfAKind if there is none."""
    return tuple(ear_of(site, *pair) for pair in some_of(site, catalogue, "glass-break-detector"))


def ear_of(site: Site, device: Device, row: DeviceSheet) -> Ear:
    """One glass-break detector with its sheet and room; CatalogueError where the sheet has no such table."""
    if row.glass_break is None:
        raise CatalogueError(
            "a glass-break detector without a table 'glass_break'",
            where=f"catalogue, sheet '{row.id}'",
            cure="Add [sheet.glass_break] to it",
        )
    place = standing(site, device)
    room = room_of(site, place.storey, (place.x_m, place.y_m))
    return Ear(device, row, row.glass_break, place.storey, (place.x_m, place.y_m, place.height_m), room)


def panes_of(site: Site, room: tuple[Space, ...]) -> tuple[Opening, ...]:
    """Openings with glass that lead into a room from elsewhere, by id; rooflights are left out."""
    names = {space.id for space in room}
    return tuple(
        opening
        for opening in sorted(site.openings, key=lambda one: one.id)
        if opening.glazing is not None
        and opening.kind != "rooflight"
        and names & set(sides_of_opening(site, opening))
        and is_way_in(site, opening)
    )


def farthest_m(site: Site, point: Point3, opening: Opening) -> float:
    """From a place to the farthest corner of an opening, in space. [m]"""
    line = opening_line(site.wall(opening.wall), opening)
    corners = ((*end, height) for end in line for height in (opening.sill_m, opening.head_m))
    return max(math.dist(point, corner) for corner in corners)


def is_in_sight(site: Site, storey: str, point: Point3, *, opening: Opening) -> bool:
    """Whether the middle of a pane is in plain sight: past walls, shut doors and what stands between."""
    wall = site.wall(opening.wall)
    parts = storey_parts(site, storey)
    (ax, ay), (bx, by) = opening_line(wall, opening)
    middle = ((ax + bx) / 2, (ay + by) / 2, (opening.sill_m + opening.head_m) / 2)
    ray = shapely.LineString([point[:2], middle[:2]])
    if _blockers(parts, opening).intersects(ray):
        return False
    return not any(_hides(fixture, point, middle) for fixture in parts.fixtures)


@lru_cache(maxsize=256)
def _blockers(parts: StoreyParts, opening: Opening) -> shapely.Geometry:
    """Walls and shut doors of a storey, with one opening cut out of its wall."""
    walls = {one.id: one for one in parts.walls}
    own = shapely.Polygon(opening_footprint(walls[opening.wall], opening)).buffer(0.002, join_style="mitre")
    shut = [
        shapely.Polygon(opening_footprint(walls[one.wall], one))
        for one in parts.openings
        if lets_through(one) and one.kind != "gap" and one.habit == "shut" and one.id != opening.id
    ]
    area = shapely.union_all([solid_walls(parts).difference(own), *shut])
    shapely.prepare(area)
    return area


def _hides(fixture: Fixture, start: Point3, end: Point3) -> bool:
    """Whether the straight line between two places passes through a box."""
    ray = shapely.LineString([start[:2], end[:2]])
    inside = ray.intersection(shapely.Polygon(fixture_outline(fixture)))
    if inside.is_empty or inside.length == 0.0:
        return False
    shares = [shapely.line_locate_point(ray, shapely.Point(at), normalized=True) for at in inside.coords]
    levels = [start[2] + share * (end[2] - start[2]) for share in shares]
    is_hidden: bool = min(levels) < fixture.base_m + fixture.height_m and max(levels) > fixture.base_m
    return is_hidden


def hears(
    site: Site,
    storey: str,
    point: Point3,
    *,
    opening: Opening,
    sheet: GlassBreakSheet,
    is_curtained: bool = False,
) -> bool:
    """Whether a detector of a sheet at a place has a pane within reach and in plain sight."""
    reach = sheet.curtained_reach_m if is_curtained else sheet.reach_m
    return farthest_m(site, point, opening) <= reach and is_in_sight(site, storey, point, opening=opening)


def nearest_hearing_spot(site: Site, row: DeviceSheet, pane: Opening) -> WallSpot | None:
    """The nearest place to a pane, in the room that it leads into, from which it is heard as it is covered.

    Parameters
    ----------
    site : Site
        The house.
    row : DeviceSheet
        Of a detector.
    pane : Opening
        What it is to hear.

    Returns
    -------
    WallSpot or None
        At `HEIGHT_M`; None if there is none.
    """
    sides = (site.space(side) for side in sides_of_opening(site, pane) if side is not None)
    inside = next((one for one in sides if one.is_protected), None)
    if inside is None:
        return None
    (ax, ay), (bx, by) = opening_line(site.wall(pane.wall), pane)
    return hearing_spot(
        site,
        row,
        (pane,),
        room=joined_to(site, inside),
        near=((ax + bx) / 2, (ay + by) / 2, HEIGHT_M),
        heed=pane.covering != "none",
    )


def hearing_spot(
    site: Site,
    row: DeviceSheet,
    panes: tuple[Opening, ...],
    *,
    room: tuple[Space, ...],
    near: Point3,
    heed: bool,
) -> WallSpot | None:
    """The nearest place on the walls of a room from which all panes are heard.

    Parameters
    ----------
    site : Site
        The house.
    row : DeviceSheet
        Of the detector.
    panes : tuple of Opening
        What it is to hear.
    room : tuple of Space
        Where it may go.
    near : (float, float, float)
        Where it is. [m]
    heed : bool
        Whether coverings count: behind one, the shorter reach holds.

    Returns
    -------
    WallSpot or None
        None if there is no such place, or it does not go on walls.
    """
    sheet = row.glass_break
    if sheet is None or "wall" not in (row.mounts or USUAL_MOUNTS[row.kind]):
        return None
    spots = [spot for space in room for spot in wall_spots(site, space, height_m=HEIGHT_M)]
    for spot in sorted(spots, key=lambda one: (round(math.dist(near[:2], (one.x_m, one.y_m)), 6), one)):
        point = (spot.x_m, spot.y_m, HEIGHT_M)
        if all(
            hears(
                site,
                spot.storey,
                point,
                opening=pane,
                sheet=sheet,
                is_curtained=heed and pane.covering != "none",
            )
            for pane in panes
        ):
            return spot
    return None


def moved_to_hear(
    site: Site, ear: Ear, panes: tuple[Opening, ...], *, heed: bool = False
) -> tuple[Mend, ...]:
    """The mend that moves a detector to where it hears all of these panes; empty if there is no such place."""
    spot = hearing_spot(site, ear.row, panes, room=ear.room, near=ear.point, heed=heed)
    if spot is None:
        return ()
    return (Mend(action="move-device", subject=ear.device.id, values=spot.values(HEIGHT_M)),)
