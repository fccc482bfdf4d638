"""Room to open a device or slide it off, toward the side that its sheet names."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

import shapely

from wardwright.model.device import CeilingMount, Device, FreeMount, OpeningMount, WallMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.floor import solid_walls, storey_parts
from wardwright.model.opening import Opening
from wardwright.model.placement import (
    Standing,
    along,
    ceiling_height,
    direction,
    fixture_outline,
    opening_line,
    standing,
)
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.footings import footing_below, is_in_the_open

BODY_M = 0.05
"""From a device's middle to its side: its room begins there. [m] (assumption)"""
HAIR_M = 1e-6
"""What is only touched is not in the way. [m]"""
FAR_M = 5.0
"""Room beyond this is not looked for. [m]"""
ARC_STEPS = 8
"""Straight pieces that a quarter turn of a leaf is drawn with. [-]"""


class Free(NamedTuple):
    """Room on one side of a device, and what ends it."""

    length_m: float
    """From the device's side. [m]"""
    what: str
    """What ends it, in words; empty where nothing near does."""
    subject: str | None = None
    is_leaf: bool = False
    """Whether it is a leaf, which can be shut for the while."""


NOTHING_NEAR = Free(FAR_M, "")


def room_to_serve(site: Site, device: Device, sheet: DeviceSheet) -> Free | None:
    """How much room there is on the side where the sheet wants some.

    Parameters
    ----------
    site : Site
        The house and its fixtures.
    device : Device
        The device.
    sheet : DeviceSheet
        Its sheet.

    Returns
    -------
    Free or None
        None where it is not asked for: what stands free is picked up, and where on its frame a contact is, is not
        known.
    """
    return _room_to_serve(site.bare, device, sheet)


@lru_cache(maxsize=1024)
def _room_to_serve(site: Site, device: Device, sheet: DeviceSheet) -> Free | None:
    place, mount, side = standing(site, device), device.mount, sheet.service_side
    if isinstance(mount, OpeningMount) or (isinstance(mount, FreeMount) and side != "above"):
        return None
    if isinstance(mount, CeilingMount) and side != "beside":
        return _down(site, place)  # its front, and all else that can be got at, is below
    if side == "above":
        return _up(site, place)
    if side == "below":
        return _down(site, place)
    if isinstance(mount, WallMount):
        _, (nx, ny), _ = direction(site.wall(mount.wall).line_m)
        sign = 1.0 if mount.side == "left" else -1.0
        off, aside = (sign * nx, sign * ny), (-sign * ny, sign * nx)
        ways: tuple[Point2, ...] = (off,) if side == "front" else (aside, (-aside[0], -aside[1]))
    else:
        ways = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))
    # To the side, either way will do.
    return max((_out(site, place, way) for way in ways), key=lambda free: (free.length_m, free.what))


def _up(site: Site, place: Standing) -> Free:
    here = (place.x_m, place.y_m)
    found = []
    if not is_in_the_open(site, place):
        found.append(Free(ceiling_height(site, place.storey, here) - place.height_m, "the ceiling"))
    for low, _, name, fixture in _boxes_at(site, place):
        if low >= place.height_m:
            found.append(Free(low - place.height_m, name, fixture))
    return _least(found)


def _down(site: Site, place: Standing) -> Free:
    foot = footing_below(site, place).level_m - site.storey(place.storey).elevation_m
    found = [Free(place.height_m - foot, "the ground" if is_in_the_open(site, place) else "the floor")]
    for _, high, name, fixture in _boxes_at(site, place):
        if high <= place.height_m:
            found.append(Free(place.height_m - high, name, fixture))
    return _least(found)


def _boxes_at(site: Site, place: Standing) -> Iterator[tuple[float, float, str, str]]:
    """Underside, top, name and id of each fixture right above or below a place."""
    body = shapely.Point(place.x_m, place.y_m).buffer(BODY_M - HAIR_M)
    for fixture in site.fixtures:
        if fixture.storey == place.storey and shapely.Polygon(fixture_outline(fixture)).intersects(body):
            yield fixture.base_m, fixture.base_m + fixture.height_m, fixture.name, fixture.id


def _out(site: Site, place: Standing, way: Point2) -> Free:
    """Along the plan, past walls, fixtures of that height and leaves as far as they open."""
    here = shapely.Point(place.x_m, place.y_m)
    line = shapely.LineString(
        [(place.x_m, place.y_m), (place.x_m + FAR_M * way[0], place.y_m + FAR_M * way[1])]
    )
    parts = storey_parts(site, place.storey)
    things: list[tuple[shapely.Geometry, str, str | None, bool]] = [
        (solid_walls(parts), "a wall", None, False)
    ]
    things.extend(
        (shapely.Polygon(fixture_outline(box)), box.name, box.id, False)
        for box in parts.fixtures
        if box.base_m <= place.height_m <= box.base_m + box.height_m
    )
    things.extend(
        (swept(site, opening), f"the leaf of {opening.name}", opening.id, True)
        for opening in parts.openings
        if opening.sill_m < place.height_m < opening.head_m and _turns(opening)
    )
    found = []
    for shape, what, subject, is_leaf in things:
        hit = line.intersection(shape)
        if not hit.is_empty:
            found.append(Free(float(here.distance(hit)), what, subject, is_leaf))
    return _least(found)


def _turns(opening: Opening) -> bool:
    return opening.hinge in ("start", "end") and opening.leaves > 0 and opening.swing != "none"


def swept(site: Site, opening: Opening) -> shapely.Polygon:
    """The floor that a leaf passes over when it is opened by a quarter turn. [m]"""
    wall = site.wall(opening.wall)
    line = opening_line(wall, opening)
    (ux, uy), (nx, ny), length = direction(line)
    side = 1.0 if opening.swing == "left" else -1.0
    sign = 1.0 if opening.hinge == "start" else -1.0
    width = length / max(1, opening.leaves)
    hinge = along(line, 0.0 if opening.hinge == "start" else length, left_m=side * wall.thickness_m / 2)
    arc = []
    for step in range(ARC_STEPS + 1):
        angle = math.pi / 2 * step / ARC_STEPS
        cos, sin = width * sign * math.cos(angle), width * side * math.sin(angle)
        arc.append((hinge[0] + cos * ux + sin * nx, hinge[1] + cos * uy + sin * ny))
    return shapely.Polygon([hinge, *arc])


def _least(found: list[Free]) -> Free:
    """What is nearest, counted from the device's side."""
    if not found:
        return NOTHING_NEAR
    nearest = min(
        found, key=lambda free: (round(free.length_m, 9), free.is_leaf, free.subject or "", free.what)
    )
    return nearest._replace(length_m=max(0.0, nearest.length_m - BODY_M))
