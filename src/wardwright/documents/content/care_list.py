"""What has a date: lives of devices that end, and security updates that stop."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from wardwright.documents.content.schedule import sheet_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.lifetimes import end_of_life
from wardwright.model.record import Record
from wardwright.model.site import Site

LIFE, UPDATES = "its life ends", "its security updates end"


class CareDate(Record):
    """One day on which something ends."""

    on: str
    """As ISO 8601 has it."""
    device: str
    name: str
    what: str
    is_past: bool


class CareList(Record):
    """All that has a date, and what has none."""

    dates: tuple[CareDate, ...]
    """The soonest first."""
    undated: tuple[str, ...]
    """Names of the devices of which nobody said when they were made, though their sheets say how long they live."""
    lasting: tuple[str, ...]
    """Names of the devices whose sheets say nothing of a life or of updates: that is no promise."""


def care_list(site: Site, catalogue: Catalogue, *, today: date) -> CareList:
    """List what ends, and when.

    Parameters
    ----------
    site : Site
        Its devices.
    catalogue : Catalogue
        Says how long each lives.
    today : date
        What lies before it is past.

    Returns
    -------
    CareList
        Every device is in at least one of its lists.
    """
    dates: list[CareDate] = []
    undated: list[str] = []
    lasting: list[str] = []
    for device in site.devices:
        sheet = sheet_of(catalogue, device)
        end = None if sheet is None else end_of_life(device, sheet)
        updates = None if sheet is None else sheet.updates_until
        for what, on in ((LIFE, end), (UPDATES, updates)):
            if on is not None:
                dates.append(
                    CareDate(
                        on=on.isoformat(), device=device.id, name=device.name, what=what, is_past=on < today
                    )
                )
        if sheet is not None and sheet.life_years is not None and device.made_on is None:
            undated.append(device.name)
        elif end is None and updates is None:
            lasting.append(device.name)
    return CareList(dates=tuple(_in_order(dates)), undated=tuple(undated), lasting=tuple(lasting))


def _in_order(dates: Iterable[CareDate]) -> Iterable[CareDate]:
    return sorted(dates, key=lambda one: (one.on, one.name))
