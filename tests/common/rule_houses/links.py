"""Houses for the rules with codes LNK."""

from __future__ import annotations

from common.houses import on_wall, one_room
from common.rule_houses.form import Houses
from wardwright.model.needs import Needs
from wardwright.model.programme import Programme

PLAIN = on_wall("plain", "fan-plain", "south", 2.0)
BETTER = on_wall("better", "fan-better", "south", 2.0)
OUTSIDE = on_wall("outside", "fan-plain", "south", 2.0, side="right")
GARAGE = (one_room().spaces[0].model_copy(update={"use": "garage", "name": "Garage"}),)

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
}
