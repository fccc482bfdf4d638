"""The rooms of a drawing as spaces of the site, and the open edges between those that were parted."""

from __future__ import annotations

import itertools
import re
import unicodedata

import numpy as np
import shapely

from wardwright.intake.dxf.fabric import STOREY
from wardwright.intake.dxf.rooms import Floor
from wardwright.intake.outlines import ring_of
from wardwright.intake.report import ReportDraft
from wardwright.intake.uses import use_of
from wardwright.model.fabric import OpenEdge, Space

CLOSET_M2 = 2.5
"""A room without a name that is smaller is a closet. [m2] (assumption)"""
LEAST_EDGE_M = 0.3
"""A shorter open edge is no way. [m] (assumption)"""


def spaces_of(floor: Floor, *, draft: ReportDraft) -> list[Space]:
    """The spaces of a floor, named rooms with their names; what else has a name of ours."""
    found: list[Space] = []
    taken: set[str] = set()
    for area in floor.rooms:
        small = area.outline.area < CLOSET_M2
        name = area.name or ("Closet" if small else "Room")
        made = slug(name) or "room"
        stem, number = made, 1
        while made in taken:
            number += 1
            made = f"{stem}-{number}"
        taken.add(made)
        if number > 1:
            name += f" {number}"
        use = use_of(name) if area.name else "store" if small else "other"
        marks = {"id": "measured", "storey": "measured", "use": "guessed"}
        marks["name"] = "measured" if area.name else "guessed"
        marks["outline_m"] = "guessed" if area.is_parted else "measured"
        draft.guess("use", "space", made)
        if area.is_parted:
            draft.guess("outline (parted along lines of its walls)", "space", made)
        if not area.name:
            draft.guess("name", "space", made)
        outline = ring_of(area.outline)
        found.append(Space(id=made, name=name, storey=STOREY, outline_m=outline, use=use, basis=marks))
    return found


def slug(name: str) -> str:
    """Small letters, digits and hyphens from a name.

    Examples
    --------
    >>> slug("W.I.C."), slug("Bedroom 2")
    ('w-i-c', 'bedroom-2')
    """
    plain = unicodedata.normalize("NFKD", name.lower()).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:60].strip("-")


def open_edges_of(floor: Floor, spaces: list[Space]) -> list[OpenEdge]:
    """Where parted rooms meet."""
    parted = [
        (space, area.outline) for space, area in zip(spaces, floor.rooms, strict=True) if area.is_parted
    ]
    found: list[OpenEdge] = []
    for (one, first), (other, second) in itertools.combinations(parted, 2):
        shared = first.exterior.intersection(second.buffer(0.02, join_style="mitre"))
        lines = [p for p in shapely.get_parts(shared) if p.geom_type == "LineString" and not p.is_empty]
        merged = shapely.line_merge(shapely.MultiLineString(lines)) if lines else shapely.LineString()
        for piece in shapely.get_parts(merged):
            for a, b in itertools.pairwise(shapely.get_coordinates(piece.simplify(0.01))):
                if float(np.hypot(*(b - a))) >= LEAST_EDGE_M:
                    made = f"{one.id}--{other.id}"[:70] + f"-{len(found) + 1}"
                    line = tuple((round(float(x), 4), round(float(y), 4)) for x, y in (a, b))
                    marks = dict.fromkeys(("id", "spaces", "line_m"), "guessed")
                    found.append(
                        OpenEdge.model_validate(
                            {"id": made, "spaces": (one.id, other.id), "line_m": line, "basis": marks}
                        )
                    )
    return found
