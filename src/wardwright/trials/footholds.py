"""What stands outside that somebody may climb onto: things, roofs and balconies of the house, outside stairs."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

import shapely

from wardwright.model.fabric import Space
from wardwright.model.flights import BALUSTRADE_M, footprint
from wardwright.model.placement import wall_footprint
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.rules.footings import is_climbable, is_indoors, outline_of

ROOF_M = 0.3
"""Between a ceiling and the roof above it. [m] (assumption)"""
LEAST_ROOF_M2 = 1.0
"""A smaller piece of roof of a lower storey is none: walls not quite over each other. [m2] (assumption)"""
WALLS_M = 0.35
"""How far about an upper storey's rooms their walls reach. [m] (assumption)"""


class Foothold(NamedTuple):
    """Something that is climbed onto."""

    name: str
    thing: str | None
    """Id of the thing, balcony or stair; None: the ground, or a roof of the house."""
    kind: str
    """Of a thing its kind; `ground`, `roof`, `balcony`, `stair`."""
    area: shapely.Geometry | None
    """On the plan; None: the ground, which is everywhere. [m]"""
    height_m: float
    """Of its top above the ground. [m]"""
    edge_m: float
    """How high somebody must pull up to get onto it, above the ground: a balcony has a guard. [m]"""
    basis: Basis
    """How its height is known."""
    is_climbed: bool = False
    """Whether it is climbed all the way up, whatever its height: it is told so, or it is a stair."""
    is_start: bool = False
    """Whether anybody may stand there: the ground, a deck that is shared."""


@lru_cache(maxsize=128)
def footholds(house: Site) -> tuple[Foothold, ...]:
    """The ground and all that is climbed onto, in the order of kinds and ids.

    Parameters
    ----------
    house : Site
        The bare house and the ground about it.

    Returns
    -------
    tuple of Foothold
        The ground first.
    """
    ground = house.ground
    level = ground.basis_of("level_m")
    found = [Foothold("the ground", None, "ground", None, 0.0, 0.0, level, is_climbed=True, is_start=True)]
    for thing in sorted(ground.things, key=lambda one: one.id):
        if is_climbable(thing):
            height, is_told = thing.height_m, thing.basis_of("can_be_climbed") != "default"
            basis = thing.basis_of("height_m")
            one = Foothold(
                thing.name, thing.id, thing.kind, outline_of(thing.outline_m), height, height, basis
            )
            found.append(one._replace(is_climbed=is_told))
    for stair in sorted(house.stairs, key=lambda one: one.id):
        if not is_indoors(house, stair.lower, shapely.LineString(stair.line_m)):
            top = house.storey(stair.upper).elevation_m - ground.level_m
            basis = stair.basis_of("line_m")
            way = footprint(stair)
            found.append(Foothold(stair.name, stair.id, "stair", way, top, top, basis, is_climbed=True))
    found += [_balcony(house, one) for one in sorted(house.spaces, key=lambda one: one.id) if one.is_outdoors]
    return (*found, *_roofs(house))


def _balcony(house: Site, space: Space) -> Foothold:
    top = house.storey(space.storey).elevation_m - house.ground.level_m
    guard = BALUSTRADE_M if top > BALUSTRADE_M else 0.0
    area, basis = shapely.Polygon(space.outline_m), space.basis_of("outline_m")
    one = Foothold(space.name, space.id, "balcony", area, top, top + guard, basis)
    return one._replace(is_start=space.belongs == "shared")


def _roofs(house: Site) -> list[Foothold]:
    """The roofs of lower storeys that stand out from under the one above, piece by piece."""
    storeys = sorted(house.storeys, key=lambda one: one.elevation_m)
    found = []
    for storey, above in pairwise(storeys):
        rooms = [one for one in house.spaces if one.storey == storey.id and not one.is_outdoors]
        over = [shapely.Polygon(one.outline_m) for one in house.spaces if one.storey == above.id]
        if not rooms or not over:
            continue
        covered = shapely.union_all(over).buffer(WALLS_M, join_style="mitre")
        walls = [shapely.Polygon(wall_footprint(one)) for one in house.walls if one.storey == storey.id]
        whole = shapely.union_all([*(shapely.Polygon(one.outline_m) for one in rooms), *walls])
        for part in shapely.get_parts(whole.difference(covered)):
            if part.area < LEAST_ROOF_M2:
                continue
            below = max(
                rooms, key=lambda one: (shapely.Polygon(one.outline_m).intersection(part).area, one.id)
            )
            ceiling = storey.height_m if below.height_m is None else below.height_m
            top = storey.elevation_m + ceiling + ROOF_M - house.ground.level_m
            found.append(Foothold(f"roof over {below.name}", None, "roof", part, top, top, "default"))
    return sorted(found, key=lambda one: (one.height_m, one.name))
