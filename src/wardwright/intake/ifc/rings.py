"""Closed rings of walls: which rooms share one, and which ring closes only low."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import shapely

from wardwright.intake.ifc.file import IfcHouse
from wardwright.intake.ifc.shapes import Solid, cut, plan_outline
from wardwright.intake.ifc.spaces import Floor
from wardwright.intake.ifc.walls import wall_solid
from wardwright.intake.report import number_word
from wardwright.model.fabric import Space

CUTS_M = (1.0, 0.3)
"""Heights above the floor at which the walls, with their openings filled, are cut. [m] (assumption)"""
LEAST_RING_M2 = 0.5
HAIR_M = 0.01
"""Walls that stand this close meet. [m] (assumption)"""


class WallBody(NamedTuple):
    """A wall, its own shadow, and the holes that may already be cut out of its shape."""

    solid: Solid
    shadow: shapely.Geometry
    holes: tuple[Solid, ...] = ()


def rings_at(walls: Sequence[WallBody], height: float) -> list[shapely.Polygon]:
    """The areas closed in by what a level plane cuts out of walls, their holes filled. [m]"""
    cuts = [
        cut(wall.solid, height).union(cut(hole, height).intersection(wall.shadow))
        for wall in walls
        for hole in (wall.solid, *wall.holes)
        if hole.low < height < hole.high
    ]
    built = shapely.union_all([area.buffer(HAIR_M, join_style="mitre") for area in cuts])
    rings = [
        shapely.Polygon(hole).buffer(HAIR_M, join_style="mitre")
        for part in shapely.get_parts(built)
        if part.geom_type == "Polygon"
        for hole in part.interiors
    ]
    return [ring for ring in rings if ring.area >= LEAST_RING_M2]


def note_rings(house: IfcHouse, floors: Sequence[Floor], spaces: Sequence[Space]) -> None:
    """Note, for each storey, rooms that share a ring of walls and rooms whose ring does not close."""
    bodies = wall_bodies(house)
    for floor in floors:
        rooms = [space for space in spaces if space.storey == floor.id]
        within = {at: _by_ring(rings_at(bodies, floor.elevation + at), rooms) for at in CUTS_M}
        for fact in ring_facts(floor.name, rooms, within):
            house.draft.oddity(fact)


def wall_bodies(house: IfcHouse) -> list[WallBody]:
    """All walls with their holes: a file may hold a wall's shape with its holes already cut out."""
    found = []
    for wall in house.of("IfcWall", "IfcCurtainWall"):
        solid = wall_solid(house, wall)
        if solid is not None:
            voids = [r.RelatedOpeningElement for r in wall.HasOpenings or ()]
            holes = tuple(hole for void in voids if (hole := house.solid(void)) is not None)
            found.append(WallBody(solid, plan_outline(solid), holes))
    return found


def _by_ring(rings: Sequence[shapely.Polygon], rooms: Sequence[Space]) -> list[list[Space]]:
    """The rooms in each ring that holds at least one."""
    middles = [(room, shapely.Polygon(room.outline_m).representative_point()) for room in rooms]
    held = [[room for room, middle in middles if ring.contains(middle)] for ring in rings]
    return [each for each in held if each]


def ring_facts(storey: str, rooms: Sequence[Space], within: dict[float, list[list[Space]]]) -> list[str]:
    """What is odd about a storey's rings, in words."""
    high, low = CUTS_M
    facts = []
    closed = {room.id for ring in within[high] for room in ring}
    if len(within[high]) < len(closed):
        shared = "; nor between ".join(
            ", ".join(sorted(room.name for room in ring)) for ring in within[high] if len(ring) > 1
        )
        rings = number_word(len(within[high])) + (" ring" if len(within[high]) == 1 else " rings")
        facts.append(
            f"{storey}: {number_word(len(closed))} rooms in {rings} of walls; nothing is built between {shared}"
        )
    for room in rooms:
        if room.id in closed:
            continue
        if any(room in ring for ring in within[low]):
            facts.append(
                f"{storey}: the ring of walls about {room.name} closes only low (at {low:g} m, not at {high:g} m)"
            )
        else:
            facts.append(f"{storey}: no ring of walls closes about {room.name}")
    return facts
