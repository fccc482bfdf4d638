"""What can be asked of any house that was brought in: is it closed, can it be walked, do its doors join rooms."""

from __future__ import annotations

import shapely

from wardwright.errors import NotComputable
from wardwright.model.fabric import Space
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in, opening_footprint, sides_of_opening, wall_footprint
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import (
    Network,
    Paces,
    Spot,
    fastest_route,
    premises_network,
    way_in_spot,
)

PACES = Paces(2.0, 0.5, 1.0)

BOUND_M = 0.15
"""A room's outline this close to what bounds it is bounded by it. [m]"""
CORNER_M = 0.3
"""Open pieces of outline that are shorter are corners of drawing. [m]"""


def open_sides(site: Site, space: Space) -> float:
    """How much of a room's outline has no wall, opening, open edge or flight of stairs along it. [m]"""
    walls = {wall.id: wall for wall in site.walls if wall.storey == space.storey}
    bounds = [shapely.Polygon(wall_footprint(w)).buffer(0) for w in walls.values()]
    bounds += [shapely.Polygon(opening_footprint(walls[o.wall], o)) for o in site.openings if o.wall in walls]
    bounds += [shapely.LineString(edge.line_m) for edge in site.open_edges if space.id in edge.spaces]
    bounds += [
        shapely.LineString(stair.line_m).buffer(stair.width_m / 2)
        for stair in site.stairs
        if space.storey in (stair.lower, stair.upper)
    ]
    outline = shapely.Polygon(space.outline_m).exterior
    left = outline.difference(shapely.union_all(bounds).buffer(BOUND_M))
    return sum(piece.length for piece in shapely.get_parts(left) if piece.length > CORNER_M)


def not_closed(site: Site) -> dict[str, float]:
    """Our rooms that are not closed, and how much of each is open. [m]"""
    found = {space.id: open_sides(site, space) for space in site.spaces if space.is_protected}
    return {name: round(metres, 2) for name, metres in found.items() if metres > 0}


def not_on_foot(site: Site) -> list[str]:
    """Our rooms that nobody can walk to from any door that leads in."""
    doors = [o for o in site.openings if o.kind in ("door", "garage-door", "gap") and is_way_in(site, o)]
    network = premises_network(site)
    left = []
    for space in site.spaces:
        if not space.is_protected:
            continue
        goal = shapely.Polygon(space.outline_m).representative_point()
        if not any(_reaches(network, site, door, goal=Spot(space.storey, goal.x, goal.y)) for door in doors):
            left.append(space.id)
    return left


def _reaches(network: Network, site: Site, door: Opening, *, goal: Spot) -> bool:
    try:
        return fastest_route(network, way_in_spot(site, door), goal, paces=PACES) is not None
    except NotComputable:  # a storey without any floor of ours
        return False


def loose_doors(site: Site) -> list[str]:
    """Doors that have no room on either side."""
    return [o.id for o in site.openings if sides_of_opening(site, o) == (None, None)]
