"""Places for a sounder inside: away from the control unit and off the way that everybody comes in."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.fabric import SpaceUse
from wardwright.model.placement import Standing, standing
from wardwright.model.site import Site
from wardwright.rules.entry_routes import rooms_on_the_way
from wardwright.rules.kit import devices_of
from wardwright.rules.unit_spots import UNFIT_USES
from wardwright.rules.wall_spots import WallSpot, wall_spots

BESIDE_UNIT_M = 2.0
"""A sounder this near to the control unit falls with it. [m] (assumption)"""
OUT_OF_HAND_M = 2.4
"""Higher than this above the floor a sounder wants a ladder. [m] (assumption)"""
USUAL_HEIGHT_M = 2.1
"""Where an inside sounder hangs. [m] (common practice)"""
LOUD_USES: tuple[SpaceUse, ...] = ("landing", "hall", "stairwell")
"""Rooms from which a sounder is heard all over the house. (common practice)"""


def distance_to_unit(site: Site, catalogue: Catalogue, place: Standing) -> float:
    """From a place to the nearest control unit of its storey, on the plan; inf where there is none. [m]"""
    return _nearest(_units(site, catalogue), place)


def _units(site: Site, catalogue: Catalogue) -> list[Standing]:
    return [standing(site, unit) for unit, _ in devices_of(site, catalogue, "control-unit")]


def _nearest(units: Sequence[Standing], place: Standing) -> float:
    return min(
        (
            math.dist((place.x_m, place.y_m), (one.x_m, one.y_m))
            for one in units
            if one.storey == place.storey
        ),
        default=math.inf,
    )


def sounder_spot(site: Site, catalogue: Catalogue, *, near: Standing, height_m: float) -> WallSpot | None:
    """The best place for a sounder inside: on a landing or in a hall before other rooms, then nearest.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.
    near : Standing
        Where it is, or where another one is.
    height_m : float
        Middle of the sounder above the floor. [m]

    Returns
    -------
    WallSpot or None
        Off the way in, and not beside a control unit; None where there is no such place.
    """
    on_way = rooms_on_the_way(site, catalogue) or frozenset()
    return _sounder_spot(site.bare, tuple(_units(site, catalogue)), on_way, near=near, height_m=height_m)


@lru_cache(maxsize=256)
def _sounder_spot(
    house: Site, units: tuple[Standing, ...], on_way: frozenset[str], *, near: Standing, height_m: float
) -> WallSpot | None:
    found = []
    for space in house.spaces:
        if space.belongs != "ours" or space.use in UNFIT_USES or space.id in on_way:
            continue
        for spot in wall_spots(house, space, height_m=height_m):
            if _nearest(units, spot.standing(height_m)) > BESIDE_UNIT_M:
                way = round(math.dist((spot.x_m, spot.y_m), (near.x_m, near.y_m)), 6)
                found.append((space.use not in LOUD_USES, spot.storey != near.storey, way, spot))
    return min(found)[-1] if found else None
