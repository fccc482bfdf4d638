"""Open edges: where two rooms of a building file touch and nothing is built between them."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

import numpy as np
import shapely

from wardwright.intake.ifc.file import IfcHouse
from wardwright.model.fabric import OpenEdge, Space, Wall
from wardwright.model.placement import wall_footprint

TOUCHING_M = 0.06
"""Two rooms closer than this touch. [m] (assumption)"""
LEAST_EDGE_M = 0.3
"""A shorter opening between two rooms is a fault of drawing, not a way. [m] (assumption)"""
STANDING = (0.5, 1.0)
"""A wall parts two rooms if it begins below the first and ends above the second height. [m] (assumption)"""


def open_edges_of(house: IfcHouse, spaces: list[Space], walls: list[Wall]) -> list[OpenEdge]:
    """The open edges of all storeys."""
    found: list[OpenEdge] = []
    for storey in sorted({space.storey for space in spaces}):
        standing = [w for w in walls if w.storey == storey and _parts_rooms(w)]
        built = shapely.union_all([shapely.Polygon(wall_footprint(w)).buffer(0.01) for w in standing])
        rooms = [space for space in spaces if space.storey == storey]
        for one, other in itertools.combinations(rooms, 2):
            for piece in _touching(one, other, built):
                made = house.new_id(f"{one.id}--{other.id}"[:76], "edge")
                marks = dict.fromkeys(("id", "spaces", "line_m"), "measured")
                found.append(
                    OpenEdge.model_validate(
                        {"id": made, "spaces": (one.id, other.id), "line_m": piece, "basis": marks}
                    )
                )
    return found


def _parts_rooms(wall: Wall) -> bool:
    return wall.base_m < STANDING[0] and (wall.height_m is None or wall.base_m + wall.height_m > STANDING[1])


def _touching(
    one: Space, other: Space, built: shapely.Geometry
) -> Iterator[tuple[tuple[float, float], tuple[float, float]]]:
    """The straight pieces along which two rooms touch, less what is built there. [m]"""
    first, second = shapely.Polygon(one.outline_m), shapely.Polygon(other.outline_m)
    if first.distance(second) > TOUCHING_M:
        return
    shared = first.exterior.intersection(second.buffer(TOUCHING_M, join_style="mitre")).difference(built)
    lines = [
        part for part in shapely.get_parts(shared) if part.geom_type == "LineString" and not part.is_empty
    ]
    if not lines:
        return
    merged = shapely.line_merge(shapely.MultiLineString(lines))
    for line in shapely.get_parts(merged):
        corners = shapely.get_coordinates(line.simplify(0.005))
        for a, b in itertools.pairwise(corners):
            if float(np.hypot(*(b - a))) >= LEAST_EDGE_M:
                yield (
                    (round(float(a[0]), 4), round(float(a[1]), 4)),
                    (round(float(b[0]), 4), round(float(b[1]), 4)),
                )
