"""The as-fitted list for the customer's own files: what is fitted in which room, and when its life ends."""

from __future__ import annotations

from collections import Counter
from datetime import date

from wardwright.documents.content.discretion import discreet, withheld
from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Paper, Section, Table
from wardwright.documents.content.schedule import NOT_STATED, OUTSIDE, room_name, sheet_of
from wardwright.documents.drawing.devices import letters_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, kind_words
from wardwright.model.lifetimes import end_of_life
from wardwright.model.site import Site

ELSEWHERE = "place in the fitter\u2019s record"
KEEP = (
    "Test the alarm as the user\u2019s guide says. Replace a device before its life ends.",
    "Tell the fitter of changes: furniture, building work, pets, windows, the people who use it.",
    "Codes are yours alone: they stand on no paper.",
)


def as_fitted(site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """List what is fitted, room by room.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        The control unit, what sends its messages and the keyfobs are counted, not placed.
    """
    return Paper(
        title="As fitted",
        house=discreet(site.name, site, catalogue),
        copy="open",
        drawn_up=drawn_up,
        sections=(
            Section("Devices", table=as_fitted_table(site, catalogue)),
            Section("To keep it working", points=KEEP),
        ),
    )


def as_fitted_table(site: Site, catalogue: Catalogue) -> Table:
    """One row a device, by room; those whose place is not told come last, by kind alone."""
    columns = (
        Column("Room", share=1.5), Column("Device", share=2.4), Column("Kind", share=1.8), Column("Zone", share=0.6),
        Column("Made on", share=1.3), Column("End of life", share=1.3), Column("Security updates until", share=1.3),
    )  # fmt: skip
    hidden = withheld(site, catalogue)
    shown = [device for device in site.devices if device.id not in hidden]
    rows = [_row(site, catalogue, device, room=room_name(site, device)) for device in shown]
    rows.sort(key=lambda row: (row[0] == OUTSIDE, str(row[0]), str(row[1])))
    kinds = Counter(
        _kind(catalogue, device, is_placed=False) for device in site.devices if device.id in hidden
    )
    for device in sorted((one for one in site.devices if one.id in hidden), key=lambda one: one.sheet):
        kind = _kind(catalogue, device, is_placed=False)
        name = kind if kinds[kind] == 1 else f"{kind}, one of {kinds[kind]}"
        rows.append((ELSEWHERE, name, kind, "none", *_dates(catalogue, device)))
    return Table("As fitted", columns, tuple(rows))


def _row(site: Site, catalogue: Catalogue, device: Device, *, room: str) -> tuple[Cell, ...]:
    number = next((zone.number for zone in site.zones if device.id in zone.devices), None)
    return (
        discreet(room, site, catalogue),
        discreet(device.name, site, catalogue),
        _kind(catalogue, device, is_placed=True),
        "none" if number is None else number,
        *_dates(catalogue, device),
    )


def _kind(catalogue: Catalogue, device: Device, *, is_placed: bool) -> str:
    sheet = sheet_of(catalogue, device)
    if sheet is None:
        return NOT_KNOWN
    return letters_of(sheet)[1] if is_placed else kind_words(sheet.kind)


def _dates(catalogue: Catalogue, device: Device) -> tuple[Cell, Cell, Cell]:
    """When it was made, when its life ends and its updates do."""
    sheet = sheet_of(catalogue, device)
    end = None if sheet is None else end_of_life(device, sheet)
    updates = None if sheet is None else sheet.updates_until
    return (device.made_on or NOT_KNOWN, end or NOT_KNOWN, updates or NOT_STATED)
