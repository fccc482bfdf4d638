"""How a device is mounted, from the place that a line of notes gives it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple, cast

from wardwright.intake.notes.clauses import CORNERS, Clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.faces import Face, corner_of, distance_along, face_toward, wall_behind, way
from wardwright.intake.notes.places import floor_place
from wardwright.model.device import (
    USUAL_MOUNTS,
    CeilingMount,
    DeviceKind,
    FreeMount,
    Mount,
    OpeningMount,
    WallMount,
)
from wardwright.model.fabric import Space
from wardwright.model.opening import Opening

USUAL_HEIGHT_M: Mapping[DeviceKind, float] = MappingProxyType(
    {
        "control-unit": 1.5, "keypad": 1.4, "keyfob": 1.0, "hold-up-button": 1.1, "movement-detector": 2.2,
        "opening-contact": 1.9, "shock-detector": 1.2, "glass-break-detector": 2.1, "water-detector": 0.0,
        "smoke-alarm": 2.2, "heat-alarm": 2.3, "co-alarm": 1.5, "sounder": 2.2, "camera": 2.2, "repeater": 1.8,
        "transmitter": 1.5, "router": 0.5,
    }
)  # fmt: skip
"""Where nothing is said. [m] (assumption)"""
OUTSIDE_HEIGHT_M = 3.0
"""The same for what hangs outside. [m] (assumption)"""
STEP_M = 0.05
"""How far at a time a free place is looked for beside a door or window. [m]"""
CORNER_M = 0.1
"""How far from a corner a device that is put there sits on its wall. [m] (assumption)"""
CLEAR_M = 0.08
"""How far a device keeps from the edge of a door or window beside it. [m] (assumption)"""


class Place(NamedTuple):
    """How a device is mounted, where it looks if not straight off its wall, and whether the place was told."""

    mount: Mount
    heading_deg: float | None
    is_told: bool


def opening_in_the_way(draft: Draft, wall: str, offset: float, *, height: float) -> str | None:
    """The opening, if any, that a device at a place of a wall would hang in."""
    for opening in draft.openings:
        across = opening.width_m / 2 + CLEAR_M
        is_beside = opening.wall != wall or abs(opening.offset_m - offset) >= across
        if not is_beside and opening.sill_m - CLEAR_M < height < opening.head_m + CLEAR_M:
            return opening.id
    return None


def on_opening(opening: Opening, clauses: Clauses) -> Place:
    """On a door or window; a contact needs no other place."""
    astray = (
        clauses.side
        or clauses.ends
        or set(clauses.measures) - {"gap", "painted", "surface-at"}
        or clauses.flags & {"ceiling", "free", "outside"}
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
    return Place(OpeningMount.model_validate(fields), None, is_told=True)


def in_room(draft: Draft, room: Space, clauses: Clauses, *, kind: DeviceKind) -> Place:
    """In, on or outside a room.

    Parameters
    ----------
    draft : Draft
        The site so far.
    room : Space
        The room.
    clauses : Clauses
        Where in it: a side, a corner, `ceiling`, `free`, `outside`, distances, a height.
    kind : DeviceKind
        The kind of device, for its usual height.

    Returns
    -------
    Place
    """
    line = clauses.line
    height = clauses.measures.get("", clauses.measures.get("high"))
    is_outside = "outside" in clauses.flags
    usual = OUTSIDE_HEIGHT_M if is_outside else USUAL_HEIGHT_M[kind]
    tall = usual if height is None else height
    if "ceiling" in clauses.flags:
        point, is_told = floor_place(line, room, clauses)
        return Place(CeilingMount(storey=room.storey, at_m=point), None, is_told)
    if "free" in clauses.flags or USUAL_MOUNTS[kind][0] == "free":
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
    face = face_toward(line, room, clauses.side, draft=draft)
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
