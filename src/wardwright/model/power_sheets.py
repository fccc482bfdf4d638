"""What keeps a device going without mains: cells and stand-by batteries, as its sheet says."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from wardwright.model.record import Id, Record
from wardwright.model.rows import Row


class Cell(Row):
    """A kind of cell or battery: what it holds, and how it ages."""

    capacity_mah: Annotated[float, Field(gt=0)] | None = None
    capacity_low_mah: Annotated[float, Field(gt=0)] | None = None
    capacity_high_mah: Annotated[float, Field(gt=0)] | None = None
    """Rated, likely and between which; None for a battery whose size is its device's own. [mAh]"""
    loss_share: Annotated[float, Field(ge=0, le=0.99)]
    loss_low_share: Annotated[float, Field(ge=0, le=0.99)]
    loss_high_share: Annotated[float, Field(ge=0, le=0.99)]
    """Share that it loses by itself in a year, likely and between which. [-]"""
    hard_pulse_ma: Annotated[float, Field(gt=0)] | None = None
    hard_capacity_mah: Annotated[float, Field(gt=0)] | None = None
    """Drawn harder than this, it may give this only; None: no matter. [mA, mAh]"""
    warmth: Annotated[tuple[tuple[float, float], ...], Field(min_length=1)] = ((20.0, 1.0),)
    """Temperatures, rising, and the share of its capacity at each. [deg C, -]"""
    shelf_years: Annotated[float, Field(gt=0, le=40)] | None = None
    """How long it keeps unused: no life is said to be longer; None: it is charged again and again. [a]"""
    service_low_years: Annotated[float, Field(gt=0, le=40)] | None = None
    service_high_years: Annotated[float, Field(gt=0, le=40)] | None = None
    """For a battery that is charged again and again: between which ages it is changed. [a]"""
    price: Annotated[float, Field(ge=0)] | None = None
    """What a fitter pays for one, before tax, in the currency of the place; None: not known."""


class CellSheet(Record):
    """What a device's sheet says of its cells and of what it draws from them."""

    cell: Id
    """The row of cells that it comes with."""
    also_takes: tuple[Id, ...] = ()
    """Other rows of cells that it may be fitted with."""
    count: Annotated[int, Field(ge=1, le=16)] = 1
    """How many are changed together."""
    side_by_side: Annotated[int, Field(ge=1, le=16)] = 1
    """How many of them share the load; the others only add voltage."""
    standby_ua: Annotated[float, Field(gt=0, le=10_000)]
    """What it draws all the time. [uA]"""
    pulse_ma: Annotated[float, Field(ge=0, le=2_000)]
    pulse_ms: Annotated[float, Field(ge=0, le=10_000)]
    """What one sending draws, and how long it lasts. [mA, ms]"""
    sound_ma: Annotated[float, Field(ge=0, le=5_000)] = 0.0
    """What it draws while it sounds. [mA]"""
    check_in_most_min: Annotated[float, Field(gt=0, le=10080)] | None = None
    """The longest time between check-ins that it may be set to; None: it cannot be set. [min]"""


class StandbySheet(Record):
    """What a mains device's sheet says of its battery."""

    battery: Id
    """The row of cells that it is of."""
    battery_ah: Annotated[float, Field(gt=0, le=500)]
    """Rated capacity. [Ah]"""
    quiet_a: Annotated[float, Field(gt=0, le=50)]
    """Current without an alarm. [A]"""
    alarm_a: Annotated[float, Field(ge=0, le=50)] = 0.0
    """Current during an alarm. [A]"""
    charge_a: Annotated[float, Field(gt=0, le=50)] | None = None
    """Current of its charger; None: its sheet is silent. [A]"""
