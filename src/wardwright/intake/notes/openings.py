"""Doors, windows and gaps in the walls of a house in notes."""

from __future__ import annotations

import math
from types import MappingProxyType

from wardwright.intake.notes.clauses import SIDES, Clauses, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.leaves import GRAMMAR, leaf_fields, side_of
from wardwright.intake.notes.marks import marks
from wardwright.intake.notes.names import find, new_id, words_of
from wardwright.intake.notes.walls import Stretch
from wardwright.intake.notes.words import Line, nearest
from wardwright.model.opening import Opening

USUAL_WIDTH_M = MappingProxyType({"door": 0.8, "gap": 0.9, "garage-door": 2.4})
"""Where nothing is said. [m] (assumption)"""
USUAL_SILL_M = 0.9
"""Of a window, where nothing is said. [m] (assumption)"""
USUAL_HEAD_M = 2.0
"""Of a door, where nothing is said. [m] (assumption)"""

NOTHING_HUNG = MappingProxyType(
    {"leaves": 0, "hinge": "none", "swing": "none", "lock": "none", "habit": "open", "habit_night": "open"}
)
"""What a gap is, as an opening."""


def read_opening(draft: Draft, line: Line) -> None:
    """Read `door kitchen hall 0.8 wide, 0.5 from its west end`, or `window kitchen north 1.2 x 1.1 sill 0.9`."""
    kind = line.take("a kind of opening").written
    if draft.base is not None:
        raise line.refuse(
            f"a {kind} cannot be added to an imported house",
            "Use 'call' to name one that the building file has, and 'set' to say more about it",
        )
    room = find(line, draft.spaces, line.name("a room"), what="room")
    stretch, beyond = _stretch(draft, line, room.id)
    clauses = read_clauses(line, GRAMMAR)
    width, sill, head, guessed = _sizes(line, kind, clauses)
    place = _along(line, stretch, clauses, width=width)
    wall = next(wall for wall in draft.walls if wall.id == stretch.wall)
    (first, _), ((wx, wy), _) = stretch.line, wall.line_m
    offset = (first[0] - wx) + (first[1] - wy) + place  # both run the same way, along x or along y
    if offset - width / 2 < -1e-6 or offset + width / 2 > math.dist(*wall.line_m) + 1e-6:
        raise line.refuse(
            "it would lie in the wall that stands across there", "Move it away from that corner"
        )
    identity = new_id(line, clauses, f"{room.id}-{beyond}-{kind}", taken=draft.everything())
    fields: dict[str, object] = {
        "id": identity,
        "name": clauses.words.get("named", words_of(identity)),
        "kind": kind,
        "wall": wall.id,
        "offset_m": round(offset, 6),
        "width_m": width,
        "sill_m": round(sill, 6),
        "head_m": round(head, 6),
    }
    guessed = [*guessed, *(["offset_m"] if not clauses.ends else [])]
    fields |= leaf_fields(draft, clauses, stretch)
    if kind == "gap":
        fields |= NOTHING_HUNG
    if kind in ("door", "garage-door") and "opens" not in clauses.words and "swing" not in fields:
        fields["swing"] = side_of(stretch)
        guessed.append("swing")
    told = [key for key in fields if key not in ("id", "name", "kind", "wall") and key not in guessed]
    opening = Opening.model_validate(fields | _basis(clauses, told, guessed))
    _refuse_clash(draft, line, opening)
    draft.openings.append(opening)


def _basis(clauses: Clauses, told: list[str], guessed: list[str]) -> dict[str, object]:
    basis = marks(clauses, told, guessed=guessed)
    return {"basis": basis} if basis else {}


def _stretch(draft: Draft, line: Line, room: str) -> tuple[Stretch, str]:
    """The longest stretch of wall between a room and what the line names next."""
    written = line.name("a side, or the room beyond")
    of_room = [stretch for stretch in draft.stretches if stretch.room == room]
    if written in SIDES:
        found = [s for s in of_room if s.side == written and s.other is None]
        if found and (room, written) in draft.layout.parties:
            raise line.refuse(f"the {written} side of {room} is a party wall", "Name another side of it")
        if not found:
            beyond = sorted({s.other for s in of_room if s.side == written and s.other})
            raise line.refuse(
                f"{room} has no outside wall on its {written} side",
                f"Beyond it is {' and '.join(beyond)}; name that room" if beyond else "Name another side",
            )
        return max(found, key=lambda s: math.dist(*s.line)), written
    other = find(line, draft.spaces, written, what="room or side")
    found = [s for s in of_room if s.other == other.id]
    if not found:
        beyond = sorted({s.other for s in of_room if s.other})
        raise line.refuse(
            f"{room} and {other.id} have no wall in common",
            nearest(other.id, beyond) if beyond else "Name a side",
        )
    return max(found, key=lambda s: math.dist(*s.line)), other.id


def _sizes(line: Line, kind: str, clauses: Clauses) -> tuple[float, float, float, list[str]]:
    guessed: list[str] = []
    width, high = clauses.measures.get("wide"), clauses.measures.get("high")
    if clauses.size:
        if width is not None or high is not None:
            raise line.refuse("its size is given twice", "Keep the one that is right")
        width, high = clauses.size
    if kind == "window" and (width is None or high is None):
        raise line.refuse(
            "the window has no size", "Write it as width x height, such as '1.2 x 1.1 sill 0.9'"
        )
    if width is None:
        width = USUAL_WIDTH_M[kind]
        guessed.append("width_m")
    sill, head = clauses.measures.get("sill"), clauses.measures.get("head")
    if sill is None:
        sill = 0.0
        if kind == "window":
            sill = head - high if head is not None and high is not None else USUAL_SILL_M
            guessed += [] if head is not None else ["sill_m"]
    if head is None:
        head = sill + high if high is not None else USUAL_HEAD_M
        guessed += [] if high is not None else ["head_m"]
    if head <= sill or width <= 0:
        raise line.refuse("it is not higher than its sill, or not wider than nothing", "Correct its size")
    return width, sill, head, guessed


def _along(line: Line, stretch: Stretch, clauses: Clauses, *, width: float) -> float:
    """From the stretch's first end to the opening's middle. [m]"""
    length = math.dist(*stretch.line)
    ends = ("west", "east") if stretch.side in ("north", "south") else ("south", "north")
    what = f"the wall between {stretch.room} and {stretch.other or 'outside'}"
    if len(clauses.ends) > 1 or any(end not in ends for end in clauses.ends):
        raise line.refuse(
            f"{what} runs from {ends[0]} to {ends[1]}",
            f"Give one distance, from its {ends[0]} or from its {ends[1]} end",
        )
    place = length / 2
    if ends[0] in clauses.ends:
        place = clauses.ends[ends[0]] + width / 2
    elif ends[1] in clauses.ends:
        place = length - clauses.ends[ends[1]] - width / 2
    if place - width / 2 < -1e-6 or place + width / 2 > length + 1e-6:
        raise line.refuse(
            f"{what} is {length:.2f} m long, too short for an opening {width:g} m wide there",
            "Correct the width or the distance",
        )
    return place


def _refuse_clash(draft: Draft, line: Line, opening: Opening) -> None:
    for other in draft.openings:
        apart = abs(other.offset_m - opening.offset_m) - (other.width_m + opening.width_m) / 2
        is_level = other.sill_m < opening.head_m and opening.sill_m < other.head_m
        if other.wall == opening.wall and apart < -1e-6 and is_level:
            raise line.refuse(
                f"{opening.id} would lie over {other.id} in the same wall", "Move one of the two"
            )
