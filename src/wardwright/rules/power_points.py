"""Power points, and the places on walls that a lead from one reaches."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.fixture import Outlet
from wardwright.model.placement import Standing, space_at
from wardwright.model.site import Site
from wardwright.rules.unit_spots import UNFIT_USES
from wardwright.rules.wall_spots import WallSpot, room_of, wall_spots


def power_points(site: Site) -> tuple[Outlet, ...]:
    """All power points, by id; NotComputable if none is drawn."""
    found = sorted((o for o in site.outlets if o.kind in ("power", "fused-spur")), key=lambda o: o.id)
    if not found:
        raise NotComputable("no power point is drawn", cure="Add the sockets and fused spurs")
    return tuple(found)


def nearest_power(site: Site, place: Standing) -> tuple[Outlet, float] | None:
    """The nearest power point of the same room, and the length of a lead to it; None if none is there. [m]"""
    room = {space.id for space in room_of(site, place.storey, (place.x_m, place.y_m))}
    found = [
        (_lead(outlet, (place.x_m, place.y_m, place.height_m)), outlet.id, outlet)
        for outlet in power_points(site)
        if outlet.storey == place.storey and _space_of(site, outlet) in room
    ]
    if not found:
        return None
    length, _, outlet = min(found, key=lambda one: one[:2])
    return outlet, length


def spots_by_power(site: Site, *, height_m: float, lead_m: float) -> Iterator[WallSpot]:
    """Places on walls of our dry rooms that a lead from a power point of the same space reaches.

    Parameters
    ----------
    site : Site
        The house.
    height_m : float
        Middle of the device above the floor. [m]
    lead_m : float
        How long a straight lead may be. [m]

    Yields
    ------
    WallSpot
        In the order of spaces' ids.
    """
    points = power_points(site)
    for space in sorted(site.spaces, key=lambda one: one.id):
        if space.belongs != "ours" or space.use in UNFIT_USES:
            continue
        here = [one for one in points if one.storey == space.storey and _space_of(site, one) == space.id]
        for spot in wall_spots(site, space, height_m=height_m) if here else ():
            if min(_lead(outlet, (spot.x_m, spot.y_m, height_m)) for outlet in here) <= lead_m:
                yield spot


def _space_of(site: Site, outlet: Outlet) -> str | None:
    space = space_at(site, outlet.storey, outlet.at_m)
    return None if space is None else space.id


def _lead(outlet: Outlet, place: tuple[float, float, float]) -> float:
    return math.dist((*outlet.at_m, outlet.height_m), place)
