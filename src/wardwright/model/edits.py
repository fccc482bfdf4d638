"""Edits by name: what somebody does to a site while drawing it, as data that can be sent, kept and undone."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Annotated, Any, Literal

from pydantic import Field, TypeAdapter, ValidationError

from wardwright.errors import DocumentError
from wardwright.model.changes import collections
from wardwright.model.complaint import complaints
from wardwright.model.device import Device, Mount
from wardwright.model.pass_edits import LetPass, let_pass
from wardwright.model.placement import direction
from wardwright.model.record import Basis, Id, Record
from wardwright.model.site import Site
from wardwright.model.walls_moved import with_wall_moved


class PutDevice(Record):
    """Put a new device in its place, or give one of that id a new record."""

    do: Literal["put-device"] = "put-device"
    device: Device


class MountDevice(Record):
    """Fix a device somewhere else."""

    do: Literal["mount-device"] = "mount-device"
    device: Id
    mount: Mount
    heading_deg: float | None = None
    """None: straight off its new wall, or as it was where it stands free."""


class TurnDevice(Record):
    """Turn a device on the spot."""

    do: Literal["turn-device"] = "turn-device"
    device: Id
    heading_deg: float
    tilt_deg: float | None = None


class Tell(Record):
    """Say facts of a record: of a list by its id, or of the one that there is only one of."""

    do: Literal["tell"] = "tell"
    of: str
    """The list, such as `openings`, or `place`, `ground`, `programme`, `needs`, `name`."""
    id: Id | None = None
    facts: dict[str, Any]
    basis: Basis = "told"


class Add(Record):
    """Put a new record into a list."""

    do: Literal["add"] = "add"
    to: str
    record: dict[str, Any]


class Remove(Record):
    """Take a record out of its list, with what cannot be without it."""

    do: Literal["remove"] = "remove"
    of: str
    id: Id


class MoveWall(Record):
    """Move a wall to its left, with everything that hangs on it."""

    do: Literal["move-wall"] = "move-wall"
    wall: Id
    by_m: Annotated[float, Field(ge=-20, le=20)]
    """To the left of the wall's line, looking along it. [m]"""


Operation = Annotated[
    PutDevice | MountDevice | TurnDevice | Tell | Add | Remove | MoveWall | LetPass, Field(discriminator="do")
]
OPERATION: TypeAdapter[Operation] = TypeAdapter(Operation)


class Edit(Record):
    """One edit by somebody, on top of a revision that they saw."""

    id: Annotated[str, Field(pattern=r"^[A-Za-z0-9_-]{8,64}$")]
    """Made by whoever sends it: sent again it changes nothing."""
    author: Annotated[str, Field(min_length=1, max_length=60)]
    """A role or a device's name, such as `tablet`."""
    base: Annotated[int, Field(ge=0)]
    """The revision that was seen."""
    operations: Annotated[tuple[Operation, ...], Field(min_length=1, max_length=200)]


def edited(site: Site, operations: tuple[Operation, ...]) -> Site:
    """A site after some operations, one after the other.

    Parameters
    ----------
    site : Site
        The site.
    operations : tuple of Operation
        What is done.

    Returns
    -------
    Site
        A new site that shares what did not change.

    Raises
    ------
    DocumentError
        If an operation names what is not there, or a value cannot be used.
    """
    for operation in operations:
        site = _DONE_BY[operation.do](site, operation)
    return site


def _mount_device(site: Site, operation: MountDevice) -> Site:
    device = _found(site, "devices", operation.device)
    facts: dict[str, Any] = {"mount": operation.mount, "heading_deg": operation.heading_deg}
    return _with(site, "devices", _told(device, facts, "told", where=f"devices, {device.id}"))


def _turn_device(site: Site, operation: TurnDevice) -> Site:
    device = _found(site, "devices", operation.device)
    facts: dict[str, Any] = {"heading_deg": operation.heading_deg % 360.0}
    if operation.tilt_deg is not None:
        facts["tilt_deg"] = operation.tilt_deg
    return _with(site, "devices", _told(device, facts, "told", where=f"devices, {device.id}"))


def _tell(site: Site, operation: Tell) -> Site:
    if operation.id is None:
        if operation.of == "name":
            return site.model_copy(update={"name": str(operation.facts.get("name", site.name))})
        if operation.of not in ("place", "ground", "programme", "needs"):
            raise _astray(operation.of, "no part of a site that there is only one of")
        record = getattr(site, operation.of)
        told = _told(record, operation.facts, operation.basis, where=operation.of)
        return site.model_copy(update={operation.of: told})
    record = _found(site, operation.of, operation.id)
    where = f"{operation.of}, {operation.id}"
    return _with(site, operation.of, _told(record, operation.facts, operation.basis, where=where))


def _add(site: Site, operation: Add) -> Site:
    kind = _kind_of(operation.to)
    record = _checked(kind, operation.record, where=operation.to)
    if any(one.id == record.id for one in getattr(site, operation.to)):
        raise DocumentError(
            f"there is already '{record.id}'", where=operation.to, cure="Give it an id of its own"
        )
    return _with(site, operation.to, record)


def _remove(site: Site, operation: Remove) -> Site:
    _found(site, operation.of, operation.id)
    kept = tuple(one for one in getattr(site, operation.of) if one.id != operation.id)
    update: dict[str, Any] = {operation.of: kept}
    if operation.of == "devices":
        zones = (
            zone.model_copy(update={"devices": tuple(d for d in zone.devices if d != operation.id)})
            for zone in site.zones
        )
        update["zones"] = tuple(zone for zone in zones if zone.devices)
        update["readings"] = tuple(r for r in site.readings if operation.id not in (r.device, r.receiver))
    if operation.of == "openings":
        gone = {d.id for d in site.devices if getattr(d.mount, "opening", None) == operation.id}
        for device in sorted(gone):
            site = _remove(site, Remove(of="devices", id=device))
    return site.model_copy(update=update)


def _move_wall(site: Site, operation: MoveWall) -> Site:
    wall = _found(site, "walls", operation.wall)
    if not math.isfinite(operation.by_m) or direction(wall.line_m)[2] == 0.0:
        raise DocumentError("the wall cannot be moved", where=f"walls, {wall.id}", cure="Give a length")
    return with_wall_moved(site, wall, by_m=operation.by_m)


_DONE_BY: Mapping[str, Callable[[Site, Any], Site]] = {
    "put-device": lambda site, operation: _with(site, "devices", operation.device),
    "mount-device": _mount_device,
    "turn-device": _turn_device,
    "tell": _tell,
    "add": _add,
    "remove": _remove,
    "move-wall": _move_wall,
    "let-pass": let_pass,
}


def _with(site: Site, name: str, record: Any) -> Site:  # noqa: ANN401 - any record of that list
    records = getattr(site, name)
    if any(one.id == record.id for one in records):
        kept = tuple(record if one.id == record.id else one for one in records)
    else:
        kept = (*records, record)
    return site.model_copy(update={name: kept})


def _found(site: Site, name: str, ident: str) -> Any:  # noqa: ANN401 - any record of that list
    _kind_of(name)
    for one in getattr(site, name):
        if one.id == ident:
            return one
    raise DocumentError(
        f"there is no '{ident}' any more", where=name, cure="Look at the house as it is now, and do it again"
    )


def _kind_of(name: str) -> type[Record]:
    if name not in collections():
        raise _astray(name, "no list of a site")
    kind: type[Record] = Site.model_fields[name].annotation.__args__[0]  # type: ignore[union-attr]
    return kind


def _astray(name: str, what: str) -> DocumentError:
    return DocumentError(f"'{name}' is {what}", where="edit", cure="Name one of the published schema")


def _told(record: Any, facts: Mapping[str, Any], basis: Basis, *, where: str) -> Any:  # noqa: ANN401 - any record
    """A record with some facts said anew, and how they are known."""
    kind = type(record)
    kept = {key: getattr(record, key) for key in record.model_fields_set if key != "basis"}
    known = {key: how for key, how in getattr(record, "basis", ()) if key not in facts}
    if basis != "told":
        known |= dict.fromkeys(facts, basis)
    marks = {"basis": tuple(sorted(known.items()))} if "basis" in kind.model_fields and known else {}
    return _checked(kind, {**kept, **facts, **marks}, where=where)


def _checked(kind: type[Record], data: Mapping[str, Any], *, where: str) -> Any:  # noqa: ANN401 - any record
    try:
        return kind.model_validate(dict(data))
    except ValidationError as fault:
        first = complaints(fault, raw=dict(data), root=kind)[0]
        raise DocumentError(first.what, where=f"{where}, {first.where}", cure=first.cure) from None
