"""Houses for the rules with codes PWR."""

from __future__ import annotations

from common.houses import on_wall, one_room
from common.rule_houses.form import Houses
from wardwright.model.device import Device
from wardwright.model.needs import Needs


def keypad(sheet: str) -> Device:
    return on_wall("keypad", sheet, "south", 2.0, height_m=1.4)


def unit(sheet: str) -> Device:
    return on_wall("unit", sheet, "south", 3.0, height_m=1.5)


GRADE_2 = Needs(grade=2)

HOUSES: dict[str, Houses] = {
    "PWR101": Houses(
        fires=one_room(devices=(keypad("keypad-thirsty"),)),
        silent=one_room(devices=(keypad("keypad-sparing"),)),
        cannot_run=one_room(devices=(unit("unit-mains"),)),
    ),
    "PWR102": Houses(
        fires=one_room(devices=(unit("unit-of-6-h"),), needs=GRADE_2),
        silent=one_room(devices=(unit("unit-of-16-h"),), needs=GRADE_2),
        cannot_run=one_room(needs=GRADE_2),
    ),
    "PWR103": Houses(
        fires=one_room(devices=(unit("unit-of-96-h-to-charge"),), needs=GRADE_2),
        silent=one_room(devices=(unit("unit-of-16-h"),), needs=GRADE_2),
        cannot_run=one_room(needs=GRADE_2),
    ),
}
