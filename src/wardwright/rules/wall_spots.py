"""Places on the walls of a room where a device could go."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import Literal, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from wardwright.model.fabric import Space, Wall
from wardwright.model.fixture import Fixture
from wardwright.model.floor import StoreyParts, solid_walls, storey_parts
from wardwright.model.opening import Opening
from wardwright.model.placement import (
    FACE_GAP_M,
    Standing,
    along,
    ceiling_height,
    direction,
    fixture_outline,
    space_at,
)
from wardwright.model.record import Point2
from wardwright.model.site import Site

STEP_M = 0.25
"""Between places along a wall. [m] (assumption)"""
END_M = 0.15
"""From a corner to the nearest place. [m] (assumption)"""
CLEAR_OF_OPENING_M = 0.15
"""Beside a door or window. [m] (assumption)"""
CLEAR_OF_FURNITURE_M = 0.1
"""About furniture as high as the place. [m] (assumption)"""
TURN_LIMIT_DEG = 45.0
"""How far a device on a bracket may be turned off its wall. [deg] (assumption)"""
ROOM_ABOVE_M = 0.05
"""How far a device's middle stays below the ceiling. [m] (assumption)"""

Value = str | float | int | bool
Side = Literal["left", "right"]
SIDES: tuple[Side, ...] = ("left", "right")


class WallSpot(NamedTuple):
    """A place on a wall's face."""

    storey: str
    space: str
    wall: str
    side: Side
    offset_m: float
    """From the first end of the wall's line. [m]"""
    x_m: float
    y_m: float
    normal_deg: float
    """Straight off the wall. [deg]"""
    corner: int
    """1 or -1: at a corner, with the room to the left or right of the normal; 0: along the wall."""

    @property
    def heading_deg(self) -> float:
        """Straight off the wall, or out of the corner. [deg]"""
        return self.normal_deg + TURN_LIMIT_DEG * self.corner

    def standing(self, height_m: float) -> Standing:
        """The place as that of a device there, looking straight off the wall."""
        return Standing(self.storey, self.x_m, self.y_m, height_m, self.normal_deg)

    def values(self, height_m: float, *, heading_deg: float | None = None) -> tuple[tuple[str, Value], ...]:
        """Names and values of the mount there, for a mend."""
        mount: tuple[tuple[str, Value], ...] = (
            ("on", "wall"),
            ("wall", self.wall),
            ("side", self.side),
            ("offset_m", self.offset_m),
            ("height_m", height_m),
        )
        return mount if heading_deg is None else (*mount, ("heading_deg", heading_deg))


def wall_spots(site: Site, space: Space, *, height_m: float) -> tuple[WallSpot, ...]:
    """Places on the walls round one space, at one height.

    Parameters
    ----------
    site : Site
        The house.
    space : Space
        The room.
    height_m : float
        Middle of the device above the floor. [m]

    Returns
    -------
    tuple of WallSpot
        Clear of openings, of furniture of that height and of the ceiling; in the order of walls' ids.
    """
    return _wall_spots(site.bare, space, height_m)


@lru_cache(maxsize=512)
def _wall_spots(site: Site, space: Space, height_m: float) -> tuple[WallSpot, ...]:
    spots = _spots(storey_parts(site, space.storey), space, height_m)
    if not site.storey(space.storey).slopes:
        return spots if height_m <= ceiling_height(site, space.storey, _middle(space)) - ROOM_ABOVE_M else ()
    return tuple(
        spot
        for spot in spots
        if height_m <= ceiling_height(site, space.storey, (spot.x_m, spot.y_m)) - ROOM_ABOVE_M
    )


def room_of(site: Site, storey: str, point: Point2) -> tuple[Space, ...]:
    """The space at a point with the spaces that it is open to over open edges, by id; empty outside them all."""
    return _room_of(site.bare, storey, point)


@lru_cache(maxsize=4096)
def _room_of(house: Site, storey: str, point: Point2) -> tuple[Space, ...]:
    space = space_at(house, storey, point)
    return () if space is None else joined_to(house, space)


def joined_to(site: Site, space: Space) -> tuple[Space, ...]:
    """A space with the spaces that it is open to over open edges, by id."""
    found = {space.id}
    todo = [space.id]
    while todo:
        here = todo.pop()
        for edge in site.open_edges:
            if here in edge.spaces:
                new = set(edge.spaces) - found
                found |= new
                todo.extend(sorted(new))
    return tuple(site.space(name) for name in sorted(found))


def _middle(space: Space) -> Point2:
    point = shapely.Polygon(space.outline_m).representative_point()
    return (float(point.x), float(point.y))


@lru_cache(maxsize=256)
def _spots(parts: StoreyParts, space: Space, height_m: float) -> tuple[WallSpot, ...]:
    room = shapely.Polygon(space.outline_m).buffer(FACE_GAP_M / 4)
    tall = [_kept_clear(box) for box in parts.fixtures if box.base_m <= height_m <= box.base_m + box.height_m]
    free = room.difference(solid_walls(parts)).difference(shapely.union_all(tall))
    shapely.prepare(free)
    faces, lines = _faces(parts, height_m)
    found: list[WallSpot] = []
    # Most faces look into another room.
    for number in np.flatnonzero(shapely.intersects(free, lines)).tolist():
        wall, side = faces[number]
        runs = lines[number].intersection(free)
        openings = [o for o in parts.openings if o.wall == wall.id]
        found.extend(_on_face(wall, side, space=space, runs=runs, openings=openings, height_m=height_m))
    return tuple(found)


@lru_cache(maxsize=64)
def _faces(parts: StoreyParts, height_m: float) -> tuple[tuple[tuple[Wall, Side], ...], NDArray[np.object_]]:
    """The faces of all walls of a storey that are as high, and a line before each, whatever the room. [m]"""
    walls = [one for one in parts.walls if _is_as_high(one, height_m) and direction(one.line_m)[2] > 0.0]
    faces = tuple((wall, side) for wall in walls for side in SIDES)
    return faces, shapely.linestrings(np.array([_line_of(*face) for face in faces]).reshape(-1, 2, 2))


def _line_of(wall: Wall, side: Side) -> tuple[Point2, Point2]:
    """A hair off one face of a wall, from its start to its end. [m]"""
    off, (_, _, length) = _off(wall, side), direction(wall.line_m)
    return along(wall.line_m, 0.0, left_m=off), along(wall.line_m, length, left_m=off)


def _off(wall: Wall, side: Side) -> float:
    """How far that is to the left of its middle. [m]"""
    return (1.0 if side == "left" else -1.0) * (wall.thickness_m / 2 + FACE_GAP_M)


def _is_as_high(wall: Wall, height_m: float) -> bool:
    """Whether a wall has a face at a height: a parapet or a box below the ceiling may have none."""
    return wall.base_m <= height_m and (wall.height_m is None or height_m <= wall.base_m + wall.height_m)


def _kept_clear(box: Fixture) -> shapely.Polygon:
    return shapely.Polygon(fixture_outline(box)).buffer(CLEAR_OF_FURNITURE_M, join_style="mitre")


def _on_face(
    wall: Wall,
    side: Side,
    *,
    space: Space,
    runs: shapely.Geometry,
    openings: list[Opening],
    height_m: float,
) -> list[WallSpot]:
    """Places on one face of a wall that lie in a room: at the ends of each free run, and along it."""
    sign, off, start = 1.0 if side == "left" else -1.0, _off(wall, side), _line_of(wall, side)[0]
    _, (nx, ny), _ = direction(wall.line_m)
    normal = math.degrees(math.atan2(sign * ny, sign * nx))
    found: list[WallSpot] = []
    for run in shapely.get_parts(runs):
        if run.geom_type != "LineString" or run.length < 2 * END_M:
            continue
        low, high = sorted(math.dist(start, point) for point in (run.coords[0], run.coords[-1]))
        inner = np.arange(low + END_M + STEP_M, high - END_M - STEP_M / 2, STEP_M)
        for offset in (low + END_M, *inner.tolist(), high - END_M):
            if any(_is_by(opening, offset, height_m=height_m) for opening in openings):
                continue
            x, y = along(wall.line_m, offset, left_m=off)
            # The room lies ahead of the low end: to the right of a left face's normal, to the left of a right one's.
            corner = 0 if low + END_M < offset < high - END_M else (-1 if offset == low + END_M else 1)
            found.append(
                WallSpot(space.storey, space.id, wall.id, side, offset, x, y, normal, int(corner * sign))
            )
    return found


def _is_by(opening: Opening, offset: float, *, height_m: float) -> bool:
    """Whether a place on a wall is on, or just beside, one of its openings."""
    is_level = opening.sill_m - CLEAR_OF_OPENING_M < height_m < opening.head_m + CLEAR_OF_OPENING_M
    return is_level and abs(offset - opening.offset_m) < opening.width_m / 2 + CLEAR_OF_OPENING_M
