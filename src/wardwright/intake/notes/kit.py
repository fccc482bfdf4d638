"""Devices: on a wall, in a corner, on the ceiling, on a door or window, outside, or standing free."""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import get_args

from wardwright.intake.notes.clauses import CORNERS, SIDES, Clauses, Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.faces import way
from wardwright.intake.notes.marks import marks
from wardwright.intake.notes.mounts import Place, in_room, on_opening
from wardwright.intake.notes.names import BRACKETED, find, new_id
from wardwright.intake.notes.words import Line, nearest
from wardwright.model.device import USUAL_MOUNTS, Device, DeviceKind, Surface
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.fabric import Space
from wardwright.model.opening import Opening

KINDS: Mapping[str, DeviceKind] = MappingProxyType(
    {**{kind: kind for kind in get_args(DeviceKind) if kind != "router"}, "contact": "opening-contact"}
)
"""The word that a line begins with: the kind of device. A router is a point of the house, like a socket."""
SHORT_NAMES: Mapping[str, str] = MappingProxyType(
    {
        "movement-detector": "movement", "opening-contact": "contact", "shock-detector": "shock",
        "glass-break-detector": "glass-break", "water-detector": "water", "smoke-alarm": "smoke",
        "heat-alarm": "heat", "co-alarm": "carbon-monoxide", "hold-up-button": "hold-up",
    }
)  # fmt: skip
"""What a device is called at the end of its name and its id."""


def _grammar(draft: Draft) -> Grammar:
    return Grammar(
        after=frozenset({"", "high"}),
        lengths=frozenset({"gap"}),
        quantities=MappingProxyType(
            {"heading": ("deg",), "tilt": ("deg",), "painted": ("d",), "surface-at": ("C",)}
        ),
        words=MappingProxyType(
            {
                "sheet": None,
                "looking": (*SIDES, *CORNERS),
                "electronics": ("frame", "leaf"),
                "sensitivity": ("low", "usual", "high"),
                "fixed": ("screws", "adhesive"),
                "surface": get_args(Surface),
            }
        ),
        lists=frozenset({"parts"}),
        flags=frozenset(
            {"existing", "covered", "ceiling", "free", "outside", *(b.id for b in draft.behaviours)}
        ),
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
    if _is_on_opening(draft, line, kind=kind):
        opening = find(line, draft.openings, line.name("a door or window"), what="door or window")
        clauses = read_clauses(line, _grammar(draft))
        place = on_opening(opening, clauses)
        what = SHORT_NAMES.get(kind, kind)
        stem, name = f"{opening.id}-{what}", name_on_opening(draft, opening, kind=kind)
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
    fields |= _set_up(clauses)
    told = [key for key in fields if key not in ("id", "name", *guessed)]
    basis = marks(clauses, told, guessed=guessed)
    draft.devices.append(Device.model_validate(fields | ({"basis": basis} if basis else {})))
    _keep_behaviour(draft, clauses, identity)


def _set_up(clauses: Clauses) -> dict[str, object]:
    """How it is set and held, as far as the line tells."""
    fields: dict[str, object] = {}
    if "existing" in clauses.flags:
        fields["is_existing"] = True
    if "covered" in clauses.flags:
        fields["is_covered_when_home"] = True
    if "sensitivity" in clauses.words:
        fields["sensitivity"] = clauses.words["sensitivity"]
    told: dict[str, object] = {"surface": clauses.words.get("surface")}
    told |= {"paint_days": clauses.measures.get("painted"), "surface_c": clauses.measures.get("surface-at")}
    held = {key: value for key, value in told.items() if value is not None}
    if held and "fixed" not in clauses.words:
        raise clauses.line.refuse(
            "nothing says how it is held", "Add 'fixed screws' or 'fixed adhesive' before its surface"
        )
    if "fixed" in clauses.words:
        fields["fixing"] = {"by": clauses.words["fixed"], **held}
    return fields


def device_name(draft: Draft, room: Space, *, kind: str) -> str:
    """Floor, room, what: as it is programmed, printed and spoken."""
    return (
        f"{_floor(draft, room.storey)} {_spoken(room.name)} {SHORT_NAMES.get(kind, kind).replace('-', ' ')}"
    )


def name_on_opening(draft: Draft, opening: Opening, *, kind: str) -> str:
    """Floor, door or window, and what is on it."""
    wall = next(wall for wall in draft.walls if wall.id == opening.wall)
    return f"{_floor(draft, wall.storey)} {_spoken(opening.name)} {SHORT_NAMES.get(kind, kind)}"


def _is_on_opening(draft: Draft, line: Line, *, kind: DeviceKind) -> bool:
    """Whether a line puts its device on a door or window: only where its kind can be there."""
    mounts = USUAL_MOUNTS[kind]
    token = line.peek()
    is_named = token is not None and any(opening.id == token.written for opening in draft.openings)
    return mounts == ("opening",) or ("opening" in mounts and is_named)


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
    overhead = "ceiling" in clauses.flags
    fitting = [row for row in rows if row.is_outside == is_outside] or rows
    fitting = [
        row for row in fitting if ("ceiling" in (row.mounts or USUAL_MOUNTS[row.kind])) >= overhead
    ] or rows
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
