"""Where people sleep: a pillow for each bed, and in the middle of a bedroom where none is drawn."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import shapely

from wardwright.model.fabric import Space
from wardwright.model.fixture import Fixture
from wardwright.model.household import Person
from wardwright.model.placement import space_at
from wardwright.model.record import Point2
from wardwright.model.room_shapes import floor_polygon
from wardwright.model.site import Site

FROM_THE_END_M = 0.3
"""From the end of a bed to the middle of its pillow. [m] (assumption)"""
OVER_THE_BED_M = 0.1
"""Of an ear over the top of the bed. [m] (assumption)"""
LYING_M = 0.6
"""An ear above the floor where no bed is drawn. [m] (assumption)"""


class Pillow(NamedTuple):
    """Where somebody's head lies."""

    id: str
    """Of the bed; of the space where none is drawn."""
    name: str
    space: Space
    at_m: Point2
    height_m: float
    """Above the storey's floor."""
    people: tuple[Person, ...]
    """Who sleeps in the space, as far as it was told."""
    is_drawn: bool


def pillows(site: Site) -> tuple[Pillow, ...]:
    """All pillows of our spaces.

    Parameters
    ----------
    site : Site
        Its beds, bedrooms and people.

    Returns
    -------
    tuple of Pillow
        By id; empty where there is no bed, no bedroom, and nobody who is told to sleep anywhere.
    """
    return _pillows(site.bare, site.people)


@lru_cache(maxsize=64)
def _pillows(site: Site, people: tuple[Person, ...]) -> tuple[Pillow, ...]:
    found = []
    with_bed = set()
    ours = {space.id: space for space in site.spaces if space.is_protected}
    for fixture in site.fixtures:
        space = space_at(site, fixture.storey, fixture.centre_m) if fixture.kind == "bed" else None
        if space is not None and space.id in ours:
            with_bed.add(space.id)
            height = fixture.base_m + fixture.height_m + OVER_THE_BED_M
            found.append(_pillow(space, people, ident=fixture.id, at=_head(space, fixture), height=height))
    sleepers = {person.bed for person in people}
    for space in ours.values():
        if space.id not in with_bed and (space.use == "bedroom" or space.id in sleepers):
            middle = floor_polygon(space).representative_point()
            found.append(_pillow(space, people, ident=space.id, at=(middle.x, middle.y), height=LYING_M))
    names = {fixture.id: fixture.name for fixture in site.fixtures}
    told = [pillow._replace(name=_called(pillow, names, found)) for pillow in found]
    return tuple(sorted(told, key=lambda pillow: pillow.id))


def _pillow(space: Space, people: tuple[Person, ...], *, ident: str, at: Point2, height: float) -> Pillow:
    here = tuple(sorted((one for one in people if one.bed == space.id), key=lambda one: one.id))
    return Pillow(ident, space.name, space, at, height, here, is_drawn=ident != space.id)


def _called(pillow: Pillow, names: dict[str, str], every: list[Pillow]) -> str:
    """The space's name; with the bed's where it has several."""
    alone = sum(one.space.id == pillow.space.id for one in every) == 1
    if alone or not pillow.is_drawn:
        return f"pillow in {pillow.space.name}"
    return f"{names[pillow.id]} in {pillow.space.name}"


def _head(space: Space, bed: Fixture) -> Point2:
    """The pillow's end of a bed: the one that is nearer to a wall, as beds stand."""
    width, depth = bed.size_m
    turn = math.radians(bed.turn_deg + (0.0 if width > depth else 90.0))
    reach = max(0.0, max(width, depth) / 2 - FROM_THE_END_M)
    ends = [
        (bed.centre_m[0] + sign * reach * math.cos(turn), bed.centre_m[1] + sign * reach * math.sin(turn))
        for sign in (1.0, -1.0)
    ]
    rim = floor_polygon(space).exterior
    away = [round(rim.distance(shapely.Point(end)), 3) for end in ends]
    return ends[0] if away[0] <= away[1] else ends[1]
