"""Houses for the rules with codes LNK."""

from __future__ import annotations

from common.houses import on_wall, one_room, standing_free
from common.rule_houses.form import Houses
from wardwright.model.fixture import Fixture
from wardwright.model.needs import Needs
from wardwright.model.programme import Programme

PLAIN = on_wall("plain", "fan-plain", "south", 2.0)
BETTER = on_wall("better", "fan-better", "south", 2.0)
OUTSIDE = on_wall("outside", "fan-plain", "south", 2.0, side="right")
GARAGE = (one_room().spaces[0].model_copy(update={"use": "garage", "name": "Garage"}),)

UNIT = standing_free("unit", "radio-unit", 0.5, 2.0)
LATE = standing_free("unit", "radio-unit-late", 0.5, 2.0)
WEAK = standing_free("weak", "radio-weak", 4.5, 2.0)
STRONG = standing_free("strong", "radio-strong", 4.5, 2.0)
BOILER = Fixture(
    id="boiler", name="Boiler", kind="boiler", storey="ground", centre_m=(2.5, 2.0), size_m=(0.6, 0.6), height_m=1.8
)  # fmt: skip

HOUSES: dict[str, Houses] = {
    "LNK101": Houses(
        fires=one_room(devices=(PLAIN,), programme=Programme(check_in_min=240.0)),
        silent=one_room(devices=(BETTER,), programme=Programme(check_in_min=120.0)),
        cannot_run=one_room(programme=Programme(check_in_min=120.0)),
    ),
    "LNK102": Houses(
        fires=one_room(devices=(PLAIN,), needs=Needs(grade=2)),
        silent=one_room(devices=(BETTER,), needs=Needs(grade=2)),
        cannot_run=one_room(),
    ),
    "LNK103": Houses(
        fires=one_room(devices=(PLAIN,), spaces=GARAGE),
        silent=one_room(devices=(BETTER,), spaces=GARAGE),
        cannot_run=one_room(devices=(on_wall("fan", "fan", "south", 2.0),), spaces=GARAGE),
    ),
    "LNK104": Houses(
        fires=one_room(devices=(UNIT, WEAK)),
        silent=one_room(devices=(UNIT, STRONG)),
        cannot_run=one_room(),
    ),
    "LNK105": Houses(
        fires=one_room(devices=(UNIT, WEAK), fixtures=(BOILER,)),
        silent=one_room(devices=(UNIT, STRONG), fixtures=(BOILER,)),
        cannot_run=one_room(),
    ),
    "LNK106": Houses(
        fires=one_room(devices=(LATE,)),
        silent=one_room(devices=(UNIT,)),
        cannot_run=one_room(),
    ),
}
