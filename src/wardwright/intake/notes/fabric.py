"""What the walls of a house in notes are made of, and the walls and open edges themselves."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.intake.notes.clauses import SIDES, Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.joints import walls_of
from wardwright.intake.notes.marks import changed
from wardwright.intake.notes.names import find
from wardwright.intake.notes.walls import (
    THINNEST_M,
    TOUCHING_M,
    WIDEST_WALL_M,
    Edge,
    Make,
    edges_of,
    facing,
    pieces_of,
)
from wardwright.intake.notes.words import Line, nearest
from wardwright.model.fabric import OpenEdge
from wardwright.model.record import Line2


def read_walls(draft: Draft, line: Line) -> None:
    """Read `walls outside 0.3 cavity-brick`: what the walls are of which no other line speaks."""
    line.take("walls")
    which = line.choice("a kind of wall", ("inside", "outside", "party"))
    thickness = line.number("how thick they are") if line.at_quantity() else None
    line.maybe("thick")
    if thickness is not None and not THINNEST_M <= thickness <= WIDEST_WALL_M:
        raise line.refuse(
            f"a wall {thickness:g} m thick cannot be", f"Give {THINNEST_M:g} to {WIDEST_WALL_M:g} m"
        )
    construction = _construction(draft, line) if not line.at_end else "unknown"
    line.end()
    usual: Make = getattr(draft.layout, which)
    make = Make(
        usual.thickness if thickness is None else thickness,
        construction,
        is_party=usual.is_party,
        is_guessed=thickness is None,
    )
    setattr(draft.layout, which, make)


def _construction(draft: Draft, line: Line) -> str:
    known = [row.id for row in draft.catalogue.constructions]
    written = line.name("what it is built of")
    if known and written not in known:
        raise line.refuse(f"there is no construction '{written}'", nearest(written, known))
    return written


def read_party(draft: Draft, line: Line) -> None:
    """Read `party living east`: the neighbour's house stands there."""
    line.take("party")
    room = find(line, draft.spaces, line.name("a room"), what="room")
    while not line.at_end:
        draft.layout.parties[room.id, line.choice("a side", SIDES)] = line


def read_construction(draft: Draft, line: Line) -> None:
    """Read `construction hall living brick`, `construction kitchen north glass-wall`, or, imported, a wall's id."""
    line.take("construction")
    first = line.name("a room or a wall")
    walls = [wall for wall in draft.walls if wall.id == first]
    if draft.base is not None:
        if not walls:
            raise line.refuse(
                f"there is no wall '{first}'", nearest(first, [wall.id for wall in draft.walls])
            )
        made = _construction(draft, line)
        place = draft.walls.index(walls[0])
        draft.walls[place] = changed(walls[0], {"construction": made}, read_clauses(line, Grammar()))
        return
    room = find(line, draft.spaces, first, what="room")
    second = line.name("a side or another room")
    layout = draft.layout
    if second in SIDES:
        usual = layout.party if (room.id, second) in layout.parties else layout.outside
        layout.about[room.id, second] = usual._replace(
            construction=_construction(draft, line), is_guessed=False
        )
    else:
        other = find(line, draft.spaces, second, what="room")
        layout.between[frozenset((room.id, other.id))] = layout.inside._replace(
            construction=_construction(draft, line), is_guessed=False
        )
    line.end()


def raise_walls(draft: Draft) -> None:
    """Make the walls and open edges of every storey, once all rooms and facts about walls are read."""
    layout = draft.layout
    outside = dict.fromkeys(layout.parties, layout.party) | layout.about
    for storey in draft.storeys:
        rooms = [space for space in draft.spaces if space.storey == storey.id]
        _join_touching(draft, [edge for room in rooms for edge in edges_of(room)])
        pieces = pieces_of(
            rooms,
            inside=layout.between,
            inside_usual=layout.inside,
            outside=outside,
            outside_usual=layout.outside,
        )
        walls, stretches = walls_of(storey.id, pieces, rooms, taken=[wall.id for wall in draft.walls])
        draft.walls.extend(walls)
        draft.stretches.extend(stretches)


def _join_touching(draft: Draft, edges: Sequence[Edge]) -> None:
    for lower, upper, low, high in facing(edges):
        if upper.at - lower.at > TOUCHING_M:
            continue
        pair = (lower.room, upper.room)
        if frozenset(pair) not in draft.layout.open_pairs:
            later = max(pair, key=lambda room: list(draft.layout.lines).index(room))
            raise draft.layout.lines[later].refuse(
                f"{pair[0]} and {pair[1]} touch with no wall between them",
                "Leave the thickness of a wall between them, or say 'open' where nothing is built",
            )
        ends: Line2 = (
            ((low, lower.at), (high, lower.at)) if lower.is_level else ((lower.at, low), (lower.at, high))
        )
        name = f"{pair[0]}-{pair[1]}-open"
        draft.open_edges.append(OpenEdge(id=name, spaces=pair, line_m=ends))
