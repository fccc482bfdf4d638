"""Better places for the control unit: off the entry route, watched by a device that alarms at once."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.rules.entry_routes import entry_routes, place_at, rooms_on
from wardwright.rules.finding import Mend
from wardwright.rules.instant_watch import watched_at_once
from wardwright.rules.wall_spots import WallSpot, room_of, wall_spots

UNFIT_USES = ("bathroom", "toilet", "loft", "conservatory", "balcony", "terrace", "garage")
"""Rooms too damp, too hot or too cold for it. (common practice: dry, 5 to 35 deg C)"""
USUAL_HEIGHT_M = 1.5
"""Where it goes when it is not on a wall yet. [m] (assumption)"""


def moved_to_watched_spot(site: Site, catalogue: Catalogue, unit: Device) -> tuple[Mend, ...]:
    """The nearest fit place for a control unit; empty if none is.

    Parameters
    ----------
    site : Site
        The house, its devices and zones.
    catalogue : Catalogue
        The devices' sheets.
    unit : Device
        The control unit, without a keypad of its own: that would take the entry route with it.

    Returns
    -------
    tuple of Mend
        One: on the same storey before others, near a power point before others, then nearest.
    """
    place = standing(site, unit)
    power = [o for o in site.outlets if o.kind in ("power", "fused-spur")]

    def cost(spot: WallSpot) -> tuple[bool, float, float, WallSpot]:
        at = (spot.x_m, spot.y_m)
        to_power = min((math.dist(at, o.at_m) for o in power if o.storey == spot.storey), default=math.inf)
        return (spot.storey != place.storey, to_power, math.dist(at, (place.x_m, place.y_m)), spot)

    height = unit.mount.height_m if isinstance(unit.mount, WallMount) else USUAL_HEIGHT_M
    best = _first_fit(site, catalogue, height_m=height, cost=cost)
    return () if best is None else (Mend(action="move-device", subject=unit.id, values=best.values(height)),)


def _first_fit(
    site: Site, catalogue: Catalogue, *, height_m: float, cost: Callable[[WallSpot], tuple[Any, ...]]
) -> WallSpot | None:
    """The place of least cost off the entry route that is watched: the cheapest are asked first."""
    try:
        on_route = rooms_on(site, entry_routes(site, catalogue))
    except NotComputable:
        on_route = frozenset()
    watched = watched_at_once(site, catalogue)
    spots = (
        spot
        for space in sorted(site.spaces, key=lambda s: s.id)
        if space.belongs == "ours" and space.use not in UNFIT_USES and space.id not in on_route
        for spot in wall_spots(site, space, height_m=height_m)
    )
    for spot in sorted(spots, key=cost):
        before = place_at(site, spot)
        if watched.by(spot.storey, before, room=room_of(site, spot.storey, before)):
            return spot
    return None
