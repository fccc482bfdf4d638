"""How a household lives with the alarm, in words: its doors, keypads, parts, and what follows a signal."""

from __future__ import annotations

from wardwright.documents.content.discretion import discreet
from wardwright.documents.content.quantities import joined
from wardwright.documents.content.schedule import room_name, sheet_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind, OpeningMount
from wardwright.model.site import Site
from wardwright.trials.responses import response_table

NOISE = {"none": "none", "inside": "inside", "all": "inside and outside"}


def entry_doors(site: Site, catalogue: Catalogue) -> tuple[str, ...]:
    """Names of the doors that give time to unset: those whose contact starts it, else those that were told.

    Parameters
    ----------
    site : Site
        Its zones and openings.
    catalogue : Catalogue
        Says which names give something away.

    Returns
    -------
    tuple of str
        Empty where nobody said and nothing is programmed so.
    """
    starting = {
        device
        for zone in site.zones
        if site.behaviour(zone.behaviour).starts_entry
        for device in zone.devices
    }
    doors = [
        one.mount.opening
        for one in site.devices
        if one.id in starting and isinstance(one.mount, OpeningMount)
    ]
    found = doors or [one.id for one in site.openings if one.is_entry_door]
    return tuple(discreet(site.opening(name).name, site, catalogue) for name in dict.fromkeys(found))


def rooms_with(site: Site, catalogue: Catalogue, kind: DeviceKind) -> tuple[str, ...]:
    """Names of the rooms that have a device of a kind, each once."""
    rooms = [
        discreet(room_name(site, device), site, catalogue)
        for device in site.devices
        if (sheet := sheet_of(catalogue, device)) is not None and sheet.kind == kind
    ]
    return tuple(dict.fromkeys(rooms))


def keypad_rooms(site: Site, catalogue: Catalogue) -> tuple[str, ...]:
    """Names of the rooms with a keypad of their own; one on the control unit is not told."""
    return rooms_with(site, catalogue, "keypad")


def watched_rooms(site: Site, catalogue: Catalogue, part: str) -> tuple[str, ...]:
    """Names of the rooms whose movement detector is on in a part."""
    on = {
        device
        for zone in site.zones
        if part in zone.parts and site.behaviour(zone.behaviour).alarms and not zone.is_on_soak
        for device in zone.devices
    }
    chosen = site.model_copy(update={"devices": tuple(one for one in site.devices if one.id in on)})
    return rooms_with(chosen, catalogue, "movement-detector")


def signal_words(site: Site) -> tuple[tuple[str, str, str, str], ...]:
    """What follows each signal that a zone of the site gives, and a fault: state, noise, and who is told.

    Parameters
    ----------
    site : Site
        Its programme.

    Returns
    -------
    tuple of tuple
        States in which nothing happens are left out.
    """
    given = {site.behaviour(zone.behaviour).signal for zone in site.zones} | {"tamper", "fault"}
    return tuple(
        (row.signal, row.state, NOISE[row.sounders], joined(row.told) or "nobody")
        for row in response_table(site.programme)
        if row.signal in given and (row.sounders != "none" or row.message)
    )
