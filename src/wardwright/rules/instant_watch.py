"""What is watched by devices that alarm at once."""

from __future__ import annotations

from typing import NamedTuple

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.fabric import Space
from wardwright.model.opening import Manner, Opening
from wardwright.model.placement import sides_of_opening
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import Watch, watch
from wardwright.rules.at_the_opening import AT_OPENINGS, notices_at_the_opening
from wardwright.rules.kit import devices_of, instant_devices
from wardwright.rules.wall_spots import joined_to

ON_EDGE_M = 0.3
"""A stair that begins or ends this near a room leads into it. [m] (assumption)"""


class Watched(NamedTuple):
    """What devices watch."""

    shapes: tuple[Watch, ...]
    """Of movement detectors, where a person is surely noticed."""
    rooms: frozenset[str]
    """Spaces that nobody enters unnoticed by a device at an opening."""

    def by(self, storey: str, point: Point2, *, room: tuple[Space, ...]) -> tuple[str, ...]:
        """Ids of the movement detectors, or of the room's spaces, that guard a place; empty if nothing does."""
        found = [shape.device for shape in self.shapes if shape.storey == storey and _holds(shape, point)]
        closed = [space.id for space in room if space.id in self.rooms]
        return tuple(found or closed)


def _holds(shape: Watch, point: Point2) -> bool:
    grid = shape.grid
    column, row = (point[0] - grid.x0) / grid.cell, (point[1] - grid.y0) / grid.cell
    if not (0 <= column < grid.nx and 0 <= row < grid.ny):
        return False
    return bool(shape.low[int(row), int(column)])


def watched_at_once(site: Site, catalogue: Catalogue) -> Watched:
    """What devices watch that alarm at once.

    Parameters
    ----------
    site : Site
        The house, its devices and zones.
    catalogue : Catalogue
        The devices' sheets.

    Returns
    -------
    Watched
        Shapes of movement detectors, and rooms of which every door, window and gap is noticed
        opened, a fixed pane broken.
    """
    instant = instant_devices(site)
    return Watched(watched_shapes(site, catalogue, instant), _closed_rooms(site, catalogue, instant))


def watched_shapes(site: Site, catalogue: Catalogue, chosen: frozenset[str]) -> tuple[Watch, ...]:
    """The shapes of those movement detectors that are chosen, by id."""
    detectors = devices_of(site, catalogue, "movement-detector")
    return tuple(watch(site, catalogue, device) for device, _ in detectors if device.id in chosen)


def _closed_rooms(site: Site, catalogue: Catalogue, instant: frozenset[str]) -> frozenset[str]:
    guarded = {one.id for one in site.openings if _is_guarded(site, catalogue, one, instant=instant)}
    sides = {opening.id: set(sides_of_opening(site, opening)) for opening in site.openings}
    found: set[str] = set()
    for space in site.spaces:
        room = joined_to(site, space)
        names = {one.id for one in room}
        # An opening with both sides in the room leads nowhere else.
        ways = {name for name, two in sides.items() if two & names and not two <= names}
        if ways and ways <= guarded and not _has_stair(site, room):
            found.add(space.id)
    return frozenset(found)


def _is_guarded(site: Site, catalogue: Catalogue, opening: Opening, *, instant: frozenset[str]) -> bool:
    """Whether one of these devices notices that an opening is opened; of a fixed one, that its pane is broken."""
    manner: Manner = "through the glass" if opening.hinge == "fixed" else "opened"
    return any(
        notices_at_the_opening(site.bare, catalogue, device, opening=opening, manner=manner)
        for kind in AT_OPENINGS
        for device, _ in devices_of(site, catalogue, kind)
        if device.id in instant
    )


def _has_stair(site: Site, room: tuple[Space, ...]) -> bool:
    area = shapely.union_all([shapely.Polygon(space.outline_m) for space in room]).buffer(ON_EDGE_M)
    storey = room[0].storey
    ends = [(stair.lower, stair.line_m[0]) for stair in site.stairs]
    ends += [(stair.upper, stair.line_m[-1]) for stair in site.stairs]
    return any(where == storey and bool(area.covers(shapely.Point(end))) for where, end in ends)
