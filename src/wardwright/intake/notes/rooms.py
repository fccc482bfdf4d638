"""Rooms as rectangles placed against, above or inside one another."""

from __future__ import annotations

from types import MappingProxyType
from typing import cast

import shapely

from wardwright.intake.notes.adjacency import above, against, inside, ring_of
from wardwright.intake.notes.clauses import SIDES, Clauses, Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.marks import marks
from wardwright.intake.notes.names import find, new_id, words_of
from wardwright.intake.notes.uses import USE_WORDS, likely_use
from wardwright.intake.notes.words import Line
from wardwright.model.consistency.contents import WIDEST_M
from wardwright.model.fabric import Space
from wardwright.model.record import Ring

SMALLEST_ROOM_M = 0.3
"""A room narrower than this is taken for a slip of the pen. [m] (assumption)"""
OVERLAP_M2 = 1e-3
"""Rooms that overlap by no more than this are taken as touching. [m2] (assumption)"""

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
    if max(width, depth) > WIDEST_M:
        raise line.refuse(f"a room of {width:g} x {depth:g} m is too large", "Correct its size, in metres")
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
        clauses.words.setdefault("as", written)
        place = {"against": against, "above": above, "inside": inside}[how]
        corner = place(draft, other, (width, depth), clauses=clauses, side=side)
    _refuse_idle(clauses, how)
    box = shapely.box(corner[0], corner[1], corner[0] + width, corner[1] + depth)
    clauses.words.setdefault("as", written)
    identity = new_id(line, clauses, written, taken=draft.everything())
    _refuse_overlap(draft, line, identity, box=box)
    draft.spaces.append(_space(draft, clauses, identity, outline=ring_of(box)))
    draft.layout.lines[identity] = line


_SAYS_MORE = MappingProxyType(
    {
        "against": {"from", "wall", "open"},
        "above": {"from"},
        "inside": {"from", "corner", "wall"},
        "at": set[str](),
        None: set[str](),
    }
)
"""Which clauses of place mean something beside each way to place a room."""


def _refuse_idle(clauses: Clauses, how: str | None) -> None:
    """Refuse a clause of place that would say nothing here."""
    said = {"from"} if clauses.ends else set()
    said |= {"corner"} if clauses.side is not None else set()
    said |= {"wall"} if "wall" in clauses.measures else set()
    said |= {"open"} if "open" in clauses.flags else set()
    for word in sorted(said - _SAYS_MORE[how]):
        raise clauses.line.refuse(f"'{word}' says nothing about a room placed so", "Take it away")


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
        likely = likely_use(identity)
        if likely is not None:
            fields["use"], guessed = likely, ["use"]
    if "belongs" in clauses.words:
        fields["belongs"] = clauses.words["belongs"]
    if "high" in clauses.measures:
        fields["height_m"] = clauses.measures["high"]
    told = ["outline_m", *(["height_m"] if "height_m" in fields else [])]
    fields["basis"] = marks(clauses, told, guessed=guessed)
    return Space.model_validate({key: value for key, value in fields.items() if value != ()})
