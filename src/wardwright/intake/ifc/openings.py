"""Doors, windows and gaps of a building file, each on its wall."""

from __future__ import annotations

import re
from typing import NamedTuple

import shapely

from wardwright.intake.ifc.file import Entity, IfcHouse, called, slug, type_of
from wardwright.intake.ifc.leaves import leaf_of, operation_of
from wardwright.intake.ifc.shapes import Solid, plan_outline
from wardwright.intake.ifc.sides import sides_through
from wardwright.intake.ifc.walls import BuiltWall
from wardwright.model.opening import Opening, OpeningKind
from wardwright.model.placement import direction, sides_of_opening, wall_footprint
from wardwright.model.site import Site

LEAST_GAP = (0.4, 1.5)
"""An unfilled hole at least this wide and high is a gap that a person passes. [m] (assumption)"""
FLOOR_SLACK_M = 0.03
"""A sill this close to the floor is at the floor. [m] (assumption)"""
NEAR_M = 0.3
"""A door without a hole belongs to a wall no farther than this. [m] (assumption)"""

_GLASS = re.compile(r"glass|glas|terras|patio|french|slid|schiebe|balkon", re.IGNORECASE)
_GARAGE = re.compile(r"garage|overhead|sektional|rolltor", re.IGNORECASE)
_HATCH = re.compile(r"hatch|luke|trapdoor|bodentreppe", re.IGNORECASE)


class Hole(NamedTuple):
    """A place in a wall: the middle along its line, the width, and the heights above the house's zero."""

    built: BuiltWall
    offset: float
    width: float
    low: float
    high: float


def openings_of(house: IfcHouse, site: Site, built: list[BuiltWall]) -> list[Opening]:
    """The openings in the walls of the kept storeys; `site` holds the storeys, spaces and walls."""
    found: list[Opening] = []
    for entity in house.of("IfcDoor", "IfcWindow"):
        if is_in_roof(entity):
            continue
        hole = _hole_of(house, entity, built)
        if hole is None:
            house.draft.leave_out("opening", "in no wall that is kept", called(entity))
            continue
        found.append(_opening(house, site, entity, hole=hole))
    for void in house.of("IfcOpeningElement"):
        if not void.HasFillings and void.VoidsElements:
            gap = _gap(house, site, void, built=built)
            if gap is not None:
                found.append(gap)
    return found


def is_in_roof(entity: Entity) -> bool:
    """Whether a window or door fills a hole in a roof or floor."""
    voids = [relation.RelatingOpeningElement for relation in entity.FillsVoids or ()]
    hosts = [r.RelatingBuildingElement for void in voids for r in void.VoidsElements or ()]
    return any(host.is_a("IfcRoof") or host.is_a("IfcSlab") for host in hosts)


def _hole_of(house: IfcHouse, entity: Entity, built: list[BuiltWall]) -> Hole | None:
    for relation in entity.FillsVoids or ():
        void = relation.RelatingOpeningElement
        solid = house.solid(void) if len(void.HasFillings) == 1 else house.solid(entity)
        solid = solid or house.solid(entity)
        hosts = [r.RelatingBuildingElement.id() for r in void.VoidsElements or ()]
        if solid is not None and (wall := host_of(solid, built, hosts)) is not None:
            return hole_in(solid, wall)
    own = house.solid(entity)
    wall = host_of(own, built, []) if own is not None else None
    return hole_in(own, wall) if own is not None and wall is not None else None


def host_of(solid: Solid, built: list[BuiltWall], entities: list[int]) -> BuiltWall | None:
    """The wall part that holds a solid: of its named host where that is kept, else the one it overlaps most."""
    middle = (solid.low + solid.high) / 2
    level = [b for b in built if b.low - 0.05 <= middle <= b.high + 0.05]
    named = [b for b in level if b.entity in entities]
    if named:
        return min(named, key=lambda b: abs((b.low + b.high) / 2 - middle))
    shadow = plan_outline(solid).buffer(NEAR_M / 2)
    shares = [(float(shapely.Polygon(wall_footprint(b.wall)).intersection(shadow).area), b) for b in level]
    best = max(shares, key=lambda share: share[0], default=None)
    return best[1] if best is not None and best[0] > 0.01 else None


def hole_in(solid: Solid, built: BuiltWall) -> Hole | None:
    """The place that a solid takes up in a wall; None where that is less than a finger."""
    (ux, uy), _, length = direction(built.wall.line_m)
    ax, ay = built.wall.line_m[0]
    along = (solid.points[:, 0] - ax) * ux + (solid.points[:, 1] - ay) * uy
    start, end = max(float(along.min()), 0.0), min(float(along.max()), length)
    if end - start < 0.06:
        return None
    return Hole(built, round((start + end) / 2, 4), round(end - start, 4), solid.low, solid.high)


def heights_of(site: Site, hole: Hole) -> tuple[float, float]:
    """Sill and head of a place in a wall above its storey's floor. [m]"""
    floor = site.storey(hole.built.wall.storey).elevation_m
    sill = hole.low - floor
    return (0.0 if abs(sill) <= FLOOR_SLACK_M else round(sill, 4)), round(hole.high - floor, 4)


def _kind(entity: Entity) -> OpeningKind:
    words = f"{entity.Name or ''} {getattr(type_of(entity), 'Name', None) or ''}"
    stated = getattr(entity, "PredefinedType", None)
    if not entity.is_a("IfcDoor"):
        return "window"
    if _GARAGE.search(words) or operation_of(entity) == "ROLLINGUP":
        return "garage-door"
    return "hatch" if stated == "TRAPDOOR" or _HATCH.search(words) else "door"


def _opening(house: IfcHouse, site: Site, entity: Entity, *, hole: Hole) -> Opening:
    kind, wall = _kind(entity), hole.built.wall
    sill, head = heights_of(site, hole)
    leaf = leaf_of(house, entity, wall, kind=kind)
    words = f"{entity.Name or ''} {getattr(type_of(entity), 'Name', None) or ''}"
    is_glazed = kind == "window" or _GLASS.search(words) is not None or leaf.hinge == "sliding"
    fields: dict[str, object] = {
        "kind": kind, "wall": wall.id, "offset_m": hole.offset, "width_m": hole.width, "sill_m": sill,
        "head_m": head, "leaves": leaf.leaves, "hinge": leaf.hinge, "swing": leaf.swing, "lock": "unknown",
    }  # fmt: skip
    if is_glazed:
        fields["glazing"] = "double-plain"
    guessed = (*leaf.guessed, "lock", *(("glazing",) if is_glazed else ()))
    return named(house, site, (fields, guessed), words=entity.Name or "")


def _gap(house: IfcHouse, site: Site, void: Entity, *, built: list[BuiltWall]) -> Opening | None:
    hosts = [r.RelatingBuildingElement for r in void.VoidsElements]
    solid = house.solid(void) if any(host.is_a("IfcWall") for host in hosts) else None
    wall = None if solid is None else host_of(solid, built, [host.id() for host in hosts])
    hole = None if solid is None or wall is None else hole_in(solid, wall)
    if hole is None:
        return None
    sill, head = heights_of(site, hole)
    if hole.width < LEAST_GAP[0] or head - sill < LEAST_GAP[1]:
        house.draft.leave_out("hole", "too small to pass through", called(void))
        return None
    fields: dict[str, object] = {
        "kind": "gap", "wall": hole.built.wall.id, "offset_m": hole.offset, "width_m": hole.width,
        "sill_m": sill, "head_m": head, "leaves": 0, "hinge": "none", "swing": "none",
    }  # fmt: skip
    return named(house, site, (fields, ()), words="")


def named(
    house: IfcHouse,
    site: Site,
    given: tuple[dict[str, object], tuple[str, ...]],
    *,
    words: str,
    noun: str = "",
) -> Opening:
    """Finish an opening: its sides, a name that a person can use, and how each fact is known."""
    fields, guessed = given
    draft = Opening.model_validate({"id": "x", "name": "x", **fields})
    sides = sides_of_opening(site, draft)
    through = sides_through(site, draft)
    if through != sides:
        fields["joins"], sides, guessed = through, through, (*guessed, "joins")
    name = _readable(site, sides, words, noun=noun or draft.kind)
    made = house.new_id(name, draft.kind)
    if made != (slug(name) or draft.kind):  # two of one name: people must be able to tell them apart too
        name += f" {made.rpartition('-')[2]}"
    if any(side is not None and site.space(side).belongs == "ours" for side in sides):
        for fact in guessed:
            house.draft.guess(fact.removesuffix("_m"), draft.kind, made)
    basis = {field: "guessed" if field in guessed else "measured" for field in ("id", "name", *fields)}
    return Opening.model_validate({"id": made, "name": name, "basis": basis, **fields})


def _readable(site: Site, sides: tuple[str | None, str | None], words: str, *, noun: str) -> str:
    family, _, rest = words.partition(":")
    if family and not rest:
        return family.strip()
    rooms = [site.space(side) for side in sides if side is not None]
    rooms.sort(key=lambda room: (room.use in ("hall", "landing", "stairwell"), room.id))
    number = re.findall(r"\d+$", words)
    tail = f" {number[0]}" if number else ""
    return f"{rooms[0].name} {noun}{tail}" if rooms else f"{noun}{tail}"
