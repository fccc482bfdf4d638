"""Radio levels read on site: a line for each."""

from __future__ import annotations

import shapely

from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.names import find
from wardwright.intake.notes.words import Line
from wardwright.model.device import Device
from wardwright.model.reading import Reading
from wardwright.model.record import Point3

HELD_M = 1.0
"""How high a device is held that is carried about for a reading. [m] (assumption)"""
HEARERS = ("control-unit", "repeater", "router")
"""Kinds that show the level of what they hear."""


def read_reading(draft: Draft, line: Line) -> None:
    """Read `reading hall-contact -71 dBm`, with `by first-repeater`, or `held kitchen` for one carried there.

    Parameters
    ----------
    draft : Draft
        The site so far; gains a reading.
    line : Line
        The line.
    """
    line.take("reading")
    device = find(line, draft.devices, line.name("the device that was heard"), what="device")
    level = line.number("the level, such as -71 dBm", ("dBm",))
    receiver = _hearer(draft, line, device)
    held = None
    if line.maybe("held"):
        room = find(line, draft.spaces, line.name("the room where it was held"), what="room")
        at = shapely.Polygon(room.outline_m).representative_point()
        floor = next(storey.elevation_m for storey in draft.storeys if storey.id == room.storey)
        held = (float(at.x), float(at.y), floor + HELD_M)
    line.end()
    draft.readings.append(_checked(line, draft, device, level=level, receiver=receiver, held=held))


def _hearer(draft: Draft, line: Line, device: Device) -> Device:
    """What heard it: as the line says, else the control unit, or for a camera the router."""
    if line.maybe("by"):
        return find(line, draft.devices, line.name("the device that heard it"), what="device")
    kinds = {row.id: row.kind for row in draft.catalogue.sheets}
    wanted = "router" if kinds.get(device.sheet) == "camera" else "control-unit"
    found = [one for one in draft.devices if kinds.get(one.sheet) == wanted]
    if len(found) != 1:
        raise line.refuse("it is not clear what heard it", "Add by and the device that heard it")
    return found[0]


def _checked(
    line: Line, draft: Draft, device: Device, *, level: float, receiver: Device, held: Point3 | None
) -> Reading:
    kinds = {row.id: row.kind for row in draft.catalogue.sheets}
    if kinds.get(receiver.sheet) not in HEARERS or receiver.id == device.id:
        raise line.refuse(
            f"'{receiver.id}' hears no other device", "Name a control unit, a repeater or a router after by"
        )
    if not -140.0 <= level <= 20.0:
        raise line.refuse(f"no receiver shows a level of {level:g} dBm", "Write it as shown, such as -71 dBm")
    taken = {one.id for one in draft.everything()}
    number = next(n for n in range(1, len(taken) + 2) if f"reading-{n}" not in taken)
    fields: dict[str, object] = {
        "id": f"reading-{number}", "device": device.id, "receiver": receiver.id, "level_dbm": level,
        "basis": {"level_dbm": "measured"},
    }  # fmt: skip
    return Reading.model_validate(fields | ({"held_at_m": held} if held is not None else {}))
