"""Stairs, furniture, things that get warm, and power and network points."""

from __future__ import annotations

import math
from types import MappingProxyType
from typing import NamedTuple

import shapely

from wardwright.intake.notes.clauses import SIDES, Clauses, Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.faces import distance_along, face_toward, way
from wardwright.intake.notes.marks import marks
from wardwright.intake.notes.names import find, new_id, words_of
from wardwright.intake.notes.places import floor_place
from wardwright.intake.notes.words import Line
from wardwright.model.fabric import Space, Stair
from wardwright.model.fixture import Fixture, Outlet
from wardwright.model.record import Point2


class Box(NamedTuple):
    """The usual size of a piece of furniture: width along its wall, depth, height, underside, heat."""

    width: float
    depth: float
    height: float
    base: float = 0.0
    heat: str = "none"


USUAL_BOXES: MappingProxyType[str, Box] = MappingProxyType(
    {
        "radiator": Box(1.0, 0.1, 0.6, 0.12, "hot"), "stove": Box(0.5, 0.5, 0.9, 0.0, "hot"),
        "boiler": Box(0.45, 0.35, 0.75, 1.3, "warm"), "fire": Box(0.9, 0.3, 0.6, 0.0, "hot"),
        "heater": Box(0.6, 0.2, 0.5, 0.0, "hot"), "vent": Box(0.3, 0.05, 0.2, 2.1, "warm"),
        "bed": Box(1.4, 2.0, 0.55), "sofa": Box(2.0, 0.9, 0.8), "table": Box(1.4, 0.8, 0.75),
        "chair": Box(0.5, 0.5, 0.9), "cupboard": Box(1.0, 0.6, 2.0), "shelf": Box(0.8, 0.3, 1.8),
        "worktop": Box(2.0, 0.6, 0.9), "appliance": Box(0.6, 0.6, 0.85), "sanitary": Box(0.5, 0.5, 0.85),
        "curtain": Box(1.5, 0.1, 2.1, 0.1), "mirror": Box(0.6, 0.03, 1.4, 0.4),
        "screen": Box(1.0, 0.1, 0.6, 0.9), "other": Box(0.6, 0.6, 0.8),
    }
)  # fmt: skip
"""Where nothing is said. [m] (assumption)"""
OFF_WALL_M = 0.03
"""Between a wall and the back of what stands against it. [m] (assumption)"""
OUTLETS = MappingProxyType(
    {"socket": "power", "fused-spur": "fused-spur", "network-point": "network", "router": "router"}
)
_FIXTURE = Grammar(
    after=frozenset({"wide", "deep", "high"}),
    lengths=frozenset({"base"}),
    words=MappingProxyType({"heat": ("none", "warm", "hot")}),
    sizes=frozenset({2, 3}),
    takes_side=True,
    takes_ends=True,
)
_OUTLET = Grammar(after=frozenset({"", "high"}), takes_side=True, takes_ends=True)
_STAIRS = Grammar(
    after=frozenset({"wide"}),
    words=MappingProxyType({"balusters": ("open", "solid", "none")}),
    flags=frozenset({"enclosed"}),
    takes_ends=True,
)


def read_fixture(draft: Draft, line: Line) -> None:
    """Read `radiator hall east 1.2 x 0.1 x 0.6, 0.4 from south, base 0.15`."""
    kind = line.take("a kind of furniture").written
    room = find(line, draft.spaces, line.name("a room"), what="room")
    clauses = read_clauses(line, _FIXTURE)
    box, guessed = _box(kind, clauses)
    centre, turn, is_told = _stand(line, room, clauses, box=box)
    if not is_told:
        guessed.append("centre_m")
    identity = new_id(line, clauses, f"{room.id}-{kind}", taken=draft.everything())
    fields: dict[str, object] = {
        "id": identity,
        "name": clauses.words.get("named", words_of(identity)),
        "storey": room.storey,
        "kind": kind,
        "centre_m": (round(centre[0], 6), round(centre[1], 6)),
        "size_m": (box.width, box.depth),
        "turn_deg": round(turn, 3),
        "base_m": box.base,
        "height_m": box.height,
        "heat": box.heat,
    }
    told = [key for key in fields if key not in ("id", "name", "storey", "kind", "turn_deg", *guessed)]
    basis = marks(clauses, told, guessed=guessed)
    draft.fixtures.append(Fixture.model_validate(fields | ({"basis": basis} if basis else {})))


def _box(kind: str, clauses: Clauses) -> tuple[Box, list[str]]:
    usual, measures = USUAL_BOXES[kind], clauses.measures
    size = dict(zip(("wide", "deep", "high"), clauses.size, strict=False))
    twice = set(size) & set(measures)
    if twice:
        raise clauses.line.refuse(f"how {twice.pop()} it is, is given twice", "Keep the one that is right")
    size |= {key: measures[key] for key in ("wide", "deep", "high") if key in measures}
    guessed = [
        *(["size_m"] if not {"wide", "deep"} <= set(size) else []),
        *(["height_m"] if "high" not in size else []),
        *(["base_m"] if "base" not in measures else []),
        *(["heat"] if "heat" not in clauses.words else []),
    ]
    box = Box(
        size.get("wide", usual.width),
        size.get("deep", usual.depth),
        size.get("high", usual.height),
        measures.get("base", usual.base),
        clauses.words.get("heat", usual.heat),
    )
    return box, guessed


def _stand(line: Line, room: Space, clauses: Clauses, *, box: Box) -> tuple[Point2, float, bool]:
    """Its middle, its turn [deg], and whether the line told where it stands."""
    if clauses.side in SIDES:
        face = face_toward(line, room, clauses.side or "")
        place = distance_along(line, face, clauses, half=box.width / 2)
        x, y = face.point(face.length / 2 if place is None else place)
        off = box.depth / 2 + OFF_WALL_M
        run = math.degrees(math.atan2(face.end[1] - face.start[1], face.end[0] - face.start[0]))
        return (x - face.out[0] * off, y - face.out[1] * off), run % 180.0, place is not None
    if clauses.side is not None and "-" in clauses.side:
        (x, y), _ = floor_place(line, room, clauses, off=OFF_WALL_M)
        to = way(clauses.side)
        dx, dy = math.copysign(box.width / 2, to[0]), math.copysign(box.depth / 2, to[1])
        return (x - dx, y - dy), 0.0, True
    point, is_told = floor_place(line, room, clauses)
    return point, 0.0, is_told


def read_outlet(draft: Draft, line: Line) -> None:
    """Read `socket hall east, 0.3 from south, 0.45 m`, or `router living corner north-east`."""
    word = line.take("a kind of point").written
    room = find(line, draft.spaces, line.name("a room"), what="room")
    clauses = read_clauses(line, _OUTLET)
    point, is_told = floor_place(line, room, clauses)
    height = clauses.measures.get("", clauses.measures.get("high"))
    identity = new_id(line, clauses, f"{room.id}-{word}", taken=draft.everything())
    fields: dict[str, object] = {
        "id": identity,
        "name": clauses.words.get("named", words_of(identity)),
        "kind": OUTLETS[word],
        "storey": room.storey,
        "at_m": (round(point[0], 6), round(point[1], 6)),
    }
    if height is not None:
        fields["height_m"] = height
    guessed = [] if is_told else ["at_m"]
    told = [key for key in ("at_m", "height_m") if key in fields and key not in guessed]
    basis = marks(clauses, told, guessed=guessed)
    draft.outlets.append(Outlet.model_validate(fields | ({"basis": basis} if basis else {})))


def read_stairs(draft: Draft, line: Line) -> None:
    """Read `stairs hall to landing, 0.43 from west, 1.3 from south, runs north 2.8, 0.85 wide`."""
    line.take("stairs")
    if draft.base is not None:
        raise line.refuse("stairs cannot be added to an imported house", "Leave this line out")
    lower = find(line, draft.spaces, line.name("the room below"), what="room")
    line.maybe("to")
    upper = find(line, draft.spaces, line.name("the room above"), what="room")
    start = {}
    while line.at_quantity():
        value = line.number("a distance")
        word = line.maybe("from")
        if word is None:
            raise line.refuse("nothing says what that distance is", "Write '0.43 from west, 1.3 from south'")
        start[line.choice("a side", SIDES)] = value
    at = Clauses(line, ends=start)
    if len(start) != 2:
        raise line.refuse("nothing says where the lowest step is", "Write '0.43 from west, 1.3 from south'")
    (x, y), _ = floor_place(line, lower, at)
    points = [(x, y)]
    while line.maybe("runs", "then"):
        to, run = way(line.choice("a direction", SIDES)), line.number("how far")
        x, y = round(x + to[0] * run, 6), round(y + to[1] * run, 6)
        points.append((x, y))
    if len(points) < 2:
        raise line.refuse(
            "nothing says where the stairs lead", "Write 'runs north 2.8', and 'then east 1.0' for a turn"
        )
    clauses = read_clauses(line, _STAIRS)
    _refuse_astray(line, upper, points[-1])
    identity = new_id(line, clauses, "stairs", taken=draft.everything())
    fields: dict[str, object] = {
        "id": identity,
        "name": clauses.words.get("named", words_of(identity)),
        "lower": lower.storey,
        "upper": upper.storey,
        "line_m": tuple((round(px, 6), round(py, 6)) for px, py in points),
    }
    if "wide" in clauses.measures:
        fields["width_m"] = clauses.measures["wide"]
    if "balusters" in clauses.words:
        fields["balusters"] = clauses.words["balusters"]
    if "enclosed" in clauses.flags:
        fields["is_enclosed"] = True
    told = [key for key in fields if key not in ("id", "name", "lower", "upper")]
    basis = marks(clauses, told)
    draft.stairs.append(Stair.model_validate(fields | ({"basis": basis} if basis else {})))


def _refuse_astray(line: Line, upper: Space, top: Point2) -> None:
    if not shapely.Polygon(upper.outline_m).buffer(0.01).covers(shapely.Point(top)):
        raise line.refuse(
            f"the highest step, at {top[0]:.2f}, {top[1]:.2f} on the plan, is not in {upper.id}",
            "Correct the start or the run, or place the room above with 'above'",
        )
