"""Where the south-west corner of a room stands that is put against, above or inside another."""

from __future__ import annotations

import shapely

from wardwright.intake.notes.clauses import Clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.walls import THINNEST_M, WIDEST_WALL_M
from wardwright.model.fabric import Space
from wardwright.model.record import Ring


def ring_of(area: shapely.Geometry) -> Ring:
    """The outline of an area, anticlockwise, to the micrometre. [m]"""
    ring = shapely.geometry.polygon.orient(area.simplify(1e-6)).exterior
    return tuple((round(float(x), 6), round(float(y), 6)) for x, y in list(ring.coords)[:-1])


def _gap(draft: Draft, clauses: Clauses) -> float:
    if "open" in clauses.flags:
        return 0.0
    thickness = clauses.measures.get("wall", draft.layout.inside.thickness)
    if not THINNEST_M <= thickness <= WIDEST_WALL_M:
        raise clauses.line.refuse(
            f"a wall {thickness:g} m thick cannot be",
            f"Give {THINNEST_M:g} to {WIDEST_WALL_M:g} m, or say 'open'",
        )
    return thickness


def against(
    draft: Draft, other: Space, size: tuple[float, float], *, clauses: Clauses, side: str
) -> tuple[float, float]:
    """Where the south-west corner of a room stands that is put against a side of another."""
    if other.storey != draft.layout.storey:
        raise clauses.line.refuse(
            f"{other.id} is on another storey",
            "Use 'above' for rooms one over the other, or name a room of this one",
        )
    if "open" in clauses.flags:
        draft.layout.open_pairs.add(frozenset((other.id, clauses.words["as"])))
    low_x, low_y, high_x, high_y = shapely.Polygon(other.outline_m).bounds
    gap = _gap(draft, clauses)
    x, y = low_x, low_y
    along = ("south", "north") if side in ("east", "west") else ("west", "east")
    wrong = [end for end in clauses.ends if end not in along]
    if wrong or len(clauses.ends) > 1:
        raise clauses.line.refuse(
            f"the {side} side of {other.id} runs from {along[0]} to {along[1]}",
            f"Give one distance, from its {along[0]} end or from its {along[1]} end",
        )
    x += clauses.ends.get("west", 0.0)
    y += clauses.ends.get("south", 0.0)
    x = high_x - clauses.ends["east"] - size[0] if "east" in clauses.ends else x
    y = high_y - clauses.ends["north"] - size[1] if "north" in clauses.ends else y
    match side:
        case "east":
            x = high_x + gap
        case "west":
            x = low_x - gap - size[0]
        case "north":
            y = high_y + gap
        case _:
            y = low_y - gap - size[1]
    return x, y


def above(
    draft: Draft, other: Space, size: tuple[float, float], *, clauses: Clauses, side: str
) -> tuple[float, float]:
    """A room over another, flush with its south-west corner unless ends say otherwise."""
    del draft, side
    return _within(other, size, ends={"west": 0.0, "south": 0.0} | clauses.ends, clauses=clauses)


def inside(
    draft: Draft, other: Space, size: tuple[float, float], *, clauses: Clauses, side: str
) -> tuple[float, float]:
    """A room cut out of another: the other keeps what is left of it."""
    del side
    ends = dict(clauses.ends)
    if clauses.side is not None and "-" in clauses.side:
        ends = dict.fromkeys(clauses.side.split("-"), 0.0) | ends
    if not ({"west", "east"} & set(ends) and {"south", "north"} & set(ends)):
        raise clauses.line.refuse(
            f"nothing says where in {other.id} it is",
            "Add a corner, such as 'corner north-west', or two distances",
        )
    x, y = _within(other, size, ends=ends, clauses=clauses)
    box = shapely.box(x, y, x + size[0], y + size[1])
    outline = shapely.Polygon(other.outline_m)
    rest = outline.difference(box.buffer(_gap(draft, clauses), join_style="mitre"))
    if not outline.buffer(1e-6).covers(box) or not isinstance(rest, shapely.Polygon) or rest.interiors:
        raise clauses.line.refuse(
            f"it does not fit into {other.id} at a side of it",
            f"Make it smaller, or move it to a corner of {other.id}",
        )
    place = draft.spaces.index(other)
    draft.spaces[place] = Space.model_validate(
        {key: getattr(other, key) for key in other.model_fields_set} | {"outline_m": ring_of(rest)}
    )
    return x, y


def _within(
    other: Space, size: tuple[float, float], *, ends: dict[str, float], clauses: Clauses
) -> tuple[float, float]:
    if {"west", "east"} <= set(clauses.ends) or {"north", "south"} <= set(clauses.ends):
        raise clauses.line.refuse(
            "two distances say the same", "Give one from west or east, one from south or north"
        )
    low_x, low_y, high_x, high_y = shapely.Polygon(other.outline_m).bounds
    x = high_x - ends["east"] - size[0] if "east" in ends else low_x + ends.get("west", 0.0)
    y = high_y - ends["north"] - size[1] if "north" in ends else low_y + ends.get("south", 0.0)
    return x, y
