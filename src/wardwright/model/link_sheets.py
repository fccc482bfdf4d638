"""What device sheets say of links: the radio in a device, repeaters, message paths."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Record


class RepeaterSheet(Record):
    """What a repeater's sheet says."""

    devices: Annotated[int, Field(ge=1, le=500)]
    """How many it passes on."""


class TransmitterSheet(Record):
    """What a message path's sheet says."""

    paths: Annotated[tuple[Literal["broadband", "mobile"], ...], Field(min_length=1)]
    standby_h: Annotated[float, Field(ge=0, le=1000)] = 0.0
    """How long it works without mains. [h]"""


class RadioSheet(Record):
    """What a sheet says of the radio in a device."""

    power_dbm: Annotated[float, Field(ge=-40, le=36)] | None = None
    """At its antenna, in the direction it sends best; None: its sheet is silent. [dB re 1 mW]"""
    sensitivity_dbm: Annotated[float, Field(ge=-140, le=-30)] | None = None
    """The weakest signal that it takes; None: its sheet is silent. [dB re 1 mW]"""
    is_two_way: bool = True
    """Whether it listens as well: the control unit confirms, and the weaker way counts."""
    jamming_told_s: Annotated[float, Field(gt=0, le=3600)] | None = None
    """For a control unit: after how long it tells that it is jammed; None: its sheet is silent. [s]"""
