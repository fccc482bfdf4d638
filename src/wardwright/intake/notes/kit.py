"""Devices: on a wall, in a corner, on the ceiling, on a door or window, outside, or standing free."""

from __future__ import annotations

import math
from types import MappingProxyType

from wardwright.intake.notes.clauses import CORNERS, SIDES, Clauses, Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.faces import way
from wardwright.intake.notes.marks import marks
from wardwright.intake.notes.mounts import Place, in_room, on_opening
from wardwright.intake.notes.names import BRACKETED, find, new_id
from wardwright.intake.notes.words import Line, nearest
from wardwright.model.catalogue import DeviceSheet
from wardwright.model.device import Device
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
        place = on_opening(opening, clauses)
        stem, name = f"{opening.id}-contact", contact_name(draft, opening)
    else:
        room = find(line, draft.spaces, line.name("a room"), what="room")
        clauses = read_clauses(line, _grammar(draft))
        if "gap" in clauses.measures or "electronics" in clauses.words:
            raise line.refuse("a gap and the side of the electronics belong to a contact", "Take them away")
        place = in_room(draft, room, clauses, kind=kind)
        stem = f"{room.id}-{SHORT_NAMES.get(kind, kind)}"
        name = device_name(draft, room, kind=kind)
    sheet = _sheet(draft, clauses, kind=kind)
    guessed += [] if "sheet" in clauses.words else ["sheet"]
    guessed += [] if place.is_told else ["mount"]
    identity = new_id(line, clauses, stem, taken=draft.everything())
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
    return (
        f"{_floor(draft, room.storey)} {_spoken(room.name)} {SHORT_NAMES.get(kind, kind).replace('-', ' ')}"
    )


def contact_name(draft: Draft, opening: Opening) -> str:
    """Floor, door or window, and that it is its contact."""
    wall = next(wall for wall in draft.walls if wall.id == opening.wall)
    return f"{_floor(draft, wall.storey)} {_spoken(opening.name)} contact"


def _floor(draft: Draft, storey_id: str) -> str:
    return next(storey for storey in draft.storeys if storey.id == storey_id).name.removesuffix(" floor")


def _spoken(name: str) -> str:
    """A name as it is spoken after another word: brackets off, no hyphens, small at the front."""
    words = " ".join(BRACKETED.sub("", name).replace("-", " ").split())
    return words if words[1:2].isupper() else words[:1].lower() + words[1:]


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


def _heading(line: Line, clauses: Clauses, place: Place) -> tuple[float | None, bool]:
    if "heading" in clauses.measures:
        if "looking" in clauses.words:
            raise line.refuse("where it looks is given twice", "Keep the one that is right")
        return clauses.measures["heading"], True
    if "looking" in clauses.words:
        to = way(clauses.words["looking"])
        return math.degrees(math.atan2(to[1], to[0])), True
    return place.heading_deg, False
