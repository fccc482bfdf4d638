"""Better places for the control unit: off the entry route, watched by a device that alarms at once."""

from __future__ import annotations

import math
from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.fixture import Outlet
from wardwright.model.placement import Standing, standing
from wardwright.model.site import Site
from wardwright.rules.entry_routes import place_at, rooms_on_the_way
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
    height = unit.mount.height_m if isinstance(unit.mount, WallMount) else USUAL_HEIGHT_M
    best = _first_watched(site, catalogue, near=standing(site, unit), height_m=height)
    return () if best is None else (Mend(action="move-device", subject=unit.id, values=best.values(height)),)


def _first_watched(site: Site, catalogue: Catalogue, *, near: Standing, height_m: float) -> WallSpot | None:
    """The first of the fit places, the best ones asked first, that is watched."""
    on_route = rooms_on_the_way(site, catalogue) or frozenset()
    watched = watched_at_once(site, catalogue)
    for spot in _fit_spots(site.bare, site.outlets, near=near, height_m=height_m):
        if spot.space in on_route:
            continue
        before = place_at(site, spot)
        if watched.by(spot.storey, before, room=room_of(site, spot.storey, before)):
            return spot
    return None


@lru_cache(maxsize=64)
def _fit_spots(
    house: Site, outlets: tuple[Outlet, ...], *, near: Standing, height_m: float
) -> tuple[WallSpot, ...]:
    """Places in dry rooms of ours: those of its own storey first, then those nearest to power, then to it."""
    power = [o for o in outlets if o.kind in ("power", "fused-spur")]

    def cost(spot: WallSpot) -> tuple[bool, float, float, WallSpot]:
        at = (spot.x_m, spot.y_m)
        to_power = min((math.dist(at, o.at_m) for o in power if o.storey == spot.storey), default=math.inf)
        return (spot.storey != near.storey, to_power, math.dist(at, (near.x_m, near.y_m)), spot)

    spots = (
        spot
        for space in sorted(house.spaces, key=lambda s: s.id)
        if space.belongs == "ours" and space.use not in UNFIT_USES
        for spot in wall_spots(house, space, height_m=height_m)
    )
    return tuple(sorted(spots, key=cost))
