"""Sheets of the kit besides detectors and contacts, for tests of any folder: values of our own."""

from __future__ import annotations

from typing import Any

from wardwright.model.device_sheets import (
    BeamRow,
    ButtonSheet,
    ContactSheet,
    ControlSheet,
    DeviceSheet,
    MovementSheet,
    SounderSheet,
    WaterSheet,
)
from wardwright.model.link_sheets import RadioSheet, RepeaterSheet, TransmitterSheet
from wardwright.model.power_sheets import CellSheet, StandbySheet


def _row(sheet_id: str, kind: Any, **tables: Any) -> DeviceSheet:
    return DeviceSheet(id=sheet_id, name=sheet_id, source="own", mark="assumption", kind=kind, **tables)


def _movement() -> MovementSheet:
    row = BeamRow(name="far", pairs=11, depression_deg=5.71)
    return MovementSheet(reach_m=12.0, angle_deg=90.0, height_low_m=2.0, height_high_m=2.4, rows=(row,))


def _cells(standby_ua: float, **facts: Any) -> CellSheet:
    return CellSheet(cell="alkaline-lr6", standby_ua=standby_ua, pulse_ma=60.0, pulse_ms=100.0, **facts)


def _standby(battery_ah: float, charge_a: float = 0.1) -> StandbySheet:
    """0.1 A and no more in an alarm: battery / 1.25 / 0.1 h, less the quarter hour of alarm at the end."""
    return StandbySheet(
        battery="lead-acid", battery_ah=battery_ah, quiet_a=0.1, alarm_a=0.1, charge_a=charge_a
    )


def _radio(sheet_id: str, kind: Any, power_dbm: float, *, table: dict[str, Any], **facts: Any) -> DeviceSheet:
    """A radio of 868 MHz; dear, so that it takes no other row's place where any of its kind would do."""
    radio = RadioSheet(power_dbm=power_dbm, **facts)
    return _row(sheet_id, kind, frequency_mhz=868.0, price=500.0 - power_dbm, radio=radio, **table)


_HEARS: dict[str, Any] = {"sensitivity_dbm": -100.0}
_UNIT: dict[str, Any] = {"control": ControlSheet()}
_WATER: dict[str, Any] = {"water": WaterSheet()}

KIT = (
    _radio("radio-unit", "control-unit", 10.0, table=_UNIT, jamming_told_s=15.0, **_HEARS),
    _radio("radio-unit-late", "control-unit", 10.0, table=_UNIT, jamming_told_s=90.0, **_HEARS),
    _radio("radio-weak", "water-detector", -38.0, table=_WATER, is_two_way=False),
    _radio("radio-strong", "water-detector", 14.0, table=_WATER, is_two_way=False),
    _row("unit-mains", "control-unit", power="mains", control=ControlSheet()),
    _row("keypad-with-heights", "keypad", button=ButtonSheet(height_low_m=0.9, height_high_m=1.5)),
    _row("keyfob", "keyfob", button=ButtonSheet(reach_m=8.0)),
    _row("keyfob-silent", "keyfob", button=ButtonSheet()),
    _row("hold-up", "hold-up-button", button=ButtonSheet(height_low_m=0.6, height_high_m=1.4, presses=2)),
    _row("hold-up-single", "hold-up-button", button=ButtonSheet()),
    _row("sounder", "sounder", sounder=SounderSheet(level_dba=96.0), price=60.0),
    _row("sounder-shrill", "sounder", sounder=SounderSheet(level_dba=112.0), price=900.0),
    _row(
        "sounder-outside",
        "sounder",
        sounder=SounderSheet(level_dba=103.0, is_self_powered=True, is_outside=True),
    ),
    _row("repeater", "repeater", repeater=RepeaterSheet(devices=24), power="mains"),
    _row("router", "router", link="wired"),
    _row("by-broadband", "transmitter", link="wired", transmitter=TransmitterSheet(paths=("broadband",))),
    _row(
        "by-broadband-standby",
        "transmitter",
        link="wired",
        transmitter=TransmitterSheet(paths=("broadband",), standby_h=6.0),
    ),
    _row(
        "by-mobile",
        "transmitter",
        link="wired",
        transmitter=TransmitterSheet(paths=("mobile",), standby_h=14.0),
    ),
    _row(
        "by-both",
        "transmitter",
        link="wired",
        transmitter=TransmitterSheet(paths=("broadband", "mobile"), standby_h=14.0),
    ),
    # Two of one kind: the first of a low grade, a mild class and rare check-ins, the second better in all three.
    _row(
        "fan-plain",
        "movement-detector",
        grade=1,
        environmental_class="II",
        check_in_min=300.0,
        fixings=("screws", "adhesive"),
        movement=_movement(),
    ),
    _row(
        "fan-better",
        "movement-detector",
        grade=2,
        environmental_class="III",
        check_in_min=18.0,
        price=50.0,
        movement=_movement(),
    ),
    _row(
        "contact-taped",
        "opening-contact",
        grade=2,
        environmental_class="II",
        check_in_min=18.0,
        fixings=("screws", "adhesive"),
        detects_removal=True,
        contact=ContactSheet(gap_m=0.02),
    ),
    # On cells: one that drinks, one that takes better cells, one that sips; and units with batteries and chargers.
    _row("keypad-thirsty", "keypad", price=30.0, cells=_cells(900.0)),
    _row("keypad-of-two-cells", "keypad", price=31.0, cells=_cells(280.0, also_takes=("lithium-fr6",))),
    _row("keypad-sparing", "keypad", price=32.0, cells=_cells(20.0)),
    _row(
        "unit-of-6-h",
        "control-unit",
        price=80.0,
        power="mains",
        control=ControlSheet(),
        standby=_standby(0.75),
    ),
    _row(
        "unit-of-16-h",
        "control-unit",
        price=90.0,
        power="mains",
        control=ControlSheet(),
        standby=_standby(2.0),
    ),
    _row(
        "unit-of-96-h-to-charge",
        "control-unit",
        price=91.0,
        power="mains",
        control=ControlSheet(),
        standby=_standby(2.4, charge_a=0.02),
    ),
)
