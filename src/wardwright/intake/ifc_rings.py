"""Closed rings of walls: which rooms share one, and which ring closes only low."""

from __future__ import annotations

from collections.abc import Sequence

import shapely

from wardwright.intake.ifc_file import IfcHouse
from wardwright.intake.ifc_shapes import Solid, cut
from wardwright.intake.ifc_spaces import Floor
from wardwright.intake.ifc_walls import wall_solid
from wardwright.intake.report import number_word
from wardwright.model.fabric import Space

CUTS_M = (1.0, 0.3)
"""Heights above the floor at which the walls, with their openings filled, are cut. [m] (assumption)"""
LEAST_RING_M2 = 0.5


def rings_at(solids: Sequence[Solid], height: float) -> list[shapely.Polygon]:
    """The areas closed in by what a level plane cuts out of walls. [m]"""
    cuts = [cut(solid, height) for solid in solids if solid.low < height < solid.high]
    # A centimetre closes the hairs between walls that meet at a corner.
    built = shapely.union_all([area.buffer(0.01, join_style="mitre") for area in cuts])
    rings = [
        shapely.Polygon(hole)
        for part in shapely.get_parts(built)
        if part.geom_type == "Polygon"
        for hole in part.interiors
    ]
    return [ring for ring in rings if ring.area >= LEAST_RING_M2]


def note_rings(house: IfcHouse, floors: Sequence[Floor], spaces: Sequence[Space]) -> None:
    """Note, for each storey, rooms that share a ring of walls and rooms whose ring does not close."""
    solids = wall_solids(house)
    for floor in floors:
        rooms = [space for space in spaces if space.storey == floor.id]
        within = {at: _by_ring(rings_at(solids, floor.elevation + at), rooms) for at in CUTS_M}
        for fact in ring_facts(floor.name, rooms, within):
            house.draft.oddity(fact)


def wall_solids(house: IfcHouse) -> list[Solid]:
    """Walls with their holes filled: a file may hold a wall's shape with its holes already cut out."""
    found = [wall_solid(house, wall) for wall in house.of("IfcWall", "IfcCurtainWall")]
    for void in house.of("IfcOpeningElement"):
        hosts = [relation.RelatingBuildingElement for relation in void.VoidsElements or ()]
        if any(host.is_a("IfcWall") for host in hosts):
            found.append(house.solid(void))
    return [solid for solid in found if solid is not None]


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
        counts = f"{number_word(len(closed))} rooms in {number_word(len(within[high]))} rings"
        facts.append(f"{storey}: {counts} of walls; nothing is built between {shared}")
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
