"""What may be said of any door or window, when it is put there or later: leaf, lock, glazing, habits, name."""

from __future__ import annotations

from types import MappingProxyType
from typing import get_args

from wardwright.intake.notes.clauses import SIDES, Clauses, Grammar, read_clauses
from wardwright.intake.notes.draft import Draft, finish
from wardwright.intake.notes.faces import way
from wardwright.intake.notes.marks import changed
from wardwright.intake.notes.names import find, spellings
from wardwright.intake.notes.walls import Stretch
from wardwright.intake.notes.words import Line, nearest
from wardwright.model.opening import LockClass, Opening
from wardwright.model.placement import direction, sides_of_opening

_LEAF = ("shut", "ajar", "open")
_WORDS: dict[str, tuple[str, ...] | None] = {
    "lock": get_args(LockClass),
    "glazing": None,
    "usually": _LEAF,
    "night": _LEAF,
    "covering": ("none", "curtain", "blind", "shutter"),
    "hinge": (*SIDES, "top", "bottom"),
    "opens": None,
}
GRAMMAR = Grammar(
    after=frozenset({"wide", "high"}),
    lengths=frozenset({"sill", "head", "sill-outside"}),
    quantities=MappingProxyType({"leaves": ()}),
    words=MappingProxyType(_WORDS),
    flags=frozenset({"sliding", "fixed", "entry", "locked", "unlocked"}),
    sizes=frozenset({2}),
    takes_ends=True,
)
_SAID = MappingProxyType(
    {"glazing": "glazing", "lock": "lock", "usually": "habit", "night": "habit_night", "covering": "covering"}
)
_FLAGS: MappingProxyType[str, tuple[str, object]] = MappingProxyType(
    {
        "sliding": ("hinge", "sliding"),
        "fixed": ("hinge", "fixed"),
        "entry": ("is_entry_door", True),
        "locked": ("is_locked", True),
        "unlocked": ("is_locked", False),
    }
)
_SHORTHAND = MappingProxyType(
    {"lock": "lock", "glazing": "glazing", "habit": "usually", "covering": "covering"}
)


def side_of(stretch: Stretch, *, beyond: bool = False) -> str:
    """Which side of the wall's line the stretch's room is on, or what lies beyond."""
    is_left = stretch.side in ("south", "east")
    return "left" if is_left != beyond else "right"


def leaf_fields(draft: Draft, clauses: Clauses, stretch: Stretch | None) -> dict[str, object]:
    """Everything that may also be said later with `set`."""
    line, words, flags = clauses.line, clauses.words, clauses.flags
    ways_to_open = sorted(flags & {"sliding", "fixed"}) + (["hinge"] if "hinge" in words else [])
    if len(ways_to_open) > 1 or {"locked", "unlocked"} <= flags:
        raise line.refuse("how it opens or is locked is given twice", "Keep the one that is right")
    fields: dict[str, object] = {}
    glazings = [row.id for row in draft.catalogue.glazings]
    if "glazing" in words and glazings and words["glazing"] not in glazings:
        raise line.refuse(f"there is no glazing '{words['glazing']}'", nearest(words["glazing"], glazings))
    fields |= {field: words[word] for word, field in _SAID.items() if word in words}
    if "leaves" in clauses.measures:
        fields["leaves"] = int(clauses.measures["leaves"])
    if "sill-outside" in clauses.measures:
        fields["sill_outside_m"] = clauses.measures["sill-outside"]
    fields |= dict(_FLAGS[flag] for flag in sorted(flags & set(_FLAGS)))
    if "hinge" in words:
        fields["hinge"] = _hinge(line, stretch, written=words["hinge"])
    if "opens" in words and stretch is not None:
        fields["swing"] = _swing(draft, line, stretch, written=words["opens"])
    return fields


def _swing(draft: Draft, line: Line, stretch: Stretch, *, written: str) -> str:
    if written in ("inward", "outward"):
        if stretch.other is not None:
            raise line.refuse(
                f"'{written}' does not say into which of the two rooms", f"Write 'opens into {stretch.room}'"
            )
        return side_of(stretch, beyond=written == "outward")
    room = find(line, draft.spaces, written, what="room")
    if room.id not in (stretch.room, stretch.other):
        raise line.refuse(
            f"it does not lead to {room.id}", nearest(room.id, [stretch.room, stretch.other or "outward"])
        )
    return side_of(stretch, beyond=room.id == stretch.other)


def _hinge(line: Line, stretch: Stretch | None, *, written: str) -> str:
    if written not in SIDES:
        return written
    if stretch is None:
        raise line.refuse(
            "a hinge by compass needs a house from notes", "Leave it as the building file has it"
        )
    ends = ("west", "east") if stretch.side in ("north", "south") else ("south", "north")
    if written not in ends:
        raise line.refuse(
            f"that wall runs from {ends[0]} to {ends[1]}", f"Write 'hinge {ends[0]}' or 'hinge {ends[1]}'"
        )
    return "start" if written == ends[0] else "end"


def read_set(draft: Draft, line: Line) -> None:
    """Read `set kitchen-window glazing laminated`, `lock front-door deadlock`, `habit kitchen-door open`."""
    word = line.take("set").written
    opening = find(line, draft.openings, line.name("a door or window"), what="door or window")
    key, said = _SHORTHAND.get(word, word), None
    if word != "set":
        known = _WORDS[key]
        said = line.name(f"a {word}") if known is None else line.choice(f"a word for '{word}'", known)
    clauses = read_clauses(line, GRAMMAR)
    if said is not None:
        clauses.words[key] = said
    stretch = next((s for s in draft.stretches if s.wall == opening.wall), None)
    if "opens" in clauses.words:
        stretch = _sides(draft, line, opening, stretch=stretch)
    fields = leaf_fields(draft, clauses, stretch)
    for key, field in (("wide", "width_m"), ("sill", "sill_m"), ("head", "head_m")):
        if key in clauses.measures:
            fields[field] = clauses.measures[key]
    if clauses.ends or clauses.size or "high" in clauses.measures:
        raise line.refuse("an opening cannot be moved with 'set'", "Change the line that puts it there")
    if not fields:
        raise line.refuse("nothing is set", nearest("", sorted([*_WORDS, "sill", "head", "wide", "entry"])))
    draft.openings[draft.openings.index(opening)] = changed(opening, fields, clauses)


def _sides(draft: Draft, line: Line, opening: Opening, *, stretch: Stretch | None) -> Stretch:
    """A stretch that says which rooms are on an opening's two sides, in whatever house."""
    left, right = sides_of_opening(finish(draft), opening)
    wall = next(wall for wall in draft.walls if wall.id == opening.wall)
    level = stretch is None or stretch.side in ("north", "south")
    if left is not None:
        return Stretch(left, right, "south" if level else "east", wall.id, wall.line_m)
    if right is not None:
        return Stretch(right, None, "north" if level else "west", wall.id, wall.line_m)
    raise line.refuse(f"{opening.id} has no room on either side", "Leave 'opens' out")


_CALL = Grammar(flags=frozenset({"widest", "outside"}), takes_side=True, takes_names=True)


def read_call(draft: Draft, line: Line) -> None:
    """Read `call front-door door flur outside`: a name for an opening that is found by its rooms."""
    line.take("call")
    name = line.name("a name")
    kind = line.choice("a kind of opening", ("door", "window", "gap", "garage-door", "rooflight", "hatch"))
    room = find(line, draft.spaces, line.name("a room"), what="room")
    clauses = read_clauses(line, _CALL)
    other = [find(line, draft.spaces, written, what="room").id for written in clauses.names]
    site = finish(draft)
    found = []
    for opening in draft.openings:
        sides = sides_of_opening(site, opening)
        beyond = sides[1] if sides[0] == room.id else sides[0]
        wanted = beyond is None if "outside" in clauses.flags else (not other or beyond in other)
        is_there = clauses.side is None or _is_on(
            draft, opening, is_left=sides[0] == room.id, side=clauses.side
        )
        if opening.kind == kind and room.id in sides and wanted and is_there:
            found.append(opening)
    if "widest" in clauses.flags and found:
        found = [max(found, key=lambda opening: (opening.width_m, opening.id))]
    if len(found) != 1:
        ids = ", ".join(f"{o.id} ({o.width_m:.2f} m wide)" for o in found)
        raise line.refuse(
            f"{len(found)} openings fit that" + (f": {ids}" if ids else ""),
            "Say more: the room beyond, 'outside', a side, or 'widest'"
            if found
            else "Correct the kind or the rooms",
        )
    if any(spellings(o.id) & spellings(name) or o.name == name for o in draft.openings if o is not found[0]):
        raise line.refuse(f"another opening is called '{name}' already", "Choose another name")
    draft.openings[draft.openings.index(found[0])] = changed(found[0], {"name": name}, clauses)


def _is_on(draft: Draft, opening: Opening, *, is_left: bool, side: str) -> bool:
    wall = next(wall for wall in draft.walls if wall.id == opening.wall)
    _, (lx, ly), _ = direction(wall.line_m)
    out = (-lx, -ly) if is_left else (lx, ly)
    to = way(side)
    return out[0] * to[0] + out[1] * to[1] > 0.7
