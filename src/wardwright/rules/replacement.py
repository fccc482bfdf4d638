"""Another device of the same kind in the place of one that does not fit."""

from __future__ import annotations

from collections.abc import Callable

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import USUAL_MOUNTS, Device
from wardwright.model.device_sheets import DeviceSheet
from wardwright.rules.finding import Mend


def replaced(
    catalogue: Catalogue, device: Device, *, fits: Callable[[DeviceSheet], bool]
) -> tuple[Mend, ...]:
    """Replace a device by the cheapest of its kind that fits and goes in the same place.

    Parameters
    ----------
    catalogue : Catalogue
        The sheets to choose from.
    device : Device
        What is to be replaced.
    fits : callable
        Whether a sheet cures the fault.

    Returns
    -------
    tuple of Mend
        One; empty if the catalogue has none.
    """
    now = catalogue.sheet(device.sheet)
    fitting = [
        sheet
        for sheet in catalogue.sheets
        if sheet.kind == now.kind and sheet.id != now.id and _goes_there(sheet, device, now) and fits(sheet)
    ]
    best = min(fitting, key=lambda sheet: sheet.cheapest_first, default=None)
    if best is None:
        return ()
    return (Mend(action="replace-device", subject=device.id, values=(("sheet", best.id),)),)


def _goes_there(sheet: DeviceSheet, device: Device, now: DeviceSheet) -> bool:
    """Whether it may be fixed to the same thing, and is of the same form."""
    form = None if sheet.contact is None else sheet.contact.form
    was = None if now.contact is None else now.contact.form
    is_mounted_alike = device.mount.on in (sheet.mounts or USUAL_MOUNTS[sheet.kind])
    return is_mounted_alike and form == was and sheet.is_outside == now.is_outside
