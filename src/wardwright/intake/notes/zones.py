"""Zones, behaviours, parts and times; and zones of their own for devices of which no line says one."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from wardwright.intake.notes.clauses import Clauses, Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.marks import changed
from wardwright.intake.notes.names import find, new_id, words_of
from wardwright.intake.notes.words import Line
from wardwright.model.programme import Behaviour, Part, Zone

ZONED: Mapping[str, str] = MappingProxyType(
    {
        **dict.fromkeys(
            ("movement-detector", "opening-contact", "shock-detector", "glass-break-detector"), "instant"
        ),
        **dict.fromkeys(("smoke-alarm", "heat-alarm", "co-alarm"), "fire"),
        "water-detector": "water",
        "hold-up-button": "hold-up",
    }
)
"""Kinds of device that report to a zone, and the behaviour of one of which nothing is said."""
_BEHAVIOUR_FLAGS = MappingProxyType(
    {
        "starts-entry": ("starts_entry", True),
        "allowed-after-entry": ("allowed_after_entry", True),
        "silent": ("alarms", False),
        "always-active": ("is_always_active", True),
        "delays-message": ("delays_message", True),
    }
)


def read_zone(draft: Draft, line: Line) -> None:
    """Read `zone 1 "Ground hall movement" hall-movement entry-route parts full night`."""
    line.take("zone")
    number = line.number("the zone's number", ())
    if number != int(number) or number < 1:
        raise line.refuse(f"{number:g} is no zone number", "Number zones 1, 2, 3 and so on")
    token = line.peek()
    name = line.take("a name").written if token is not None and token.kind == "text" else None
    behaviours = [behaviour.id for behaviour in draft.behaviours]
    grammar = Grammar(
        flags=frozenset(behaviours),
        lists=frozenset({"parts"}),
        words=MappingProxyType({"part-set": tuple(behaviours)}),
        takes_names=True,
    )
    clauses = read_clauses(line, grammar)
    devices = [find(line, draft.devices, written, what="device") for written in clauses.names]
    if not devices:
        raise line.refuse("the zone has no device", "Name at least one, by its id")
    for zone in draft.zones:
        if zone.number == int(number):
            raise line.refuse(f"there is a zone {zone.number} already", "Give this one another number")
        twice = {device.id for device in devices} & set(zone.devices)
        if twice:
            raise line.refuse(f"{twice.pop()} is in zone {zone.number} already", "Name it in one zone only")
    draft.zones.append(
        _zone(draft, clauses, int(number), name=name, devices=[device.id for device in devices])
    )


def _zone(draft: Draft, clauses: Clauses, number: int, *, name: str | None, devices: list[str]) -> Zone:
    said = clauses.flags & {behaviour.id for behaviour in draft.behaviours}
    if len(said) > 1:
        raise clauses.line.refuse("two behaviours are given", f"Keep one of {', '.join(sorted(said))}")
    told = said.pop() if said else draft.told_behaviours.get(devices[0])
    parts = clauses.lists.get("parts")
    ids = tuple(find(clauses.line, draft.parts, part, what="part").id for part in parts) if parts else None
    first = next(device for device in draft.devices if device.id == devices[0])
    return _zone_record(
        (number, name or first.name),
        tuple(devices),
        behaviour=told,
        part_set=clauses.words.get("part-set"),
        parts=ids or draft.told_parts.get(devices[0]),
        guessed=["name"] if name is None else [],
        usual=_usual(draft, first.sheet),
    )


def _zone_record(
    called: tuple[int, str], devices: tuple[str, ...], *, behaviour: str | None, parts: tuple[str, ...] | None,
    guessed: list[str], usual: str, part_set: str | None = None,
) -> Zone:  # fmt: skip
    fields: dict[str, object] = {
        "id": f"zone-{called[0]}",
        "number": called[0],
        "name": called[1],
        "devices": devices,
        "behaviour": behaviour or usual,
    }
    if parts is not None:
        fields["parts"] = parts
    if part_set is not None:
        fields["behaviour_part_set"] = part_set
    known = [(field, "guessed") for field in guessed]
    known += [] if behaviour else [("behaviour", "guessed")]
    return Zone.model_validate(fields | ({"basis": tuple(sorted(known))} if known else {}))


def _usual(draft: Draft, sheet: str) -> str:
    kind = next((row.kind for row in draft.catalogue.sheets if row.id == sheet), "")
    return ZONED.get(kind, "instant")


def zone_the_rest(draft: Draft) -> None:
    """If no line states a zone, give each detector and contact one of its own; its behaviour is a guess."""
    kinds = {row.id: row.kind for row in draft.catalogue.sheets}
    zoned = {device for zone in draft.zones for device in zone.devices}
    number = max((zone.number for zone in draft.zones), default=0)
    for device in draft.devices:
        if kinds.get(device.sheet) in ZONED and device.id not in zoned:
            number += 1
            draft.zones.append(
                _zone_record(
                    (number, device.name),
                    (device.id,),
                    behaviour=draft.told_behaviours.get(device.id),
                    parts=draft.told_parts.get(device.id),
                    guessed=["devices", "name", "number"],
                    usual=_usual(draft, device.sheet),
                )
            )


def read_programme(draft: Draft, line: Line) -> None:
    """Read `programme entry 30 s, exit 45 s, abort 30 s, sounding 15 min`."""
    line.take("programme")
    keys = MappingProxyType(
        {
            "entry": "entry_time_s",
            "exit": "exit_time_s",
            "abort": "abort_delay_s",
            "check-in": "check_in_min",
            "sounding": "sounding_time_s",
        }
    )
    clauses = read_clauses(line, Grammar(quantities=MappingProxyType(dict.fromkeys(keys, ("s",)))))
    changes = {keys[word]: value for word, value in clauses.measures.items()}
    if "check_in_min" in changes:
        changes["check_in_min"] /= 60.0
    if not changes:
        raise line.refuse("no time is given", "Write 'programme entry 30 s, exit 45 s, abort 30 s'")
    draft.programme = changed(draft.programme, changes, clauses)


def read_part(draft: Draft, line: Line) -> None:
    """Read `part upstairs "upstairs set"`."""
    line.take("part")
    written = line.name("the part's id")
    token = line.peek()
    name = line.take("a name").written if token is not None and token.kind == "text" else words_of(written)
    clauses = read_clauses(line, Grammar())
    clauses.words.setdefault("as", written)
    draft.parts.append(Part(id=new_id(line, clauses, written, taken=draft.everything()), name=name))


def read_behaviour(draft: Draft, line: Line) -> None:
    """Read `behaviour quiet-entry "quiet entry" starts-entry allowed-after-entry delays-message`."""
    line.take("behaviour")
    written = line.name("the behaviour's id")
    token = line.peek()
    name = (
        line.take("a name").written
        if token is not None and token.kind == "text"
        else words_of(written).lower()
    )
    clauses = read_clauses(line, Grammar(flags=frozenset(_BEHAVIOUR_FLAGS)))
    clauses.words.setdefault("as", written)
    identity = new_id(line, clauses, written, taken=draft.everything())
    said = dict(_BEHAVIOUR_FLAGS[flag] for flag in sorted(clauses.flags & set(_BEHAVIOUR_FLAGS)))
    draft.behaviours.append(Behaviour.model_validate({"id": identity, "name": name, **said}))
