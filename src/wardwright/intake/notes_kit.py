"""Devices: on a wall, in a corner, on the ceiling, on a door or window, outside, or standing free."""

from __future__ import annotations

import math
from types import MappingProxyType
from typing import NamedTuple, cast

from wardwright.intake.notes_clauses import CORNERS, SIDES, Clauses, Grammar, read_clauses
from wardwright.intake.notes_draft import Draft
from wardwright.intake.notes_marks import marks
from wardwright.intake.notes_names import find, new_id
from wardwright.intake.notes_sides import (
    CORNER_M,
    Face,
    corner_of,
    distance_along,
    face_toward,
    floor_place,
    opening_in_the_way,
    wall_behind,
    way,
)
from wardwright.intake.notes_words import Line, nearest
from wardwright.model.catalogue import DeviceSheet
from wardwright.model.device import CeilingMount, Device, FreeMount, Mount, OpeningMount, WallMount
from wardwright.model.fabric import Space
from wardwright.model.opening import Opening

KINDS = MappingProxyType(
    {
        "control-unit": "control-unit", "keypad": "keypad", "keyfob": "keyfob", "sounder": "sounder",
        "movement-detector": "movement-detector", "contact": "opening-contact", "opening-contact": "opening-contact",
    }
)  # fmt: skip
SHORT_NAMES = MappingProxyType({"movement-detector": "movement", "opening-contact": "contact"})
"""What a device is called at the end of its name and its id."""
USUAL_HEIGHT_M = MappingProxyType(
    {"control-unit": 1.5, "keypad": 1.4, "keyfob": 1.0, "sounder": 2.2, "movement-detector": 2.2}
)
"""Where nothing is said. [m] (assumption)"""
OUTSIDE_HEIGHT_M = 3.0
"""The same for what hangs outside. [m] (assumption)"""
STEP_M = 0.05
"""How far at a time a free place is looked for beside a door or window. [m]"""


class Place(NamedTuple):
    """How a device is mounted, where it looks if not straight off its wall, and whether the place was told."""

    mount: Mount
    heading_deg: float | None
    is_told: bool


def _grammar(draft: Draft) -> Grammar:
    return Grammar(
        after=frozenset({"", "high"}),
        lengths=frozenset({"gap"}),
        quantities=MappingProxyType({"heading": ("deg",), "tilt": ("deg",)}),
        words=MappingProxyType(
            {"sheet": None, "looking": (*SIDES, *CORNERS), "electronics": ("frame", "leaf")}
        ),
        lists=frozenset({"parts"}),
        flags=frozenset({"existing", "ceiling", "free", "outside", *(b.id for b in draft.behaviours)}),
        takes_side=True,
        takes_ends=True,
    )


def read_device(draft: Draft, line: Line) -> None:
    """Read `movement-detector hall corner north-west 2.2 m`, `contact front-door gap 12 mm`, `keypad hall east`.

    Parameters
    ----------
    draft : Draft
        The site so far; gains a device.
    line : Line
        The line.
    """
    kind = KINDS[line.take("a kind of device").written]
    guessed: list[str] = []
    if kind == "opening-contact":
        opening = find(line, draft.openings, line.name("a door or window"), what="door or window")
        clauses = read_clauses(line, _grammar(draft))
        place, stem, name = _on_opening(draft, opening, clauses)
    else:
        room = find(line, draft.spaces, line.name("a room"), what="room")
        clauses = read_clauses(line, _grammar(draft))
        if "gap" in clauses.measures or "electronics" in clauses.words:
            raise line.refuse("a gap and the side of the electronics belong to a contact", "Take them away")
        place = _in_room(draft, room, clauses, kind=kind)
        stem = f"{room.id}-{SHORT_NAMES.get(kind, kind)}"
        name = device_name(draft, room, kind=kind)
    sheet = _sheet(draft, clauses, kind=kind)
    guessed += [] if "sheet" in clauses.words else ["sheet"]
    guessed += [] if place.is_told else ["mount"]
    identity = new_id(line, clauses, stem, taken=draft.devices)
    taken = {device.name for device in draft.devices}
    number = next(n for n in range(1, len(taken) + 2) if (name if n == 1 else f"{name} {n}") not in taken)
    fields: dict[str, object] = {
        "id": identity,
        "name": clauses.words.get("named", name if number == 1 else f"{name} {number}"),
        "sheet": sheet.id,
        "mount": place.mount,
    }
    heading, is_heading_told = _heading(line, clauses, place)
    if heading is not None:
        fields["heading_deg"] = round(heading, 3)
        guessed += [] if is_heading_told else ["heading_deg"]
    if "tilt" in clauses.measures:
        fields["tilt_deg"] = clauses.measures["tilt"]
    if "existing" in clauses.flags:
        fields["is_existing"] = True
    told = [key for key in fields if key not in ("id", "name", *guessed)]
    basis = marks(clauses, told, guessed=guessed)
    draft.devices.append(Device.model_validate(fields | ({"basis": basis} if basis else {})))
    _keep_behaviour(draft, clauses, identity)


def device_name(draft: Draft, room: Space, *, kind: str) -> str:
    """Floor, room, what: as it is programmed, printed and spoken."""
    storey = next(storey for storey in draft.storeys if storey.id == room.storey)
    floor = storey.name.removesuffix(" floor")
    what = SHORT_NAMES.get(kind, kind).replace("-", " ")
    room_name = room.name if room.name[1:2].isupper() else room.name[:1].lower() + room.name[1:]
    return f"{floor} {room_name} {what}"


def _keep_behaviour(draft: Draft, clauses: Clauses, identity: str) -> None:
    said = clauses.flags & {behaviour.id for behaviour in draft.behaviours}
    if len(said) > 1:
        raise clauses.line.refuse("two behaviours are given", f"Keep one of {', '.join(sorted(said))}")
    if said:
        draft.told_behaviours[identity] = said.pop()
    if "parts" in clauses.lists:
        parts = [find(clauses.line, draft.parts, part, what="part").id for part in clauses.lists["parts"]]
        draft.told_parts[identity] = tuple(parts)


def _sheet(draft: Draft, clauses: Clauses, *, kind: str) -> DeviceSheet:
    rows = [row for row in draft.catalogue.sheets if row.kind == kind]
    line, written = clauses.line, clauses.words.get("sheet")
    if written is not None:
        for row in rows:
            if row.id == written:
                return row
        raise line.refuse(f"there is no {kind} sheet '{written}'", nearest(written, [row.id for row in rows]))
    is_outside = "outside" in clauses.flags
    fitting = [row for row in rows if row.sounder is None or row.sounder.is_outside == is_outside] or rows
    if not fitting:
        raise line.refuse(
            f"the catalogue has no {kind}", "Add a sheet file for one, and name it with 'sheet'"
        )
    return fitting[0]


def _on_opening(draft: Draft, opening: Opening, clauses: Clauses) -> tuple[Place, str, str]:
    astray = (
        clauses.side or clauses.ends or set(clauses.measures) - {"gap"} or clauses.flags & {"ceiling", "free"}
    )
    if astray:
        raise clauses.line.refuse(
            "a contact sits on its door or window, so it needs no place",
            "Take the place away; say 'gap 12 mm' if known",
        )
    fields: dict[str, object] = {"opening": opening.id}
    if "electronics" in clauses.words:
        fields["electronics_on"] = clauses.words["electronics"]
    if "gap" in clauses.measures:
        fields["gap_m"] = clauses.measures["gap"]
    wall = next(wall for wall in draft.walls if wall.id == opening.wall)
    storey = next(storey for storey in draft.storeys if storey.id == wall.storey)
    name = f"{storey.name.removesuffix(' floor')} {opening.name[:1].lower() + opening.name[1:]} contact"
    return Place(OpeningMount.model_validate(fields), None, is_told=True), f"{opening.id}-contact", name


def _in_room(draft: Draft, room: Space, clauses: Clauses, *, kind: str) -> Place:
    line = clauses.line
    height = clauses.measures.get("", clauses.measures.get("high"))
    is_outside = "outside" in clauses.flags
    usual = OUTSIDE_HEIGHT_M if is_outside else USUAL_HEIGHT_M[kind]
    tall = usual if height is None else height
    if "ceiling" in clauses.flags:
        point, is_told = floor_place(line, room, clauses)
        return Place(CeilingMount(storey=room.storey, at_m=point), None, is_told)
    if "free" in clauses.flags or kind == "keyfob":
        point, is_told = floor_place(line, room, clauses)
        return Place(
            FreeMount(storey=room.storey, at_m=point, height_m=tall), None, is_told and height is not None
        )
    if clauses.side is None or clauses.side == "middle":
        raise line.refuse(
            f"nothing says where in {room.id} the {kind} is",
            "Add a side, such as 'south 1.4 m'; a corner, such as 'corner north-west 2.2 m'; 'ceiling', or 'free'",
        )
    if clauses.side in CORNERS:
        if clauses.ends or is_outside:
            raise line.refuse(
                "a corner needs nothing else to say where it is", "Take the distance or 'outside' away"
            )
        return _in_corner(draft, room, clauses, height=tall)
    face = face_toward(line, room, clauses.side)
    place = distance_along(line, face, clauses)
    mount = _on_face(draft, clauses, (room, face), distance=place, height=tall)
    return Place(mount, None, is_told=place is not None and height is not None)


def _on_face(
    draft: Draft, clauses: Clauses, where: tuple[Space, Face], *, distance: float | None, height: float
) -> WallMount:
    """On the wall behind a face; if no distance is told, as near the middle as no door or window is."""
    room, face = where
    reach = int(face.length / 2 / STEP_M) if distance is None else 0
    middle = face.length / 2 if distance is None else distance
    blocked = None
    for place in (middle + sign * step * STEP_M for step in range(reach + 1) for sign in (1, -1)):
        behind = wall_behind(draft, room.storey, face.point(place), out=face.out)
        if behind is None:
            continue
        wall, offset, side = behind
        blocked = opening_in_the_way(draft, wall.id, offset, height=height)
        if blocked is None:
            is_left = (side > 0) != ("outside" in clauses.flags)
            return WallMount(
                wall=wall.id, side="left" if is_left else "right", offset_m=round(offset, 6), height_m=height
            )
    if blocked is not None:
        raise clauses.line.refuse(f"it would hang in {blocked}", "Give another distance, height or side")
    raise clauses.line.refuse(
        f"there is no wall on that side of {room.id} to fix it to", "Name another side, or say 'free'"
    )


def _in_corner(draft: Draft, room: Space, clauses: Clauses, *, height: float) -> Place:
    corner = cast("str", clauses.side)
    face, is_start = corner_of(room, corner)
    place = min(CORNER_M, face.length / 2)
    distance = place if is_start else face.length - place
    mount = _on_face(draft, clauses, (room, face), distance=distance, height=height)
    to = way(corner)
    heading = math.degrees(math.atan2(-to[1], -to[0]))
    return Place(mount, heading, is_told=bool({"", "high"} & set(clauses.measures)))


def _heading(line: Line, clauses: Clauses, place: Place) -> tuple[float | None, bool]:
    if "heading" in clauses.measures:
        if "looking" in clauses.words:
            raise line.refuse("where it looks is given twice", "Keep the one that is right")
        return clauses.measures["heading"], True
    if "looking" in clauses.words:
        to = way(clauses.words["looking"])
        return math.degrees(math.atan2(to[1], to[0])), True
    return place.heading_deg, False
