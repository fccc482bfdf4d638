"""Which spaces lie on the two sides of an opening, through linings that stand before its wall."""

from __future__ import annotations

import shapely

from wardwright.model.opening import Opening
from wardwright.model.placement import PROBE_M, along, sides_of_opening, space_at, wall_footprint
from wardwright.model.site import Site

LINING_STEP_M = 0.1
LININGS_AT_MOST_M = 0.7
"""A room is looked for through linings no thicker than this. [m] (assumption)"""


def sides_through(site: Site, opening: Opening) -> tuple[str | None, str | None]:
    """The spaces left and right of an opening; where another wall stands right before it, those beyond it."""
    found = list(sides_of_opening(site, opening))
    wall = site.wall(opening.wall)
    others = shapely.union_all(
        [
            shapely.Polygon(wall_footprint(w))
            for w in site.walls
            if w.storey == wall.storey and w.id != wall.id
        ]
    )
    for index, side in enumerate((1.0, -1.0)):
        if found[index] is not None:
            continue
        distance = PROBE_M
        while distance < LININGS_AT_MOST_M and found[index] is None:
            place = along(wall.line_m, opening.offset_m, left_m=side * (wall.thickness_m / 2 + distance))
            if not others.intersects(shapely.Point(place)):
                break
            distance += LINING_STEP_M
            place = along(wall.line_m, opening.offset_m, left_m=side * (wall.thickness_m / 2 + distance))
            space = space_at(site, wall.storey, place)
            found[index] = None if space is None else space.id
    return (found[0], found[1])
