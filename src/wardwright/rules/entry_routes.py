"""The household's ways from its entry doors to a keypad."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.errors import NoneOfAKind, NotComputable
from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.fabric import Space
from wardwright.model.opening import Opening
from wardwright.model.placement import along, standing
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import (
    Paces,
    Route,
    Spot,
    fastest_route,
    premises_network,
    way_in_spot,
)
from wardwright.rules.kit import devices_of
from wardwright.rules.wall_spots import WallSpot, joined_to

REACH_M = 0.4
"""How far off the wall a person stands who uses a device on it. [m] (assumption)"""


class EntryRoute(NamedTuple):
    """The way from one entry door to its keypad."""

    door: Opening
    keypad: Device
    route: Route | None
    """The fastest at an ordinary pace; None where there is no way."""

    def points_on(self, storey: str) -> FloatArray:
        """The points of the way on one storey, shape (n, 2). [m]"""
        if self.route is None:
            return np.zeros((0, 2))
        points: FloatArray = self.route.points[np.asarray(self.route.storeys) == storey]
        return points


def keypads(site: Site, catalogue: Catalogue) -> tuple[Device, ...]:
    """Keypads, and control units that have one built in, by id; NoneOfAKind if there is none."""
    built_in = [
        device
        for device, sheet in devices_of(site, catalogue, "control-unit")
        if sheet.control is not None and sheet.control.has_keypad
    ]
    found = [device for device, _ in devices_of(site, catalogue, "keypad")] + built_in
    if not found:
        raise NoneOfAKind("no keypad", kind="keypad", cure="Add the keypad where it is planned")
    return tuple(sorted(found, key=lambda device: device.id))


def place_before(site: Site, device: Device) -> Spot:
    """Where a person stands who uses a device, or breaks it: before its wall, or at its place."""
    mount = device.mount
    if not isinstance(mount, WallMount):
        place = standing(site, device)
        return Spot(place.storey, place.x_m, place.y_m)
    wall = site.wall(mount.wall)
    off = (wall.thickness_m / 2 + REACH_M) * (1.0 if mount.side == "left" else -1.0)
    return Spot(wall.storey, *along(wall.line_m, mount.offset_m, left_m=off))


def entry_routes(site: Site, catalogue: Catalogue) -> tuple[EntryRoute, ...]:
    """The fastest way from each entry door to the keypad that is reached first.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets, and the household's pace.

    Returns
    -------
    tuple of EntryRoute
        One for each entry door, by id.

    Raises
    ------
    NotComputable
        If there is no entry door or no keypad.
    """
    entry_doors(site)  # with neither, the doors are told first
    return routes_to(site.bare, catalogue, keypads(site, catalogue))


@lru_cache(maxsize=64)
def routes_to(house: Site, catalogue: Catalogue, goals: tuple[Device, ...]) -> tuple[EntryRoute, ...]:
    """The fastest way from each entry door of a bare house to that of some keypads that is reached first.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        The household's pace.
    goals : tuple of Device
        The keypads, by id; at least one.

    Returns
    -------
    tuple of EntryRoute
        As `entry_routes` has them.

    Raises
    ------
    NotComputable
        If there is no entry door.
    """
    found = []
    for door in entry_doors(house):
        start = way_in_spot(house, door)
        ways = [(household_way(house, catalogue, (start, place_before(house, goal))), goal) for goal in goals]
        timed = [(float(route.clock[-1]), goal.id, route, goal) for route, goal in ways if route is not None]
        if timed:
            _, _, route, goal = min(timed, key=lambda one: one[:2])
            found.append(EntryRoute(door, goal, route))
        else:
            found.append(EntryRoute(door, goals[0], None))
    return tuple(found)


def entry_doors(site: Site) -> tuple[Opening, ...]:
    """The doors that the household comes in by, by id; NotComputable if none is told."""
    doors = tuple(sorted((o for o in site.openings if o.is_entry_door), key=lambda o: o.id))
    if not doors:
        raise NotComputable(
            "no opening is told to be an entry door",
            cure="Say which door the household comes in by, such as 'set front-door entry' in notes",
        )
    return doors


def household_way(site: Site, catalogue: Catalogue, way: tuple[Spot, Spot]) -> Route | None:
    """The fastest way between two places at an ordinary pace; None where there is none."""
    paces = Paces(*(catalogue.figure(name).value for name in ("pace-normal", "stairs-share", "pass-door")))
    return _household_way(site.bare, way, paces)


@lru_cache(maxsize=256)
def _household_way(house: Site, way: tuple[Spot, Spot], paces: Paces) -> Route | None:
    return fastest_route(premises_network(house), *way, paces=paces)


def place_at(site: Site, spot: WallSpot) -> Point2:
    """Where a person stands who would use a device at a place of a wall. [m]"""
    wall = site.wall(spot.wall)
    off = (wall.thickness_m / 2 + REACH_M) * (1.0 if spot.side == "left" else -1.0)
    return along(wall.line_m, spot.offset_m, left_m=off)


def is_in(room: tuple[Space, ...], points: FloatArray) -> BoolArray:
    """Which points, shape (n, 2) [m], lie in a room that is made of spaces, shape (n,) bool."""
    inside: BoolArray = shapely.intersects_xy(_area(room), points[:, 0], points[:, 1])
    return inside


@lru_cache(maxsize=512)
def _area(room: tuple[Space, ...]) -> shapely.Geometry:
    return shapely.union_all([shapely.Polygon(space.outline_m) for space in room])


def rooms_on(site: Site, routes: tuple[EntryRoute, ...]) -> frozenset[str]:
    """Ids of the spaces that any of the ways goes through, with those open to them."""
    found: set[str] = set()
    for storey in site.storeys:
        for one in routes:
            points = one.points_on(storey.id)
            for space in site.spaces:
                if space.storey == storey.id and space.id not in found and is_in((space,), points).any():
                    found |= {other.id for other in joined_to(site, space)}
    return frozenset(found)


def rooms_on_the_way(site: Site, catalogue: Catalogue) -> frozenset[str] | None:
    """Ids of the spaces on the way in; None where no entry door or no keypad is known."""
    try:
        return _rooms_to(site.bare, catalogue, keypads(site, catalogue))
    except NotComputable:
        return None


@lru_cache(maxsize=64)
def _rooms_to(house: Site, catalogue: Catalogue, goals: tuple[Device, ...]) -> frozenset[str]:
    return rooms_on(house, routes_to(house, catalogue, goals))
