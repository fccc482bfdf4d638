"""Places on the floor of a room where a small thing could lie."""

from __future__ import annotations

import math
from collections.abc import Callable

import shapely

from wardwright.model.fabric import Space
from wardwright.model.fixture import Fixture
from wardwright.model.floor import solid_walls, storey_parts
from wardwright.model.placement import fixture_outline
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.ceiling_spots import CEILING_STEP_M, grid_within

LIES_UNDER_M = 0.05
"""A box whose underside is lower than this leaves no room under it. [m] (assumption)"""
CLEAR_M = 0.05
"""Between a thing on the floor and what stands there. [m] (assumption)"""


def standing_over(site: Site, storey: str, point: Point2) -> Fixture | None:
    """The fixture that stands on the floor at a point, with no room under it; the first by id, None if none does."""
    place = shapely.Point(point)
    found = [
        box
        for box in site.fixtures
        if box.storey == storey
        and box.base_m < LIES_UNDER_M
        and shapely.Polygon(fixture_outline(box)).buffer(-1e-6).contains(place)
    ]
    return min(found, key=lambda box: box.id, default=None)


def floor_spot(
    site: Site, space: Space, *, nearest_to: Point2, fits: Callable[[Point2], bool]
) -> Point2 | None:
    """The nearest free place on the floor of a space that fits.

    Parameters
    ----------
    site : Site
        The house.
    space : Space
        The room.
    nearest_to : (float, float)
        A place of the plan. [m]
    fits : callable
        Whether a place will do.

    Returns
    -------
    (float, float) or None
        Clear of walls and of what stands on the floor; None if no place fits. [m]
    """
    boxes = [
        shapely.Polygon(fixture_outline(box)).buffer(CLEAR_M, join_style="mitre")
        for box in site.fixtures
        if box.storey == space.storey and box.base_m < LIES_UNDER_M
    ]
    walls = solid_walls(storey_parts(site, space.storey)).buffer(CLEAR_M, join_style="mitre")
    free = shapely.Polygon(space.outline_m).difference(shapely.union_all([walls, *boxes]))
    points = grid_within(free.buffer(1e-6), step=CEILING_STEP_M / 2)
    # The nearest place of all is seldom on the grid.
    if not free.is_empty:
        nearest = shapely.shortest_line(shapely.Point(nearest_to), free.buffer(-1e-6)).coords[-1]
        points = (*points, (float(nearest[0]), float(nearest[1])))
    for point in sorted(points, key=lambda one: (round(math.dist(one, nearest_to), 6), one)):
        if fits(point):
            return point
    return None
