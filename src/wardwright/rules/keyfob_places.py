"""Where keyfobs are pressed: before each entry door, and where one parks."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import shapely

from wardwright.errors import NotComputable
from wardwright.model.opening import Opening
from wardwright.model.placement import Standing, along
from wardwright.model.site import Site
from wardwright.rules.entry_routes import entry_doors
from wardwright.rules.outdoors import outdoor_side

HAND_M = 1.1
"""Where a hand presses a keyfob, above the floor. [m] (assumption)"""
BEFORE_DOOR_M = 0.5
"""How far before an entry door one stands. [m] (assumption)"""
FAR_M = 100.0
"""Farther than any drive of a home is looked along. [m] (assumption)"""


class PressedAt(NamedTuple):
    """A place where a keyfob is pressed."""

    words: str
    place: Standing


def pressed_at(site: Site) -> tuple[PressedAt, ...]:
    """Before each entry door, and at the boundary straight before it."""
    found: list[PressedAt] = []
    for door in entry_doors(site):
        found.extend(_before(site, door))
    if not found:
        raise NotComputable("no entry door leads outside", cure="Say which door the household comes in by")
    return tuple(found)


def _before(site: Site, door: Opening) -> Iterator[PressedAt]:
    side = outdoor_side(site, door)
    if side is None:
        return
    wall = site.wall(door.wall)
    sign = 1.0 if side == "left" else -1.0
    near = along(wall.line_m, door.offset_m, left_m=sign * (wall.thickness_m / 2 + BEFORE_DOOR_M))
    yield PressedAt(f"before {door.name}", Standing(wall.storey, *near, HAND_M, 0.0))
    if site.ground.boundary_m is not None:
        far = along(wall.line_m, door.offset_m, left_m=sign * FAR_M)
        met = shapely.LineString([near, far]).intersection(shapely.LinearRing(site.ground.boundary_m))
        if not met.is_empty:
            points = shapely.get_coordinates(met)
            x, y = min(points.tolist(), key=lambda one: shapely.Point(one).distance(shapely.Point(near)))
            yield PressedAt(f"the boundary before {door.name}", Standing(wall.storey, x, y, HAND_M, 0.0))
