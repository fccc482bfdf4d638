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
    RepeaterSheet,
    SounderSheet,
    TransmitterSheet,
)


def _row(sheet_id: str, kind: Any, **tables: Any) -> DeviceSheet:
    return DeviceSheet(id=sheet_id, name=sheet_id, source="own", mark="assumption", kind=kind, **tables)


def _movement() -> MovementSheet:
    row = BeamRow(name="far", pairs=11, depression_deg=5.71)
    return MovementSheet(reach_m=12.0, angle_deg=90.0, height_low_m=2.0, height_high_m=2.4, rows=(row,))


KIT = (
    _row("unit-mains", "control-unit", power="mains", control=ControlSheet()),
    _row("keypad-with-heights", "keypad", button=ButtonSheet(height_low_m=0.9, height_high_m=1.5)),
    _row("keyfob", "keyfob", button=ButtonSheet(reach_m=8.0)),
    _row("keyfob-silent", "keyfob", button=ButtonSheet()),
    _row("hold-up", "hold-up-button", button=ButtonSheet(height_low_m=0.6, height_high_m=1.4, presses=2)),
    _row("hold-up-single", "hold-up-button", button=ButtonSheet()),
    _row("sounder", "sounder", sounder=SounderSheet(level_dba=96.0)),
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
)
