"""Where things of a site are on the plan: worked out from the records, never stored twice.

Every function here is memoised by the content of what it is given.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from wardwright.model.device import CeilingMount, Device, FreeMount, Mount, OpeningMount, WallMount
from wardwright.model.fabric import Space, Wall
from wardwright.model.fixture import Fixture
from wardwright.model.opening import Opening
from wardwright.model.record import Line2, Point2, Ring
from wardwright.model.site import Site

FACE_GAP_M = 0.04
"""How far a device's middle stands off the face it is fixed to. [m] (assumption)"""
CEILING_DROP_M = 0.03
"""How far a ceiling device's middle hangs below the ceiling. [m] (assumption)"""
PROBE_M = 0.25
"""How far from a wall's face a space is looked for. [m] (assumption)"""


class Standing(NamedTuple):
    """Where a device is and looks: storey, plan x and y, height above that storey's floor, heading."""

    storey: str
    x_m: float
    y_m: float
    height_m: float
    heading_deg: float


def direction(line: Line2) -> tuple[Point2, Point2, float]:
    """Unit vector along a line, unit vector to its left, and its length [m]."""
    (ax, ay), (bx, by) = line
    length = math.hypot(bx - ax, by - ay)
    if length == 0.0:
        return (1.0, 0.0), (0.0, 1.0), 0.0
    ux, uy = (bx - ax) / length, (by - ay) / length
    return (ux, uy), (-uy, ux), length


def along(line: Line2, offset_m: float, *, left_m: float = 0.0) -> Point2:
    """The point `offset_m` along a line and `left_m` to its left. [m]"""
    (ux, uy), (nx, ny), _ = direction(line)
    (ax, ay), _ = line
    return (ax + ux * offset_m + nx * left_m, ay + uy * offset_m + ny * left_m)


@lru_cache(maxsize=4096)
def wall_footprint(wall: Wall) -> Ring:
    """The outline of a wall on the plan, openings not cut out."""
    if wall.footprint_m is not None:
        return wall.footprint_m
    half = wall.thickness_m / 2
    _, _, length = direction(wall.line_m)
    return (
        along(wall.line_m, 0.0, left_m=-half),
        along(wall.line_m, length, left_m=-half),
        along(wall.line_m, length, left_m=half),
        along(wall.line_m, 0.0, left_m=half),
    )


def opening_line(wall: Wall, opening: Opening) -> Line2:
    """The line of an opening on its wall's centre line, jamb to jamb."""
    half = opening.width_m / 2
    return (along(wall.line_m, opening.offset_m - half), along(wall.line_m, opening.offset_m + half))


def opening_footprint(wall: Wall, opening: Opening) -> Ring:
    """The outline of the hole an opening makes in its wall, jamb to jamb and face to face."""
    line = opening_line(wall, opening)
    _, _, length = direction(line)
    half = wall.thickness_m / 2
    return (
        along(line, 0.0, left_m=-half),
        along(line, length, left_m=-half),
        along(line, length, left_m=half),
        along(line, 0.0, left_m=half),
    )


def fixture_outline(fixture: Fixture) -> Ring:
    """The outline of a fixture's box on the plan, anticlockwise."""
    width, depth = fixture.size_m[0] / 2, fixture.size_m[1] / 2
    cos, sin = math.cos(math.radians(fixture.turn_deg)), math.sin(math.radians(fixture.turn_deg))
    corners = ((-width, -depth), (width, -depth), (width, depth), (-width, depth))
    cx, cy = fixture.centre_m
    return tuple((cx + x * cos - y * sin, cy + x * sin + y * cos) for x, y in corners)


@lru_cache(maxsize=1024)
def _polygon(space: Space) -> shapely.Polygon:
    return shapely.Polygon(space.outline_m)


def space_at(site: Site, storey_id: str, point: Point2) -> Space | None:
    """The space of a storey that holds a point of the plan; None outside them all."""
    return _space_at(site.bare, storey_id, point)


@lru_cache(maxsize=16384)
def _space_at(site: Site, storey_id: str, point: Point2) -> Space | None:
    spaces, outlines = _smallest_first(site, storey_id)
    is_in = shapely.intersects_xy(outlines, *point)
    first = int(np.argmax(is_in)) if len(spaces) else 0
    return spaces[first] if len(spaces) and is_in[first] else None


@lru_cache(maxsize=256)
def _smallest_first(site: Site, storey_id: str) -> tuple[tuple[Space, ...], NDArray[np.object_]]:
    """The spaces of a storey, and their outlines made ready to be asked many times."""
    there = [space for space in site.spaces if space.storey == storey_id]
    spaces = tuple(sorted(there, key=lambda space: (_polygon(space).area, space.id)))
    outlines = np.array([_polygon(space) for space in spaces], dtype=np.object_)
    shapely.prepare(outlines)
    return spaces, outlines


def sides_of_opening(site: Site, opening: Opening) -> tuple[str | None, str | None]:
    """The spaces on the left and on the right of an opening, looking along its wall's line.

    Parameters
    ----------
    site : Site
        The site that holds it.
    opening : Opening
        The opening.

    Returns
    -------
    tuple of str or None
        Ids of the two spaces; None is outside (or nothing drawn).
    """
    if opening.joins is not None:
        return opening.joins
    return _sides(site.bare, opening)


@lru_cache(maxsize=4096)
def _sides(site: Site, opening: Opening) -> tuple[str | None, str | None]:
    wall = site.wall(opening.wall)
    found: list[str | None] = []
    for side in (1.0, -1.0):
        place = along(wall.line_m, opening.offset_m, left_m=side * (wall.thickness_m / 2 + PROBE_M))
        space = space_at(site, wall.storey, place)
        found.append(None if space is None else space.id)
    return (found[0], found[1])


def is_way_in(site: Site, opening: Opening) -> bool:
    """Whether an opening leads into our rooms from outside, a balcony, a neighbour's or a shared space."""
    if opening.kind == "rooflight" and opening.joins is None:
        return False
    ours = [side is not None and site.space(side).is_protected for side in sides_of_opening(site, opening)]
    return ours[0] != ours[1]


def ceiling_height(site: Site, storey_id: str, point: Point2) -> float:
    """Floor to ceiling over a point of a storey, under its slopes. [m]"""
    storey = site.storey(storey_id)
    space = space_at(site, storey_id, point)
    height = storey.height_m if space is None or space.height_m is None else space.height_m
    place = shapely.Point(point)
    for slope in storey.slopes:
        ring = [(x, y) for x, y, _ in slope.corners_m]
        if shapely.Polygon(ring).buffer(1e-6).covers(place):
            a, b, c = slope_plane(slope.corners_m)
            height = min(height, a * point[0] + b * point[1] + c)
    return height


def slope_plane(corners_m: tuple[tuple[float, float, float], ...]) -> tuple[float, float, float]:
    """Coefficients (a, b, c) of z = a x + b y + c through the corners of one plane, by least squares."""
    n = float(len(corners_m))
    mx, my, mz = (sum(corner[i] for corner in corners_m) / n for i in range(3))
    xx = sum((x - mx) ** 2 for x, _, _ in corners_m)
    yy = sum((y - my) ** 2 for _, y, _ in corners_m)
    xy = sum((x - mx) * (y - my) for x, y, _ in corners_m)
    xz = sum((x - mx) * (z - mz) for x, _, z in corners_m)
    yz = sum((y - my) * (z - mz) for _, y, z in corners_m)
    det = xx * yy - xy * xy
    if abs(det) < 1e-12:
        return 0.0, 0.0, mz
    a, b = (xz * yy - yz * xy) / det, (yz * xx - xz * xy) / det
    return a, b, mz - a * mx - b * my


def standing(site: Site, device: Device) -> Standing:
    """Where a device is and where it looks.

    Parameters
    ----------
    site : Site
        The site that holds it.
    device : Device
        The device.

    Returns
    -------
    Standing
        Storey, plan place [m], height above the storey's floor [m], heading [deg] anticlockwise from plan x.
    """
    return _standing(site.bare, device.mount, device.heading_deg)


@lru_cache(maxsize=4096)
def _standing(site: Site, mount: Mount, heading_deg: float | None) -> Standing:
    """Remembered by how it is fixed: what its sheet or its tilt are does not matter."""
    match mount:
        case WallMount():
            wall = site.wall(mount.wall)
            sign = 1.0 if mount.side == "left" else -1.0
            x, y = along(wall.line_m, mount.offset_m, left_m=sign * (wall.thickness_m / 2 + FACE_GAP_M))
            _, (nx, ny), _ = direction(wall.line_m)
            heading = math.degrees(math.atan2(sign * ny, sign * nx))
            storey, height = wall.storey, mount.height_m
        case CeilingMount():
            (x, y), storey, heading = mount.at_m, mount.storey, 0.0
            height = ceiling_height(site, storey, mount.at_m) - CEILING_DROP_M
        case OpeningMount():
            opening = site.opening(mount.opening)
            wall = site.wall(opening.wall)
            x, y = along(wall.line_m, opening.offset_m)
            storey, height, heading = wall.storey, opening.head_m, 0.0
        case FreeMount():
            (x, y), storey, height, heading = mount.at_m, mount.storey, mount.height_m, 0.0
    return Standing(storey, x, y, height, heading if heading_deg is None else heading_deg)
