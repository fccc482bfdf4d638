"""Storeys and rooms of a building file: outlines, uses, heights."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.errors import IntakeError
from wardwright.intake.ifc.file import Entity, IfcHouse, container_of
from wardwright.intake.ifc.names import name_of, no_room
from wardwright.intake.ifc.premises import Belongs, belonging
from wardwright.intake.ifc.shapes import Solid, cut, levels, normals, plan_outline
from wardwright.intake.outlines import largest, ring_of
from wardwright.intake.uses import use_of
from wardwright.model.consistency.contents import WIDEST_M
from wardwright.model.fabric import Space, Storey

ABOVE_FLOOR_M = 0.1
"""How far above its floor a room's outline is taken. [m] (assumption)"""
LEAST_ROOM_M2 = 0.5
"""A space smaller than this is a shaft, not a room. [m2] (assumption)"""
SAME_HEIGHT_M = 0.03
"""Ceilings closer than this are one height. [m] (assumption)"""
NARROWEST_M = 1.5
"""The rooms of one home stretch over no less. [m] (assumption)"""
LEAST_STOREY_M, MOST_STOREY_M = 1.01, 12.0


class Room(NamedTuple):
    """A space of the file that is a room."""

    solid: Solid
    name: str
    level: int
    """The number of its storey in the file."""
    belongs: Belongs
    is_guessed: bool = False
    """Whether the file has no such space and the ring of its walls was taken for one."""


class Floor(NamedTuple):
    """A storey of the file that is kept."""

    level: int
    """Its number in the file."""
    id: str
    name: str
    elevation: float
    """Of its floor. [m]"""
    top: float
    """Where the next storey of the file begins. [m]"""


def rooms_of(house: IfcHouse, premises: str | None) -> list[Room]:
    """The rooms of a building, ours and others'."""
    entities = house.of("IfcSpace")
    whose = belonging(house, entities, premises)
    found = []
    for entity in entities:
        name = name_of(entity)
        reason = no_room(entity)
        solid = None if reason else house.solid(entity)
        if reason is None and solid is None:
            reason = "without a shape"
        storey = _storey_of(entity)
        if reason is None and storey is None:
            reason = "on no storey"
        if reason is not None or solid is None or storey is None:
            house.draft.leave_out("space", reason or "without a shape", name)
            continue
        found.append(Room(solid, name, storey.id(), whose[entity.id()]))
    return found


def refuse_other_unit(house: IfcHouse, rooms: Sequence[Room]) -> None:
    """Refuse a house so wide or so narrow that the file's unit of length can only be wrong.

    Raises
    ------
    IntakeError
        If it is.
    """
    if not rooms:
        return
    points = np.concatenate([room.solid.points[:, :2] for room in rooms])
    wide = float(np.ptp(points, axis=0).max())
    if NARROWEST_M <= wide <= WIDEST_M:
        return
    said = f"{wide:.0f}" if wide >= 1.0 else f"{wide:.2g}"
    raise IntakeError(
        f"its rooms stretch over {said} m, so its unit of length is hardly the one it was drawn in",
        where=house.where,
        cure="Export the building again with its right unit of length",
    )


def _storey_of(entity: Entity) -> Entity | None:
    step: Entity | None = entity
    for _ in range(8):
        if step is None or step.is_a("IfcBuildingStorey"):
            break
        parents = getattr(step, "Decomposes", None) or ()
        step = parents[0].RelatingObject if parents else container_of(step)
    return step if step is not None and step.is_a("IfcBuildingStorey") else None


def floors_of(house: IfcHouse, rooms: list[Room]) -> list[Floor]:
    """The storeys that hold a room of ours, lowest first.

    Raises
    ------
    IntakeError
        If there is no such storey.
    """
    entities = house.of("IfcBuildingStorey")
    heights = {e.id(): float(house.frame(e)[2, 3]) for e in entities}
    wanted = {room.level for room in rooms if room.belongs == "ours"}
    if not wanted:
        raise IntakeError(
            "it holds no space that is a room",
            where=house.where,
            cure="Export it with its spaces (rooms), or write the house as notes",
        )
    ordered = sorted(entities, key=lambda e: (heights[e.id()], e.id()))
    kept = []
    for entity in ordered:
        name = (entity.Name or entity.LongName or f"storey {entity.id()}").strip()
        if entity.id() not in wanted:
            house.draft.leave_out("storey", "without a room of ours", name)
            continue
        above = [h for h in heights.values() if h > heights[entity.id()] + LEAST_STOREY_M]
        kept.append(
            Floor(
                entity.id(),
                house.new_id(name, "storey"),
                name,
                heights[entity.id()],
                min(above, default=float("inf")),
            )
        )
    return kept


def ceiling_of(solid: Solid) -> float:
    """The height of the largest level part of a room's top, or its highest point. [m]"""
    # Either way up: the faces of a room that is written as loose surfaces may look inward.
    both = [face for up in (True, False) for face in levels(solid, least=0.2, upward=up)]
    tops = [face for face in both if face.height > solid.low + LEAST_STOREY_M]
    return max(tops, key=lambda face: float(face.area.area)).height if tops else solid.high


def is_sloped(solid: Solid) -> bool:
    """Whether a room's top is, for the most part, not level."""
    normal = normals(solid)
    size = np.linalg.norm(normal, axis=1)
    upward = normal[:, 2] > 0.05 * size
    level = normal[:, 2] > 0.99 * size
    return bool(size[upward & ~level].sum() > size[level].sum())


def outline_of(room: Room) -> shapely.Polygon | None:
    """The outline of a room's floor. [m]"""
    section = cut(room.solid, room.solid.low + ABOVE_FLOOR_M)
    return largest(section) or largest(plan_outline(room.solid))


def spaces_of(house: IfcHouse, rooms: list[Room], floors: list[Floor]) -> tuple[list[Storey], list[Space]]:
    """The storeys and spaces of the site."""
    by_level = {floor.level: floor for floor in floors}
    kept: list[tuple[Room, Floor, shapely.Polygon]] = []
    for room in rooms:
        floor = by_level.get(room.level)
        outline = outline_of(room)
        if floor is None:
            house.draft.leave_out("space", "on a storey that is left out", room.name)
        elif outline is None or outline.area < LEAST_ROOM_M2:
            house.draft.leave_out("space", "smaller than a room", room.name)
        else:
            kept.append((room, floor, outline))
    heights = {floor.id: _usual_height([k for k in kept if k[1] is floor]) for floor in floors}
    storeys = [
        Storey(
            id=floor.id,
            name=floor.name,
            elevation_m=round(floor.elevation, 4),
            height_m=heights[floor.id],
            basis=dict.fromkeys(("id", "name", "elevation_m"), "measured")
            | {"height_m": "guessed" if any(room.is_guessed for room in rooms) else "measured"},
        )
        for floor in floors
    ]
    return storeys, [
        _space(house, room, floor, shape=(outline, heights[floor.id])) for room, floor, outline in kept
    ]


def _usual_height(kept: list[tuple[Room, Floor, shapely.Polygon]]) -> float:
    """The ceiling's height over the middle square metre of a storey's rooms. [m]"""
    sizes = sorted((ceiling_of(room.solid) - floor.elevation, outline.area) for room, floor, outline in kept)
    half, so_far = sum(area for _, area in sizes) / 2, 0.0
    for height, area in sizes:
        so_far += area
        if so_far >= half:
            return round(min(max(height, LEAST_STOREY_M), MOST_STOREY_M), 3)
    return 2.4


def _space(house: IfcHouse, room: Room, floor: Floor, *, shape: tuple[shapely.Polygon, float]) -> Space:
    outline, usual = shape
    height = round(min(ceiling_of(room.solid) - floor.elevation, MOST_STOREY_M), 3)
    differs = abs(height - usual) > SAME_HEIGHT_M and not is_sloped(room.solid) and height > LEAST_STOREY_M
    use = use_of(room.name)
    made = house.new_id(room.name, "space")
    if room.belongs == "ours":
        house.draft.guess("use", "space", made)
    known = "guessed" if room.is_guessed else "measured"
    basis = dict.fromkeys(("id", "storey"), "measured") | {
        "name": known,
        "outline_m": known,
        "use": "guessed",
    }
    if room.is_guessed:
        house.draft.guess("outline (by the ring of its walls)", "space", made)
    if len(outline.interiors) and sum(shapely.Polygon(r).area for r in outline.interiors) > LEAST_ROOM_M2:
        house.draft.leave_out("hole in a room", "not kept: the outline has none", made)
    return Space(
        id=made,
        name=room.name,
        storey=floor.id,
        outline_m=ring_of(outline),
        use=use,
        belongs=room.belongs,
        basis=basis | ({"height_m": "measured"} if differs else {}),
        **({"height_m": height} if differs else {}),
    )
