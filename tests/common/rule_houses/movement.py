"""Houses for the rules with codes MOV."""

from __future__ import annotations

from common.houses import (
    on_wall,
    one_room,
    pet,
    radiator,
    window,
)
from common.rule_houses.form import Houses
from wardwright.model.fixture import Fixture
from wardwright.model.surroundings import Ground

# In the middle of the living room's south wall, looking north at a window.
FACING_NORTH = on_wall("living-movement", "fan", "south", 2.65)
NORTH_WINDOW = window("north-window", "north", 2.65)

# In the middle of the west wall, looking along the room's 5 m; its corners are 5.4 m off.
LOOKING_EAST = on_wall("living-movement", "fan-of-48-dm", "west", 2.15)
# In the middle of the north wall, looking at a window and a road that leads straight to it.
FACING_SOUTH = on_wall("living-movement", "fan", "north", 2.65)
SOUTH_WINDOW = window("south-window", "south", 2.65)
ROAD_TO_WINDOW = Ground(road_m=((2.5, -40.0), (2.5, -5.0)))
ROAD_PAST_HOUSE = Ground(road_m=((-40.0, -5.0), (40.0, -5.0)))
# 1.4 m high, against the east wall, straight before one that passes animals on the floor.
SIDEBOARD = Fixture(
    id="sideboard",
    name="sideboard",
    storey="ground",
    kind="cupboard",
    centre_m=(4.7, 2.0),
    size_m=(0.6, 1.0),
    turn_deg=0.0,
    height_m=1.4,
)
PASSING_PETS = on_wall("living-movement", "fan-passing-pets", "west", 2.15)

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
    "MOV104": Houses(
        fires=one_room(devices=(LOOKING_EAST,)),
        silent=one_room(devices=(on_wall("living-movement", "fan-of-48-dm", "south", 2.65),)),
        cannot_run=one_room(),
    ),
    "MOV105": Houses(
        fires=one_room(devices=(FACING_SOUTH,), openings=(SOUTH_WINDOW,), ground=ROAD_TO_WINDOW),
        silent=one_room(devices=(FACING_SOUTH,), openings=(SOUTH_WINDOW,), ground=ROAD_PAST_HOUSE),
        cannot_run=one_room(devices=(FACING_SOUTH,), openings=(SOUTH_WINDOW,)),
    ),
    "MOV106": Houses(
        fires=one_room(devices=(FACING_NORTH,), pets=(pet("small-dog"),)),
        silent=one_room(devices=(PASSING_PETS,), pets=(pet("small-dog"),)),
        cannot_run=one_room(devices=(FACING_NORTH,)),
    ),
    "MOV107": Houses(
        fires=one_room(devices=(PASSING_PETS,), fixtures=(SIDEBOARD,), pets=(pet("cat"),)),
        silent=one_room(devices=(PASSING_PETS,), fixtures=(SIDEBOARD,), pets=(pet("rabbit"),)),
        cannot_run=one_room(devices=(PASSING_PETS,), fixtures=(SIDEBOARD,)),
    ),
    "MOV108": Houses(
        fires=one_room(devices=(FACING_NORTH.model_copy(update={"sensitivity": "high"}),)),
        silent=one_room(devices=(LOOKING_EAST.model_copy(update={"sensitivity": "high"}),)),
        cannot_run=one_room(),
    ),
}
