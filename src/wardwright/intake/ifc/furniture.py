"""Furniture and fixtures of a building file, as boxes."""

from __future__ import annotations

import math
import re
from typing import Literal, NamedTuple

import numpy as np

from wardwright.intake.ifc.file import Entity, IfcHouse, called, type_of
from wardwright.intake.ifc.shapes import Solid
from wardwright.intake.ifc.spaces import Floor
from wardwright.model.fixture import Fixture, FixtureKind
from wardwright.model.placement import space_at
from wardwright.model.record import Point2
from wardwright.model.site import Site

MOST_M = 6.0
LEAST_M = 0.02

Heat = Literal["none", "warm", "hot"]

_KINDS: tuple[tuple[str, FixtureKind, Heat], ...] = (
    (r"radiator|heizk|spaceheater", "radiator", "warm"),
    (r"stove|wood.?burner|kaminofen|fireplace|kamin", "stove", "hot"),
    (r"boiler|therme|furnace", "boiler", "hot"),
    (r"\bvent|grille|diffuser|airterminal", "vent", "warm"),
    (r"\bbed\b|bed-|\bbett", "bed", "none"),
    (r"sofa|couch|settee|armchair|sessel", "sofa", "none"),
    (r"counter.?top|worktop|arbeitsplatte", "worktop", "none"),
    (r"table|desk|tisch", "table", "none"),
    (r"chair|stool|stuhl|hocker", "chair", "none"),
    (r"vanity|basin|sink|toilet|\bwc\b|bath|shower|sanitary|wash", "sanitary", "none"),
    (r"oven|cooker|fridge|freezer|dishwasher|washing|dryer|appliance|herd", "appliance", "none"),
    (r"cabinet|cupboard|wardrobe|schrank|closet|dresser", "cupboard", "none"),
    (r"shelf|shelv|bookcase|regal", "shelf", "none"),
    (r"curtain|vorhang", "curtain", "none"),
)


class Box(NamedTuple):
    """A box as a fixture's fields have it."""

    centre_m: Point2
    size_m: tuple[float, ...]
    turn_deg: float
    base_m: float
    height_m: float


def fixtures_of(house: IfcHouse, site: Site, floors: list[Floor]) -> list[Fixture]:
    """The furniture and fixtures that stand in rooms of ours."""
    found: list[Fixture] = []
    for entity in house.of("IfcFurnishingElement", "IfcFlowTerminal", "IfcEnergyConversionDevice"):
        solid = house.solid(entity)
        name = called(entity)
        if solid is None:
            house.draft.leave_out("fixture", "without a shape", name)
            continue
        floor = next((f for f in reversed(floors) if f.elevation - 0.1 <= solid.low < f.top), None)
        if floor is None:
            house.draft.leave_out("fixture", "on a storey that is left out", name)
            continue
        box = _box(house, entity, solid, floor=floor)
        room = space_at(site, floor.id, box.centre_m)
        if room is None or room.belongs != "ours":
            house.draft.leave_out("fixture", "in no room of ours", name)
            continue
        found.append(_fixture(house, entity, floor, box=box))
    return found


def _box(house: IfcHouse, entity: Entity, solid: Solid, *, floor: Floor) -> Box:
    """The box about a solid, turned as the entity is."""
    (ux, uy), _ = house.axes(entity)
    length = math.hypot(ux, uy)
    ux, uy = (ux / length, uy / length) if length > 0.5 else (1.0, 0.0)
    along, across = solid.points[:, :2] @ np.array((ux, uy)), solid.points[:, :2] @ np.array((-uy, ux))
    middle = ((along.min() + along.max()) / 2, (across.min() + across.max()) / 2)
    sides = (float(np.ptp(along)), float(np.ptp(across)))
    return Box(
        centre_m=(
            round(float(middle[0] * ux - middle[1] * uy), 4),
            round(float(middle[0] * uy + middle[1] * ux), 4),
        ),
        size_m=tuple(round(min(max(side, LEAST_M), 20.0), 4) for side in sides),
        turn_deg=round(math.degrees(math.atan2(uy, ux)), 3),
        base_m=round(max(solid.low - floor.elevation, 0.0), 4),
        height_m=round(min(max(solid.high - solid.low, LEAST_M), MOST_M), 4),
    )


def _fixture(house: IfcHouse, entity: Entity, floor: Floor, *, box: Box) -> Fixture:
    kind_entity = type_of(entity)
    words = f"{entity.Name or ''} {getattr(kind_entity, 'Name', None) or ''} {entity.is_a()}"
    words = words.replace("_", " ")
    matches = ((kind, heat) for pattern, kind, heat in _KINDS if re.search(pattern, words, re.IGNORECASE))
    kind, heat = next(matches, ("other", "none"))
    name = re.sub(r"^M_", "", (entity.Name or "").split(":")[0]).strip() or kind
    made = house.new_id(name, "fixture")
    house.draft.guess("kind", "fixture", made)
    fields: dict[str, object] = {"id": made, "name": name, "storey": floor.id, "kind": kind, **box._asdict()}
    basis = dict.fromkeys(fields, "measured") | {"kind": "guessed"}
    if heat != "none":
        fields["heat"], basis["heat"] = heat, "guessed"
    return Fixture.model_validate({**fields, "basis": basis})
