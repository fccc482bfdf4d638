"""Walls of a building file: centre lines, outlines, heights, what they are made of."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

import ifcopenshell.util.element
import shapely

from wardwright.intake.ifc.file import Entity, IfcHouse, called, layers_of, stated
from wardwright.intake.ifc.shapes import Solid, joined, plan_outline
from wardwright.intake.ifc.spaces import Floor
from wardwright.intake.outlines import largest, long_way, ring_of, strip_along
from wardwright.model.fabric import Wall
from wardwright.model.placement import wall_footprint

OVERHEAD_M = 2.0
"""A wall that begins higher above the floor than this bounds no walk and is shown on no plan. [m] (assumption)"""
LEAST_SHARE_M = 0.15
"""A wall that reaches into a storey by less than this does not stand on it. [m] (assumption)"""
LEAST_LENGTH_M = 0.02
IS_RECTANGLE = 0.985
"""From this filled share on, a wall's outline is the plain rectangle about its line. [-] (assumption)"""
MOST_THICK_M = 3.0

_MADE_OF: tuple[tuple[str, str], ...] = (
    (r"insul|d(ä|ae)mm|air\b|luft|membrane|plaster(?!board)|putz|render|paint|tile|misc", ""),
    (r"block|leichtbeton|porenbeton|aerated|gasbeton|kalksand|\bcmu\b|lbk", "block"),
    (r"brick|ziegel|klinker|mauerwerk|masonry|bwk", "brick"),
    (r"concrete|beton", "concrete"),
    (r"gypsum|plasterboard|gips|stud|drywall|rigips", "plasterboard-stud"),
    (r"timber|wood|holz|fachwerk", "timber"),
    (r"glass|glas|glazing", "glass-wall"),
)


class BuiltWall(NamedTuple):
    """A wall of the site and the entity it was read from."""

    entity: int
    wall: Wall
    low: float
    """Its foot above the house's zero. [m]"""
    high: float
    is_curtain: bool = False
    """Whether the file calls it a curtain wall."""


def walls_of(house: IfcHouse, floors: list[Floor]) -> list[BuiltWall]:
    """The walls of the kept storeys, each cut at the storeys it passes."""
    built: list[BuiltWall] = []
    for entity in house.of("IfcWall", "IfcCurtainWall"):
        solid = wall_solid(house, entity)
        name = called(entity)
        if solid is None:
            house.draft.leave_out("wall", "without a shape", name)
            continue
        stands = [f for f in floors if min(solid.high, f.top) - max(solid.low, f.elevation) > LEAST_SHARE_M]
        reaching = [f for f in stands if solid.low - f.elevation <= OVERHEAD_M]
        if not stands:
            house.draft.leave_out("wall", "on storeys that are left out", name)
        elif not reaching:
            what = f"between {solid.low:.1f} and {solid.high:.1f} m, above head height (ceiling boxes)"
            house.draft.leave_out("wall", what, house.new_id(_label(entity), "wall"))
        built.extend(_parts(house, entity, (solid, reaching)))
    return _without_copies(house, built)


def wall_solid(house: IfcHouse, entity: Entity) -> Solid | None:
    """The solid of a wall, or of the parts that it is put together from."""
    own = house.solid(entity)
    if own is not None:
        return own
    pieces = [house.solid(part) for part in ifcopenshell.util.element.get_parts(entity)]
    return joined(piece for piece in pieces if piece is not None)


def _parts(house: IfcHouse, entity: Entity, where: tuple[Solid, list[Floor]]) -> Iterator[BuiltWall]:
    """One part for each storey the wall stands on."""
    solid, floors = where
    shadow = plan_outline(solid)
    outline = largest(shadow.buffer(0.001, join_style="mitre").buffer(-0.001, join_style="mitre"))
    for floor in floors if outline is not None else ():
        foot, head = max(solid.low, floor.elevation), min(solid.high, floor.top)
        made = _wall(house, entity, outline, where=(floor, foot, head))
        if made is not None:
            yield BuiltWall(entity.id(), made, foot, head, is_curtain=bool(entity.is_a("IfcCurtainWall")))


def _wall(
    house: IfcHouse, entity: Entity, outline: shapely.Polygon, *, where: tuple[Floor, float, float]
) -> Wall | None:
    floor, foot, head = where
    # A wall's own axes first: they turn with the house, so that its line runs the same way however it is turned.
    strips = [strip_along(outline, way) for way in (*house.axes(entity), long_way(outline))]
    straight = [s for s in strips if s.length >= s.width] or strips
    best = max(s.filled for s in straight)
    strip = next(s for s in straight if s.filled >= best - 0.05)
    if strip.length < LEAST_LENGTH_M:
        house.draft.leave_out("wall", "shorter than a hand", _label(entity))
        return None
    made = house.new_id(_label(entity), "wall")
    if strip.filled < 0.5:
        house.draft.oddity(f"{made} is not straight: kept as its outline, its line is only near it")
    construction = construction_of(entity)
    is_exterior = stated(entity, "Pset_WallCommon", "IsExternal")
    fields: dict[str, object] = {}
    if strip.filled < IS_RECTANGLE:
        fields["footprint_m"] = ring_of(outline)
    if construction is not None:
        fields["construction"] = construction
        house.draft.guess("construction (by its material's name)", "wall", made)
    if isinstance(is_exterior, bool):
        fields["is_exterior"] = is_exterior
    marks = ("id", "storey", "line_m", "thickness_m", "base_m", "height_m", *fields)
    return Wall.model_validate(
        {
            "id": made,
            "storey": floor.id,
            "line_m": strip.line,
            "thickness_m": round(min(max(strip.width, 0.005), MOST_THICK_M), 4),
            "base_m": round(foot - floor.elevation, 4),
            "height_m": round(head - foot, 4),
            "basis": {mark: "guessed" if mark == "construction" else "measured" for mark in marks},
            **fields,
        }
    )


def _label(entity: Entity) -> str:
    """A wall's own name, without its family's where the name is `family:type:number`."""
    name = (entity.Name or "").strip()
    family, _, rest = name.partition(":")
    return re.sub(r"\([^)]*\)", "", rest or family) or f"wall {entity.id()}"


def construction_of(entity: Entity) -> str | None:
    """A row of the catalogue's constructions, by the names of a wall's materials, thickest first."""
    if entity.is_a("IfcCurtainWall"):
        return "glass-wall"
    found: dict[str, float] = {}
    for name, thickness in layers_of(entity):
        key = next((made for words, made in _MADE_OF if re.search(words, name, re.IGNORECASE)), "")
        if key:
            found[key] = found.get(key, 0.0) + thickness
    return max(found, key=lambda key: found[key]) if found else None


def _without_copies(house: IfcHouse, built: list[BuiltWall]) -> list[BuiltWall]:
    """Drop walls that stand, for all but a sliver, inside another one at least as high."""
    areas = [shapely.Polygon(wall_footprint(b.wall)).buffer(0) for b in built]
    tree = shapely.STRtree(areas)
    dropped: set[int] = set()
    for i, one in enumerate(built):
        for j in (int(k) for k in tree.query(areas[i])):
            other = built[j]
            if j == i or j in dropped or other.wall.storey != one.wall.storey:
                continue
            is_higher = other.low <= one.low + 0.01 and other.high >= one.high - 0.01
            if is_higher and areas[i].difference(areas[j]).area < 0.03 * areas[i].area:
                dropped.add(i)
                house.draft.leave_out("wall", "inside another wall", one.wall.id)
                break
    # What stood in a dropped wall is looked for again by place: see `host_of` of the openings.
    return [b for i, b in enumerate(built) if i not in dropped]
