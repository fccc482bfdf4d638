"""Warm and hot things near a place."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray, Grid
from wardwright.model.fixture import Fixture
from wardwright.model.floor import solid_walls, storey_parts
from wardwright.model.placement import fixture_outline, space_at
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import Watch

THROUGH_WALL_M = 0.02
"""A straight line that is in walls for longer than this passes through one. [m] (assumption)"""


class Near(NamedTuple):
    """A warm or hot thing and how far it is on the plan."""

    fixture: Fixture
    distance_m: float
    """To the nearest point of its outline; 0 right above or below it. [m]"""


def hot_things_near(site: Site, storey: str, point: Point2, *, clearance_m: float) -> tuple[Near, ...]:
    """Warm and hot things nearer to a point of the plan than a clearance, with no wall between.

    Parameters
    ----------
    site : Site
        The house.
    storey : str
        Which storey.
    point : (float, float)
        Where on its plan. [m]
    clearance_m : float
        How far they are to be. [m]

    Returns
    -------
    tuple of Near
        Nearest first. Their height does not count: warm air rises, and a fan looks down.
    """
    return _hot_things_near(site.bare, (storey, point), clearance_m)


@lru_cache(maxsize=4096)
def _hot_things_near(site: Site, at: tuple[str, Point2], clearance_m: float) -> tuple[Near, ...]:
    storey, point = at
    warm, place = _warm_things(site, storey), shapely.Point(point)
    distances = shapely.distance(np.array([one.outline for one in warm], dtype=object), place).tolist()
    found: list[Near] = []
    for one, distance in zip(warm, distances, strict=True):
        if distance > 0.0 and distance >= clearance_m:
            continue
        between = shapely.shortest_line(place, one.seen).intersection(solid_walls(storey_parts(site, storey)))
        if between.length <= THROUGH_WALL_M:
            found.append(Near(one.fixture, distance))
    return tuple(sorted(found, key=lambda near: (near.distance_m, near.fixture.id)))


class _Warm(NamedTuple):
    fixture: Fixture
    outline: shapely.Geometry
    seen: shapely.Geometry
    """Of the outline what stands out of the walls: a thing let into a wall counts from the wall's face."""


@lru_cache(maxsize=64)
def _warm_things(site: Site, storey: str) -> tuple[_Warm, ...]:
    found = []
    for fixture in site.fixtures:
        if fixture.storey == storey and fixture.heat != "none":
            outline = shapely.Polygon(fixture_outline(fixture))
            free = outline.difference(solid_walls(storey_parts(site, storey)))
            found.append(_Warm(fixture, outline, outline if free.is_empty else free))
    return tuple(found)


def hot_things_in_view(site: Site, shapes: Watch) -> tuple[str, ...]:
    """Names of warm and hot things that stand on or right beside floor where a detector senses.

    Parameters
    ----------
    site : Site
        The house.
    shapes : Watch
        What the detector watches.

    Returns
    -------
    tuple of str
        In the order of their names.
    """
    about = _about_warm_things(site.bare, shapes.storey, shapes.grid)
    return tuple(name for name, floor in about if (floor & shapes.seen).any())


@lru_cache(maxsize=64)
def _about_warm_things(house: Site, storey: str, grid: Grid) -> tuple[tuple[str, BoolArray], ...]:
    """Names of warm things of a storey, in order, each with the cells of its room that it covers or touches."""
    found = []
    for one in _warm_things(house, storey):
        space = space_at(house, storey, one.fixture.centre_m)
        about = one.outline.buffer(2.0 * grid.cell)
        if space is not None:
            about = about.intersection(shapely.Polygon(space.outline_m))
        shapely.prepare(about)
        found.append((one.fixture.name, shapely.contains_xy(about, *np.moveaxis(grid.centres(), -1, 0))))
    return tuple(sorted(found, key=lambda pair: pair[0]))
