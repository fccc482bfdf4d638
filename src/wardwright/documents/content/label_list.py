"""The labels: one for the inside of each device's cover, with its zone's number and name."""

from __future__ import annotations

from wardwright.documents.content.as_fitted import ELSEWHERE
from wardwright.documents.content.discretion import discreet, withheld
from wardwright.documents.content.paper import Cell, Column, Table
from wardwright.documents.content.schedule import NONE, sheet_of
from wardwright.documents.drawing.devices import device_tags
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, kind_words
from wardwright.model.lifetimes import end_of_life
from wardwright.model.site import Site
from wardwright.rules.zone_names import display_length, shown_name

HOW_TO_USE = "One for each device, inside its cover: the same name as on the keypad and in the log."


def label_table(site: Site, catalogue: Catalogue) -> Table:
    """One row a label."""
    columns = (
        Column("Number", share=0.6), Column("Zone", share=0.6), Column("On the display", share=1.8),
        Column("Device", share=2.6),
        Column("Replace before", share=1.3),
    )  # fmt: skip
    hidden, length = withheld(site, catalogue), display_length(site, catalogue)
    tags = device_tags(site, catalogue)
    zones = {device: zone for zone in site.zones for device in zone.devices}
    rows: list[tuple[Cell, ...]] = []

    def turn(device: Device) -> tuple[bool, int, bool, str]:
        """By zone, then by name; what is withheld last, so that its name does not show by its turn."""
        is_hidden, zone = device.id in hidden, zones.get(device.id)
        return zone is None, 0 if zone is None else zone.number, is_hidden, "" if is_hidden else device.name

    for device in sorted(site.devices, key=turn):
        zone, sheet = zones.get(device.id), sheet_of(catalogue, device)
        is_hidden = device.id in hidden
        name = kind_words(sheet.kind) if is_hidden and sheet else discreet(device.name, site, catalogue)
        end = None if sheet is None else end_of_life(device, sheet)
        rows.append(
            (
                tags[device.id].text,
                NONE if zone is None else zone.number,
                NONE
                if zone is None
                else ELSEWHERE
                if is_hidden
                else shown_name(discreet(zone.name, site, catalogue), length),
                name,
                end or "not known",
            )
        )
    return Table("Labels", columns, tuple(rows))
