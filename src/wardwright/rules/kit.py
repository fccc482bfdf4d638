"""The devices that rules ask about, with their sheets and zones, always in the order of ids."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import TypeVar

from wardwright.errors import CatalogueError, NoneOfAKind
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, OpeningMount, kind_words
from wardwright.model.device_sheets import ContactSheet, ControlSheet, DeviceSheet, MovementSheet
from wardwright.model.opening import Opening
from wardwright.model.programme import Behaviour
from wardwright.model.site import Site

Table = TypeVar("Table", MovementSheet, ContactSheet)

FULL_SET = "full"
"""The part that is set when nobody is in; a site without a part of this id is asked about all its parts."""
NIGHT = "night"
"""The part that is set while the household sleeps."""


def sheets_in_use(site: Site, catalogue: Catalogue) -> tuple[tuple[Device, DeviceSheet], ...]:
    """All devices with their sheets, by id; empty if there is none."""
    return tuple(
        (device, catalogue.sheet(device.sheet)) for device in sorted(site.devices, key=lambda d: d.id)
    )


def devices_of(site: Site, catalogue: Catalogue, kind: DeviceKind) -> tuple[tuple[Device, DeviceSheet], ...]:
    """All devices of one kind with their sheets, by id; empty if there is none."""
    return _devices_of(site.devices, catalogue, kind)


@lru_cache(maxsize=256)
def _devices_of(
    devices: tuple[Device, ...], catalogue: Catalogue, kind: DeviceKind
) -> tuple[tuple[Device, DeviceSheet], ...]:
    pairs = ((device, catalogue.sheet(device.sheet)) for device in sorted(devices, key=lambda d: d.id))
    return tuple((device, sheet) for device, sheet in pairs if sheet.kind == kind)


def some_of(
    site: Site, catalogue: Catalogue, kind: DeviceKind, *, cure: str = ""
) -> tuple[tuple[Device, DeviceSheet], ...]:
    """All devices of one kind with their sheets, by id.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        The devices' sheets.
    kind : DeviceKind
        The kind.
    cure : str, default ""
        What to add where there is none; left out: the kind itself, where it is planned.

    Returns
    -------
    tuple of (Device, DeviceSheet)
        At least one.

    Raises
    ------
    NoneOfAKind
        If there is none: the papers gather the rules that were not run for that into one line.
    """
    found = devices_of(site, catalogue, kind)
    if not found:
        name = kind_words(kind)
        raise NoneOfAKind(f"no {name}", kind=kind, cure=cure or f"Add the {name} where it is planned")
    return found


def movement_detectors(site: Site, catalogue: Catalogue) -> tuple[tuple[Device, MovementSheet], ...]:
    """All movement detectors with what their sheets say; NoneOfAKind if there is none."""
    cure = "Add the movement detectors that are planned"
    found = some_of(site, catalogue, "movement-detector", cure=cure)
    return tuple((d, _table(sheet.movement, sheet, "movement")) for d, sheet in found)


def control_units(site: Site, catalogue: Catalogue) -> tuple[tuple[Device, ControlSheet | None], ...]:
    """All control units with what their sheets say; NoneOfAKind if there is none."""
    return tuple((d, sheet.control) for d, sheet in some_of(site, catalogue, "control-unit"))


def opening_contacts(
    site: Site, catalogue: Catalogue
) -> Iterator[tuple[Device, ContactSheet, OpeningMount, Opening]]:
    """All contacts that are on an opening, with what their sheets say; NoneOfAKind if there is none."""
    found = [
        (device, _table(sheet.contact, sheet, "contact"), device.mount, site.opening(device.mount.opening))
        for device, sheet in devices_of(site, catalogue, "opening-contact")
        if isinstance(device.mount, OpeningMount)
    ]
    if not found:
        raise NoneOfAKind(
            "no opening contact", kind="opening-contact", cure="Add the opening contacts that are planned"
        )
    yield from found


def contacts_elsewhere(site: Site, catalogue: Catalogue) -> tuple[Device, ...]:
    """Contacts that are on no opening, such as one on a cupboard: nothing is known of their leaf."""
    found = devices_of(site, catalogue, "opening-contact")
    return tuple(device for device, _ in found if not isinstance(device.mount, OpeningMount))


def _table(table: Table | None, sheet: DeviceSheet, name: str) -> Table:
    if table is None:
        raise CatalogueError(
            f"a {sheet.kind} without a table '{name}'",
            where=f"catalogue, sheet '{sheet.id}'",
            cure=f"Add [sheet.{name}] to it",
        )
    return table


def is_instant(behaviour: Behaviour) -> bool:
    """Whether a behaviour alarms of an intruder at once, always: no entry starts or excuses it."""
    is_of_intruders = behaviour.alarms and behaviour.signal == "intruder"
    return is_of_intruders and not behaviour.starts_entry and not behaviour.allowed_after_entry


def instant_devices(site: Site) -> frozenset[str]:
    """Ids of the devices that alarm at once when nobody is in."""
    all_parts = {part.id for part in site.parts}
    asked = {FULL_SET} if FULL_SET in all_parts else all_parts
    found: set[str] = set()
    for zone in site.zones:
        behaviour = site.behaviour(zone.behaviour)
        is_active = behaviour.is_always_active or bool(asked & set(zone.parts))
        if is_active and is_instant(behaviour):
            found.update(zone.devices)
    return frozenset(found)
