"""Mends turned into edits: what one tap on a mend does to the site."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, get_args

from pydantic import TypeAdapter

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import USUAL_MOUNTS, Device, Fixing, FreeMount, Mount
from wardwright.model.edits import Add, MountDevice, Operation, PutDevice, Remove, Tell, TurnDevice
from wardwright.model.programme import STANDARD_BEHAVIOURS, SetState, Zone
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import way_in_spot
from wardwright.rules.finding import Mend
from wardwright.rules.mending_parts import Operations, into_part, otherwise_part_set, out_of_part

MOUNT: TypeAdapter[Mount] = TypeAdapter(Mount)
UNIT_HEIGHT_M = 1.4
"""At which a device goes beside a power point. [m] (common practice)"""
BETTER_LOCK, BETTER_GLAZING = "rc2", "laminated"
"""Rows of the catalogue that a better lock and a better pane are held against."""

OF_THE_DEVICE = frozenset(Device.model_fields) - {"mount", "id", "basis"}
"""What a mend names of a device itself; all else is of its mount."""
OF_THE_FIXING = frozenset(Fixing.model_fields) - {"basis"}


def operations_of(site: Site, catalogue: Catalogue, mend: Mend) -> Operations | None:
    """The edit that carries a mend out.

    Parameters
    ----------
    site : Site
        The site that the mend was worked out for.
    catalogue : Catalogue
        What a device that is added is.
    mend : Mend
        The mend.

    Returns
    -------
    tuple of Operation or None
        None where only a person can do it: a fact to be told, a lamp to be hung, a thing that is gone by now.
    """
    values = dict(mend.values)
    if mend.action == "add-device":
        return _added(site, catalogue, mend.subject, values=values)
    turn = _TURNED_BY.get(mend.action)
    return None if turn is None else turn(site, mend.subject, values)


def _device(site: Site, ident: str) -> Device | None:
    return next((one for one in site.devices if one.id == ident), None)


def _moved(site: Site, subject: str, values: dict[str, Any]) -> Operations | None:
    device = _device(site, subject)
    if device is None:
        return None
    if "near" in values:
        outlet = next((one for one in site.outlets if one.id == values["near"]), None)
        if outlet is None:
            return None
        beside = FreeMount(storey=outlet.storey, at_m=outlet.at_m, height_m=UNIT_HEIGHT_M)
        return (MountDevice(device=subject, mount=beside),)
    if values.keys() & OF_THE_FIXING:
        return None if device.fixing is None else _held(device, values)
    told = {name: values.pop(name) for name in sorted(OF_THE_DEVICE & values.keys())}
    heading = told.pop("heading_deg", device.heading_deg)
    found: list[Operation] = [Tell(of="devices", id=subject, facts=told)] if told else []
    if values or heading != device.heading_deg:
        mount = _mount(values, device.mount) if values else device.mount
        found.append(MountDevice(device=subject, mount=mount, heading_deg=heading))
    return tuple(found) or None


def _held(device: Device, values: dict[str, Any]) -> Operations:
    """Another way of holding a device; what it is held to stays."""
    kept = {} if device.fixing is None else device.fixing.model_dump(mode="json", exclude_unset=True)
    return (Tell(of="devices", id=device.id, facts={"fixing": {**kept, **values}}),)


def _mount(values: dict[str, Any], now: Mount | None) -> Mount:
    """The mount that values name; what they leave out stays as it is."""
    if {"x_m", "y_m"} <= values.keys():
        values["at_m"] = (values.pop("x_m"), values.pop("y_m"))
    kept = {} if now is None or values.get("on", now.on) != now.on else now.model_dump(exclude_unset=True)
    return MOUNT.validate_python({**kept, **({"on": now.on} if now is not None else {}), **values})


def _turned(site: Site, subject: str, values: dict[str, Any]) -> Operations | None:
    device = _device(site, subject)
    if device is None:
        return None
    return (
        TurnDevice(
            device=subject,
            heading_deg=values.get("heading_deg", device.heading_deg or 0.0),
            tilt_deg=values.get("tilt_deg"),
        ),
    )


def _added(site: Site, catalogue: Catalogue, subject: str, *, values: dict[str, Any]) -> Operations | None:
    """A device of a sheet, on an opening, in a space or in somebody's pocket; detectors in a zone of their own."""
    if "sheet" not in values:
        return None
    kind = catalogue.sheet(values["sheet"]).kind
    sheet, behaviour = values.pop("sheet"), values.pop("behaviour", None)
    heading, name = values.pop("heading_deg", None), values.pop("name", None)
    opening = next((one for one in site.openings if one.id == subject), None)
    if not values and opening is not None:
        values = {"on": "opening", "opening": subject}
        if "opening" not in USUAL_MOUNTS[kind]:  # what is carried comes in there
            spot = way_in_spot(site, opening)
            values = {"on": "free", "storey": spot.storey, "at_m": (spot.x, spot.y)}
    if "on" not in values:
        return None
    taken = {one.id for one in site.devices} | {one.id for one in site.zones}
    ident = next(
        f"{subject[:60]}-added-{n}" for n in range(1, 1000) if f"{subject[:60]}-added-{n}" not in taken
    )
    called = name or _called(site, subject)
    device = Device.model_validate(
        {"id": ident, "name": called, "sheet": sheet, "mount": _mount(values, None), "heading_deg": heading}
    )
    found: list[Operation] = [PutDevice(device=device)]
    if behaviour is not None:
        found += _zoned(site, device, behaviour=str(behaviour))
    return tuple(found)


def _called(site: Site, subject: str) -> str:
    names = {one.id: one.name for one in site.spaces} | {one.id: one.name for one in site.openings}
    return names.get(subject, subject)


def _zoned(site: Site, device: Device, *, behaviour: str) -> list[Operation]:

    found: list[Operation] = []
    if not any(one.id == behaviour for one in site.behaviours):
        usual = next(one for one in STANDARD_BEHAVIOURS if one.id == behaviour)
        found.append(Add(to="behaviours", record=usual.model_dump(mode="json", exclude_unset=True)))
    number = max((zone.number for zone in site.zones), default=0) + 1
    zone = Zone(
        id=f"zone-{device.id}"[:80],
        number=number,
        name=device.name,
        devices=(device.id,),
        behaviour=behaviour,
    )
    return [*found, Add(to="zones", record=zone.model_dump(mode="json", exclude_unset=True))]


def _behaves(site: Site, subject: str, values: dict[str, Any]) -> Operations | None:
    zone = next((one for one in site.zones if subject in (one.id, *one.devices)), None)
    if zone is None or not any(one.id == values.get("behaviour") for one in site.behaviours):
        return None
    return (Tell(of="zones", id=zone.id, facts={"behaviour": values["behaviour"]}),)


def _programmed(site: Site, _: str, values: dict[str, Any]) -> Operations | None:
    if "signal" in values:
        values = {"responses": _responses(site, values)}
    if "told" in values:
        values["told"] = (values["told"],)
    known = type(site.programme).model_fields
    return (Tell(of="programme", facts=values),) if values and values.keys() <= known.keys() else None


def _responses(site: Site, values: dict[str, Any]) -> list[dict[str, Any]]:
    """The programme's responses with one put in, in one state or in all."""
    states = get_args(SetState) if values.get("state") == "any" else (values.get("state"),)
    new = [{**values, "state": state} for state in states]
    named = {(one["signal"], one["state"]) for one in new}
    kept = [
        one.model_dump(mode="json", exclude_unset=True)
        for one in site.programme.responses
        if (one.signal, one.state) not in named
    ]
    return [*kept, *new]


def _renamed(site: Site, subject: str, values: dict[str, Any]) -> Operations | None:
    for name in ("zones", "devices"):
        if any(one.id == subject for one in getattr(site, name)) and "name" in values:
            return (Tell(of=name, id=subject, facts={"name": values["name"]}),)
    return None


def _better_lock(site: Site, subject: str, values: dict[str, Any]) -> Operations | None:
    if not any(one.id == subject for one in site.openings):
        return None
    is_glazing = values.get("what") == "glazing"
    facts = {"glazing": BETTER_GLAZING} if is_glazing else {"lock": BETTER_LOCK}
    return (Tell(of="openings", id=subject, facts=facts),)


def _covered(site: Site, subject: str, values: dict[str, Any]) -> Operations | None:
    if not any(one.id == subject for one in site.openings) or "covering" not in values:
        return None
    return (Tell(of="openings", id=subject, facts={"covering": values["covering"]}),)


def _left_open(site: Site, subject: str, _: dict[str, Any]) -> Operations | None:
    if not any(one.id == subject for one in site.openings):
        return None
    return (Tell(of="openings", id=subject, facts={"habit_night": "open"}),)


def _removed(site: Site, subject: str, _: dict[str, Any]) -> Operations | None:
    return None if _device(site, subject) is None else (Remove(of="devices", id=subject),)


_TURNED_BY: Mapping[str, Callable[[Site, str, dict[str, Any]], Operations | None]] = {
    "move-device": _moved,
    "change-mount": _moved,
    "change-device": _moved,
    "replace-device": _moved,
    "turn-device": _turned,
    "remove-device": _removed,
    "change-behaviour": _behaves,
    "change-programme": _programmed,
    "rename": _renamed,
    "change-lock": _better_lock,
    "change-covering": _covered,
    "leave-open": _left_open,
    "change-parts": out_of_part,
    "add-to-part": into_part,
    "behave-part-set": otherwise_part_set,
}
