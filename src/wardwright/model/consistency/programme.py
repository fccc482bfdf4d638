"""Zones, parts and behaviours that contradict each other or the control unit."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.consistency.identity import places
from wardwright.model.consistency.problem import Place, Problem, Register
from wardwright.model.programme import Zone


def programme(book: Register) -> Iterator[Problem]:
    """Zones against each other and against the control unit, and the behaviours."""
    numbers: dict[int, str] = {}
    zone_of: dict[str, str] = {}
    for place, zone in zip(places(book.site, "zones"), book.site.zones, strict=True):
        before = numbers.setdefault(zone.number, zone.id)
        if before != zone.id:
            yield place.problem(
                f"the zone number {zone.number} is already that of '{before}'", "Give it a number of its own"
            )
        yield from _devices_once(place, zone, zone_of=zone_of)
        yield from _activity(book, place, zone)
    yield from _limits(book)
    yield from _without_zone(book, zone_of=zone_of)
    yield from _behaviours(book)


def _devices_once(place: Place, zone: Zone, *, zone_of: dict[str, str]) -> Iterator[Problem]:
    if not zone.devices:
        yield place.problem("the zone has no device", "Name its device in 'devices', or take the zone out")
    for device in zone.devices:
        before = zone_of.get(device)
        if before is None:
            zone_of[device] = zone.id
        elif before == zone.id:
            yield place.problem(f"the device '{device}' is named twice in it", "Name it once")
        else:
            yield place.problem(
                f"the device '{device}' is already in the zone '{before}'", "Leave it in one of the two"
            )


def _activity(book: Register, place: Place, zone: Zone) -> Iterator[Problem]:
    behaviour = next((b for b in book.site.behaviours if b.id == zone.behaviour), None)
    if behaviour is None:
        return
    if not zone.parts and not behaviour.is_always_active:
        yield place.problem(
            "the zone is active in no part", "Name the parts in which it is active in 'parts'"
        )
    if behaviour.starts_entry and book.site.programme.entry_time_s == 0.0:
        yield place.problem(
            "it starts the entry time, but the entry time is 0 s",
            "Give the programme an 'entry_time_s', or the zone another behaviour",
            weight="noted",
        )


def _limits(book: Register) -> Iterator[Problem]:
    for device in book.site.devices:
        sheet = book.sheet_of(device)
        if sheet is None or sheet.control is None:
            continue
        most = sheet.control.zones
        if len(book.site.zones) > most:
            yield Problem(
                f"there are {len(book.site.zones)} zones, but the control unit '{device.id}' has only {most}",
                "zones",
                "Take zones out, or choose a control unit with more",
            )
            return
        for place, zone in zip(places(book.site, "zones"), book.site.zones, strict=True):
            if zone.number > most:
                yield place.problem(
                    f"the zone number {zone.number} is beyond the control unit's last, {most}",
                    f"Give it a free number up to {most}",
                )


def _without_zone(book: Register, *, zone_of: dict[str, str]) -> Iterator[Problem]:
    if not book.site.zones:
        return
    for place, device in zip(places(book.site, "devices"), book.site.devices, strict=True):
        sheet = book.sheet_of(device)
        if (
            sheet is not None
            and sheet.kind in ("movement-detector", "opening-contact")
            and device.id not in zone_of
        ):
            yield place.problem(
                "it is in no zone, so the control unit does not know it", "Add it to a zone", weight="noted"
            )


def _behaviours(book: Register) -> Iterator[Problem]:
    for place, behaviour in zip(places(book.site, "behaviours"), book.site.behaviours, strict=True):
        if behaviour.starts_entry and not behaviour.alarms:
            yield place.problem(
                "it starts the entry time and yet never alarms", "Set 'alarms', or take 'starts_entry' out"
            )
        if behaviour.starts_entry and behaviour.is_always_active:
            yield place.problem(
                "it starts the entry time and yet is always active, also when unset",
                "Take one of the two out",
                weight="noted",
            )
