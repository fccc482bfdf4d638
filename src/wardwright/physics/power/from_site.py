"""The power engine's inputs from a site: what runs on cells, how cold it gets there, what has a battery."""

from __future__ import annotations

from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.placement import space_at, standing
from wardwright.model.power_sheets import Cell, CellSheet
from wardwright.model.site import Site
from wardwright.physics.power.cell_life import average_current, cell_life, share_left, within_shelf_life
from wardwright.physics.power.standby import standby_time

Climate = Literal["inside", "unheated", "outside"]
"""How cold it gets where a device hangs."""
UNHEATED_USES = ("garage", "loft", "conservatory", "store")
"""Uses of rooms that are taken to be without heating. (assumption)"""
MINUTES_A_DAY = 1440.0
"""Minutes in a day. [min]"""


class OnCells(NamedTuple):
    """A device that runs on cells."""

    device: Device
    sheet: DeviceSheet
    cells: CellSheet
    cell: Cell
    """What it is fitted with."""

    @property
    def check_in_min(self) -> float | None:
        """How often it tells that it is there; None: its sheet is silent. [min]"""
        told = self.device.check_in_min
        return self.sheet.check_in_min if told is None else told

    @property
    def check_ins(self) -> float:
        """How often in a day; 0 where its sheet is silent. [d-1]"""
        every = self.check_in_min
        return 0.0 if every is None else MINUTES_A_DAY / every


def on_cells(device: Device, catalogue: Catalogue) -> OnCells | None:
    """What a device draws from which cells.

    Parameters
    ----------
    device : Device
        The device; which cells it is fitted with comes before what its sheet says.
    catalogue : Catalogue
        Sheets and cells.

    Returns
    -------
    OnCells or None
        None where it has none, or its sheet is silent.
    """
    sheet = catalogue.sheet(device.sheet)
    if sheet.cells is None:
        return None
    return OnCells(device, sheet, sheet.cells, catalogue.cell(device.cell or sheet.cells.cell))


def climate(site: Site, device: Device) -> Climate:
    """How cold it gets where a device hangs.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        The device.

    Returns
    -------
    {"inside", "unheated", "outside"}
        Outside is every place that no room holds.
    """
    at = standing(site, device)
    space = space_at(site, at.storey, (at.x_m, at.y_m))
    if space is None:
        # In the hole of an outside door or window the part with the electronics is indoors.
        return "inside" if device.mount.on == "opening" else "outside"
    if space.is_outdoors:
        return "outside"
    return "unheated" if space.use in UNHEATED_USES else "inside"


def life_of(
    one: OnCells,
    *,
    capacity: ArrayLike,
    loss: ArrayLike,
    usable: ArrayLike,
    temperature: ArrayLike,
    current: ArrayLike,
    sends: ArrayLike,
    messages: ArrayLike,
) -> FloatArray:
    """How long a device's cells last.

    Parameters
    ----------
    one : OnCells
        What it draws, and from what.
    capacity : array_like, shape (...)
        Of one cell. [Ah]
    loss : array_like, shape (...)
        That a cell loses by itself in a year. [a-1]
    usable : array_like, shape (...)
        Share of the capacity that can be used. [-]
    temperature : array_like, shape (...)
        Of the cells, in the cold season. [deg C]
    current : array_like, shape (...)
        What it draws as a share of what its sheet says. [-]
    sends : array_like, shape (...)
        Sendings of one message until it is heard. [-]
    messages : array_like, shape (...)
        Besides its check-ins. [d-1]

    Returns
    -------
    ndarray, shape (...)
        Cut at the cells' shelf life. [a]
    """
    sheet = one.cells
    a_day = (np.asarray(messages, dtype=np.float64) + one.check_ins) * np.asarray(sends)
    drawn = average_current(
        sheet.standby_ua * 1e-6,
        pulse=np.full((1,), sheet.pulse_ma * 1e-3),
        pulse_time=np.full((1,), sheet.pulse_ms * 1e-3),
        pulses=a_day[..., np.newaxis],
    )
    life = cell_life(
        np.asarray(capacity) * sheet.side_by_side,
        drawn * np.asarray(current),
        loss=loss,
        usable=usable,
        warmth=share_left(temperature, one.cell.warmth),
    )
    return life if one.cell.shelf_years is None else within_shelf_life(life, one.cell.shelf_years)


def standby_of(sheet: DeviceSheet, *, alarm_time: ArrayLike, ageing: ArrayLike) -> FloatArray | None:
    """How long a device on mains goes on without it.

    Parameters
    ----------
    sheet : DeviceSheet
        Its battery, and what that feeds.
    alarm_time : array_like, shape (...)
        How long the alarm is to sound at the end. [h]
    ageing : array_like, shape (...)
        What the battery is taken to be smaller by: 1.25 at the end of its life. [-]

    Returns
    -------
    ndarray, shape (...), or None
        None where its sheet is silent. [h]
    """
    if sheet.transmitter is not None and sheet.standby is None:
        return np.full(np.broadcast(alarm_time, ageing).shape, sheet.transmitter.standby_h)
    if sheet.standby is None:
        return None
    one = sheet.standby
    return standby_time(one.battery_ah, one.quiet_a, alarm=one.alarm_a, alarm_time=alarm_time, ageing=ageing)
