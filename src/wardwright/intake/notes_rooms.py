"""Rooms as rectangles placed against, above or inside one another."""

from __future__ import annotations

from types import MappingProxyType
from typing import cast

import shapely

from wardwright.intake.notes_clauses import SIDES, Clauses, Grammar, read_clauses
from wardwright.intake.notes_draft import Draft
from wardwright.intake.notes_marks import marks
from wardwright.intake.notes_names import find, new_id, words_of
from wardwright.intake.notes_words import Line
from wardwright.model.fabric import Space, SpaceUse
from wardwright.model.record import Ring

SMALLEST_ROOM_M = 0.3
"""A room narrower than this is taken for a slip of the pen. [m] (assumption)"""
OVERLAP_M2 = 1e-3
"""Rooms that overlap by no more than this are taken as touching. [m2] (assumption)"""

USES: MappingProxyType[str, SpaceUse] = MappingProxyType(
    {
        "hall": "hall", "hallway": "hall", "entrance": "hall", "porch": "hall", "corridor": "hall",
        "landing": "landing", "stairwell": "stairwell", "stairs": "stairwell",
        "living": "living", "lounge": "living", "sitting": "living", "dining": "dining", "kitchen": "kitchen",
        "bedroom": "bedroom", "nursery": "bedroom", "study": "study", "office": "study",
        "bathroom": "bathroom", "bath": "bathroom", "shower": "bathroom", "toilet": "toilet", "wc": "toilet",
        "utility": "utility", "laundry": "utility", "cupboard": "store", "store": "store", "pantry": "store",
        "larder": "store", "garage": "garage", "loft": "loft", "attic": "loft", "conservatory": "conservatory",
        "balcony": "balcony", "terrace": "terrace", "plant": "plant", "boiler": "plant",
    }
)  # fmt: skip
"""What a room is likely to be for, by a word of its id. (assumption)"""

USE_WORDS = (*dict.fromkeys(USES.values()), "other")
"""Every use that a room may have."""

_GRAMMAR = Grammar(
    after=frozenset({"high"}),
    lengths=frozenset({"wall"}),
    words=MappingProxyType(
        {
            "use": USE_WORDS,
            "belongs": ("ours", "neighbour", "shared"),
        }
    ),
    flags=frozenset({"open"}),
    takes_side=True,
    takes_ends=True,
)


def read_room(draft: Draft, line: Line) -> None:
    """Read `kitchen 3.2 x 4.1 against hall east, 0.4 from its north end`.

    Parameters
    ----------
    draft : Draft
        The site so far; gains a space.
    line : Line
        The line.
    """
    if draft.base is not None:
        raise line.refuse(
            "rooms cannot be added to an imported house",
            "Leave the rooms out here: the building file has them; people, kit and facts may be added",
        )
    line.maybe("room")
    written = line.name("the room's id")
    if draft.layout.storey is None:
        raise line.refuse(
            "no storey is stated above this room", "Put a line such as 'storey ground 2.4 high' above it"
        )
    width, depth = line.number("the room's length from west to east"), _second(line)
    if min(width, depth) < SMALLEST_ROOM_M:
        raise line.refuse(f"a room of {width:g} x {depth:g} m is too small", "Correct its size, in metres")
    how = line.maybe("against", "above", "inside", "at")
    if how == "at":
        corner = (line.number("how far east"), line.number("how far north"))
        clauses = read_clauses(line, _GRAMMAR)
    elif how is None:
        clauses = read_clauses(line, _GRAMMAR)
        corner = _first(draft, line, written)
    else:
        other = find(line, draft.spaces, line.name("a room"), what="room")
        side = line.choice("a side", SIDES) if how == "against" else ""
        clauses = read_clauses(line, _GRAMMAR)
        place = {"against": _against, "above": _above, "inside": _inside}[how]
        corner = place(draft, other, (width, depth), clauses=clauses, side=side)
    box = shapely.box(corner[0], corner[1], corner[0] + width, corner[1] + depth)
    clauses.words.setdefault("as", written)
    identity = new_id(line, clauses, written, taken=draft.spaces)
    _refuse_overlap(draft, line, identity, box=box)
    draft.spaces.append(_space(draft, clauses, identity, outline=_ring(box)))
    draft.layout.lines[identity] = line


def _second(line: Line) -> float:
    if not line.maybe("x"):
        raise line.refuse(
            "the room has only one length", "Write its size as 3.2 x 4.1, west-east x south-north"
        )
    return line.number("the room's length from south to north")


def _first(draft: Draft, line: Line, written: str) -> tuple[float, float]:
    if any(space.storey == draft.layout.storey for space in draft.spaces):
        raise line.refuse(
            f"nothing says where '{written}' is", "Add where, such as 'against hall east', or 'at 0, 4.7'"
        )
    return (0.0, 0.0)


def _ring(area: shapely.Geometry) -> Ring:
    ring = shapely.geometry.polygon.orient(area.simplify(1e-6)).exterior
    return tuple((round(float(x), 6), round(float(y), 6)) for x, y in list(ring.coords)[:-1])


def _gap(draft: Draft, clauses: Clauses) -> float:
    if "open" in clauses.flags:
        return 0.0
    return clauses.measures.get("wall", draft.layout.inside.thickness)


def _against(
    draft: Draft, other: Space, size: tuple[float, float], *, clauses: Clauses, side: str
) -> tuple[float, float]:
    """Where the south-west corner of a room stands that is put against a side of another."""
    if other.storey != draft.layout.storey:
        raise clauses.line.refuse(
            f"{other.id} is on another storey",
            "Use 'above' for rooms one over the other, or name a room of this one",
        )
    if "open" in clauses.flags:
        draft.layout.open_pairs.add(frozenset((other.id, _own_id(clauses))))
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


def _own_id(clauses: Clauses) -> str:
    return clauses.words.get("as", clauses.line.tokens[0].written)


def _above(
    draft: Draft, other: Space, size: tuple[float, float], *, clauses: Clauses, side: str
) -> tuple[float, float]:
    """A room over another, flush with its south-west corner unless ends say otherwise."""
    del draft, side
    return _within(other, size, ends={"west": 0.0, "south": 0.0} | clauses.ends, clauses=clauses)


def _inside(
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
        {key: getattr(other, key) for key in other.model_fields_set} | {"outline_m": _ring(rest)}
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


def _refuse_overlap(draft: Draft, line: Line, identity: str, *, box: shapely.Geometry) -> None:
    for space in draft.spaces:
        shared = shapely.Polygon(space.outline_m).intersection(box).area
        if space.storey == draft.layout.storey and shared > OVERLAP_M2:
            raise line.refuse(
                f"{identity} would lie over {space.id} by {shared:.2f} m2", "Correct its size or its place"
            )


def _space(draft: Draft, clauses: Clauses, identity: str, *, outline: Ring) -> Space:
    fields: dict[str, object] = {
        "id": identity,
        "name": clauses.words.get("named", words_of(identity)),
        "storey": cast("str", draft.layout.storey),
        "outline_m": outline,
    }
    guessed: list[str] = []
    if "use" in clauses.words:
        fields["use"] = clauses.words["use"]
    else:
        likely = next((USES[word] for word in identity.split("-") if word in USES), None)
        if likely is not None:
            fields["use"], guessed = likely, ["use"]
    if "belongs" in clauses.words:
        fields["belongs"] = clauses.words["belongs"]
    if "high" in clauses.measures:
        fields["height_m"] = clauses.measures["high"]
    told = ["outline_m", *(["height_m"] if "height_m" in fields else [])]
    fields["basis"] = marks(clauses, told, guessed=guessed)
    return Space.model_validate({key: value for key, value in fields.items() if value != ()})
