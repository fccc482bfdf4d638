"""Houses for the rules with codes SRV."""

from __future__ import annotations

from common.houses import on_wall, one_room
from common.rule_houses.form import Houses
from wardwright.model.fixture import Fixture

# Against the south wall from x = 1.0 to 3.0: its top is 0.9 m up.
WORKTOP = Fixture(
    id="worktop",
    name="worktop",
    storey="ground",
    kind="worktop",
    centre_m=(2.0, 0.3),
    size_m=(2.0, 0.6),
    turn_deg=0.0,
    height_m=0.9,
)

HOUSES: dict[str, Houses] = {
    "SRV101": Houses(
        fires=one_room(
            devices=(
                on_wall("unit", "unit-opened-below", "south", 2.15, height_m=1.2),
                on_wall("keypad", "keypad-opened-above", "east", 2.0, height_m=2.3),
            ),
            fixtures=(WORKTOP,),
        ),
        silent=one_room(
            devices=(
                on_wall("unit", "unit-opened-below", "south", 2.15, height_m=1.35),
                on_wall("keypad", "keypad-opened-above", "east", 2.0, height_m=2.2),
            ),
            fixtures=(WORKTOP,),
        ),
        cannot_run=one_room(devices=(on_wall("keypad", "keypad", "east", 2.0),)),
    ),
}
