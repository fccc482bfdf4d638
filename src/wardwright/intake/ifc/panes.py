"""The panes of curtain walls: glass that a person could come through, though the file has no window there."""

from __future__ import annotations

import re
from collections.abc import Iterator

import ifcopenshell.util.element
import numpy as np

from wardwright.intake.ifc.file import Entity, IfcHouse, layers_of, type_of
from wardwright.intake.ifc.openings import Hole, heights_of, hole_in, named
from wardwright.intake.ifc.shapes import Solid
from wardwright.intake.ifc.walls import BuiltWall
from wardwright.intake.report import counted
from wardwright.model.opening import Opening
from wardwright.model.placement import direction
from wardwright.model.site import Site

FRAMED = 0.96
"""The share of a curtain wall's length that is glass where the file draws no panels. [-] (assumption)"""
LEAST_HIGH_M = 0.1
"""A panel that a storey holds less of is no pane of it. [m] (assumption)"""
SLANT_M = 0.05
"""Ends of a panel's top that differ by more are a slant. [m] (assumption)"""

_OPAQUE = re.compile(
    r"solid|opaque|spandrel|metal|alumin|steel|timber|wood|empty|stein|blech|holz", re.IGNORECASE
)
_GLASS = re.compile(r"gla[sz]", re.IGNORECASE)


def panes_of(house: IfcHouse, site: Site, built: list[BuiltWall]) -> list[Opening]:
    """A fixed window for each glass panel of each curtain wall; one for the whole wall where no panel is drawn."""
    found: list[Opening] = []
    for wall in built:
        if not wall.is_curtain:
            continue
        holes = list(_panels(house, wall))
        if holes:
            kept = [_pane(house, site, hole) for hole in holes]
            house.draft.oddity(
                f"{wall.wall.id} is a curtain wall: {counted(len(kept), 'pane')} that do not open"
            )
        else:
            kept = [_whole(house, site, wall)]
            house.draft.oddity(f"{wall.wall.id} is a curtain wall without panels: taken as one fixed window")
        found.extend(kept)
    return found


def _panels(house: IfcHouse, built: BuiltWall) -> Iterator[Hole]:
    """The places of a curtain wall's glass panels, lowest first and along its line."""
    holes = []
    parts: list[Entity] = list(ifcopenshell.util.element.get_parts(house.file.by_id(built.entity)))
    for part in parts:
        solid = house.solid(part) if part.is_a("IfcPlate") else None
        if solid is None:
            continue
        hole = hole_in(solid, built)
        if hole is None or min(hole.high, built.high) - max(hole.low, built.low) < LEAST_HIGH_M:
            continue
        if is_opaque(part):
            house.draft.oddity(f"{built.wall.id}: a panel of it is not glass, and stays wall")
            continue
        top = _even_top(solid, built)
        if top < min(hole.high, built.high) - SLANT_M:
            house.draft.oddity(
                f"{built.wall.id}: a pane with a slanting top is taken as high as its lower end"
            )
        holes.append(hole._replace(low=max(hole.low, built.low), high=min(top, built.high)))
    yield from sorted(holes, key=lambda hole: (round(hole.low, 2), hole.offset))


def is_opaque(panel: Entity) -> bool:
    """Whether a panel says of itself, by its name, its type's or its material's, that it is no glass."""
    names = (panel.Name, getattr(type_of(panel), "Name", None), *(name for name, _ in layers_of(panel)))
    words = " ".join(filter(None, names))
    return bool(_OPAQUE.search(words)) and not _GLASS.search(words)


def _even_top(solid: Solid, built: BuiltWall) -> float:
    """The height up to which a panel has its whole width. [m]"""
    (ux, uy), _, _ = direction(built.wall.line_m)
    along = solid.points[:, :2] @ np.array((ux, uy))
    ends = (along <= along.min() + SLANT_M, along >= along.max() - SLANT_M)
    return float(min(solid.points[end, 2].max() for end in ends))


def _pane(house: IfcHouse, site: Site, hole: Hole) -> Opening:
    sill, head = heights_of(site, hole)
    fields: dict[str, object] = {
        "kind": "window", "wall": hole.built.wall.id, "offset_m": hole.offset, "width_m": hole.width,
        "sill_m": sill, "head_m": head, "leaves": 0, "hinge": "fixed", "swing": "none",
        "glazing": "double-plain", "lock": "unknown",
    }  # fmt: skip
    guessed = ("leaves", "hinge", "swing", "glazing", "lock")
    return named(house, site, (fields, guessed), words="", noun="pane")


def _whole(house: IfcHouse, site: Site, built: BuiltWall) -> Opening:
    """A curtain wall as one fixed window: it is glass that a person could come through."""
    wall = built.wall
    _, _, length = direction(wall.line_m)
    top = wall.base_m + (wall.height_m or site.storey(wall.storey).height_m)
    fields: dict[str, object] = {
        "kind": "window", "wall": wall.id, "offset_m": round(length / 2, 4), "width_m": round(length * FRAMED, 4),
        "sill_m": wall.base_m, "head_m": round(top, 4), "leaves": 0, "hinge": "fixed", "swing": "none",
        "glazing": "double-plain", "lock": "unknown",
    }  # fmt: skip
    guessed = ("width_m", "sill_m", "head_m", "leaves", "hinge", "swing", "glazing", "lock")
    return named(house, site, (fields, guessed), words="", noun="pane")
