"""The ground about the house: its level, the boundary, the road, and things that stand there."""

from __future__ import annotations

import shapely

from wardwright.intake.notes.clauses import SIDES, Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.marks import changed
from wardwright.intake.notes.names import new_id, words_of
from wardwright.intake.notes.words import Line
from wardwright.model.surroundings import GroundThing


def read_ground(draft: Draft, line: Line) -> None:
    """Read `ground 0.15 below`, `boundary 4 south, 12 north`, `road 5 south`: about the outermost rooms."""
    word = line.take("what").written
    if word == "ground":
        value = line.number("how far below the floor")
        line.maybe("below")
        draft.ground = changed(draft.ground, {"level_m": -value}, read_clauses(line, Grammar()))
        return
    if not draft.spaces:
        raise line.refuse("no room is known yet", "Put this line below the rooms")
    bounds = shapely.union_all([shapely.Polygon(space.outline_m) for space in draft.spaces]).bounds
    reach = dict.fromkeys(SIDES, 0.0)
    said = []
    while line.at_quantity():
        value = line.number("a distance")
        said.append(line.choice("a side", SIDES))
        reach[said[-1]] = value
    if not said or (word == "road" and len(said) > 1):
        raise line.refuse("nothing says where it is", f"Write '{word} 4 south'")
    west, south = bounds[0] - reach["west"], bounds[1] - reach["south"]
    east, north = bounds[2] + reach["east"], bounds[3] + reach["north"]
    clauses = read_clauses(line, Grammar())
    corners = {
        "south": ((west, south), (east, south)),
        "east": ((east, south), (east, north)),
        "north": ((east, north), (west, north)),
        "west": ((west, north), (west, south)),
    }
    if word == "road":
        draft.ground = changed(draft.ground, {"road_m": corners[said[0]]}, clauses)
    else:
        ring = tuple(corners[side][0] for side in ("south", "east", "north", "west"))
        draft.ground = changed(draft.ground, {"boundary_m": ring}, clauses)


_THINGS = (
    "wall", "fence", "tree", "shed", "flat-roof", "bin", "car", "pipe", "building", "gate", "overhang",
    "other",
)  # fmt: skip

NOTHING = "nothing"
"""In place of a thing outside: somebody has looked, and there is none."""


def read_outside(draft: Draft, line: Line) -> None:
    """Read `outside bin 0.6 x 0.6, 1.1 high, 3 east, -1.5 north, climbable`: by its south-west corner on the plan.

    `outside nothing` says that somebody has looked.
    """
    line.take("outside")
    kind = line.choice("a thing outside", (*_THINGS, NOTHING))
    if kind == NOTHING:
        things = {"things": draft.ground.things}
        draft.ground = changed(draft.ground, things, read_clauses(line, Grammar()))
        return
    grammar = Grammar(
        after=frozenset({"high", "east", "north"}),
        lengths=frozenset({"base"}),
        flags=frozenset({"climbable", "not-climbable"}),
        sizes=frozenset({2}),
    )
    clauses = read_clauses(line, grammar)
    missing = [word for word in ("high", "east", "north") if word not in clauses.measures]
    if missing or not clauses.size:
        raise line.refuse(
            f"its {'size' if not clauses.size else missing[0]} is missing",
            "Write 'outside shed 2 x 1.5, 2.1 high, 3 east, 12 north': its south-west corner on the plan",
        )
    if {"climbable", "not-climbable"} <= clauses.flags:
        raise line.refuse("it is said to be climbed and not to be", "Keep one of climbable, not-climbable")
    x, y = clauses.measures["east"], clauses.measures["north"]
    width, depth = clauses.size
    identity = new_id(line, clauses, kind, taken=draft.everything())
    thing = GroundThing(
        id=identity,
        name=clauses.words.get("named", words_of(identity)),
        kind=kind,
        outline_m=((x, y), (x + width, y), (x + width, y + depth), (x, y + depth)),
        height_m=clauses.measures["high"],
        **({"base_m": clauses.measures["base"]} if "base" in clauses.measures else {}),
        # Where the notes are silent nobody has said: then its kind decides.
        **({"can_be_climbed": "climbable" in clauses.flags} if clauses.flags else {}),
    )
    draft.ground = changed(
        draft.ground, {"things": (*draft.ground.things, thing)}, read_clauses(line, Grammar())
    )
