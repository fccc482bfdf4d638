"""Houses for the rules with codes MOV."""

from __future__ import annotations

from common.houses import (
    on_wall,
    one_room,
    radiator,
    window,
)
from common.rule_houses.form import Houses

# In the middle of the living room's south wall, looking north at a window.
FACING_NORTH = on_wall("living-movement", "fan", "south", 2.65)
NORTH_WINDOW = window("north-window", "north", 2.65)

HOUSES: dict[str, Houses] = {
    "MOV101": Houses(
        fires=one_room(devices=(FACING_NORTH,), fixtures=(radiator(2.5, 0.1),)),
        silent=one_room(devices=(FACING_NORTH,), fixtures=(radiator(2.5, 3.9),)),
        cannot_run=one_room(devices=(FACING_NORTH,)),
    ),
    "MOV102": Houses(
        fires=one_room(
            devices=(
                on_wall("low", "fan", "south", 2.0, height_m=1.9),
                on_wall("high", "fan", "south", 3.0, height_m=2.41),
            ),
            storeys=(one_room().storeys[0].model_copy(update={"height_m": 2.6}),),
        ),
        silent=one_room(
            devices=(
                on_wall("lowest", "fan", "south", 2.0, height_m=2.0),
                on_wall("highest", "fan", "south", 3.0, height_m=2.4),
            )
        ),
        cannot_run=one_room(),
    ),
    "MOV103": Houses(
        fires=one_room(devices=(FACING_NORTH,), openings=(NORTH_WINDOW,)),
        silent=one_room(devices=(FACING_NORTH,), openings=(window("side", "west", 2.15),)),
        cannot_run=one_room(openings=(NORTH_WINDOW,)),
    ),
}
