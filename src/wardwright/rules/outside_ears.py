"""Where somebody outside would hear an alarm: the boundary, the street, the houses of neighbours."""

from __future__ import annotations

import math
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground
from wardwright.physics.sound.from_site import Sounding, gain_outside, place_of, sound_house, sources
from wardwright.physics.sound.house import OUTSIDE
from wardwright.physics.sound.levels import energy_outside
from wardwright.rules.sound_heard import in_rooms, level_estimate, screened_from, shut

STEP_M = 1.0
"""Between places along a line. [m] (assumption)"""
STANDING_M = 1.6
"""Of an ear above the ground. [m] (assumption)"""
WINDOW_M = 4.0
"""Of a neighbour's bedroom window above the ground; under the eaves of a low house. [m] (assumption)"""
UNDER_EAVES_M = 0.5
"""How far below its top a low house has its windows. [m] (assumption)"""


class Place(NamedTuple):
    """A line along which somebody may listen."""

    id: str
    name: str
    points: tuple[tuple[float, float, float], ...]
    """Above the house's zero. [m]"""


class HeardThere(NamedTuple):
    """The loudest that is heard along a line."""

    place: Place
    level: Estimate | None
    at_m: Point2


def outside_ears(site: Site) -> tuple[Place, ...]:
    """The lines along which somebody may listen, as far as the ground was told; empty where it was not."""
    return _outside_ears(site.ground)


@lru_cache(maxsize=64)
def _outside_ears(ground: Ground) -> tuple[Place, ...]:
    found = []
    ear = ground.level_m + STANDING_M
    if ground.boundary_m is not None:
        found.append(Place("boundary", "boundary", _along((*ground.boundary_m, ground.boundary_m[0]), ear)))
    if ground.road_m is not None:
        found.append(Place("street", "street", _along(ground.road_m, ear)))
    for thing in sorted(ground.things, key=lambda one: one.id):
        if thing.kind == "building":
            window = ground.level_m + max(1.0, min(WINDOW_M, thing.height_m - UNDER_EAVES_M))
            found.append(Place(thing.id, thing.name, _along((*thing.outline_m, thing.outline_m[0]), window)))
    return tuple(found)


def _along(line: tuple[Point2, ...], height: float) -> tuple[tuple[float, float, float], ...]:
    points = []
    for (ax, ay), (bx, by) in pairwise(line):
        count = max(1, math.ceil(math.hypot(bx - ax, by - ay) / STEP_M))
        points += [(ax + (bx - ax) * i / count, ay + (by - ay) * i / count, height) for i in range(count + 1)]
    return tuple(dict.fromkeys(points))


def heard_outside(site: Site, catalogue: Catalogue, every: tuple[Sounding, ...]) -> tuple[HeardThere, ...]:
    """The loudest along each line, all the sounders together, windows and doors shut.

    Parameters
    ----------
    site : Site
        The house and its ground.
    catalogue : Catalogue
        Rows and figures of sound.
    every : tuple of Sounding
        The sounders.

    Returns
    -------
    tuple of HeardThere
        In the order of `outside_ears`.
    """
    return _heard(site.bare, catalogue, every)


@lru_cache(maxsize=128)
def _heard(site: Site, catalogue: Catalogue, every: tuple[Sounding, ...]) -> tuple[HeardThere, ...]:
    places = _outside_ears(site.ground)
    points = tuple(point for place in places for point in place.points)
    if not points or not every:
        return ()
    house = sound_house(site, catalogue)
    energy = sum(_from_one(site, catalogue, one, points=points) for one in every)
    assert isinstance(energy, np.ndarray)  # noqa: S101 - there is one sounder at least
    # One element from a sounder outside, round the house; two from one inside, through its wall and over the ground.
    steps = 1.0 if any(one.room == OUTSIDE for one in every) else 2.0
    found, start = [], 0
    for place in places:
        part = energy[:, start : start + len(place.points)]
        loudest = int(part[0].argmax())
        level = level_estimate(part[:, loudest], house=house, catalogue=catalogue, steps=steps)
        found.append(HeardThere(place, level, place.points[loudest][:2]))
        start += len(place.points)
    return tuple(found)


@lru_cache(maxsize=256)
def _from_one(
    site: Site, catalogue: Catalogue, one: Sounding, *, points: tuple[tuple[float, float, float], ...]
) -> FloatArray:
    """Sound at each point from one sounder, shape (C, Q)."""
    house, states = sound_house(site, catalogue), shut(site, catalogue)
    around = (
        screened_from(house, place_of(site, one.place), points)
        if one.room == OUTSIDE
        else np.ones((1, len(points), 1))
    )
    return energy_outside(
        in_rooms(site, catalogue, (one,), states=states),
        sources(site, catalogue, (one,)),
        gain=gain_outside(house, states, points),
        places=np.asarray(points, dtype=np.float64),
        screened=around,
    )[:, 0]
