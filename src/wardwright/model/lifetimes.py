"""When a device's life and its security updates end."""

from __future__ import annotations

import calendar
from datetime import date

from wardwright.model.device import Device
from wardwright.model.device_sheets import DeviceSheet

MONTHS = 12


def end_of_life(device: Device, sheet: DeviceSheet) -> date | None:
    """The day on which a device's life ends, counted from its making.

    Parameters
    ----------
    device : Device
        Its label says when it was made.
    sheet : DeviceSheet
        Says how long it lives. [a]

    Returns
    -------
    date or None
        Part years are whole months, the shorter way; None where either is not known.

    Examples
    --------
    >>> from wardwright.model.device import FreeMount
    >>> sheet = DeviceSheet(id="s", name="s", source="own", mark="assumption", kind="smoke-alarm", life_years=10)
    >>> alarm = Device(id="a", name="A", sheet="s", mount=FreeMount(storey="g", at_m=(0, 0)), made_on="2024-02-29")
    >>> end_of_life(alarm, sheet)
    datetime.date(2034, 2, 28)
    """
    if device.made_on is None or sheet.life_years is None:
        return None
    return after_years(device.made_on, sheet.life_years)


def after_years(start: date, years: float) -> date:
    """The day some years after another; part years are whole months, the shorter way.

    Examples
    --------
    >>> after_years(date(2024, 2, 29), 1.3)
    datetime.date(2025, 5, 29)
    """
    months = start.year * MONTHS + start.month - 1 + int(years * MONTHS + 1e-9)
    year, month = divmod(months, MONTHS)
    last = calendar.monthrange(year, month + 1)[1]
    return date(year, month + 1, min(start.day, last))
