"""Houses for the rules with codes SUN."""

from __future__ import annotations

from common.houses import on_wall, one_room, window
from common.rule_houses.form import Houses
from wardwright.model.place import Place

LONDON = Place(country="GB", latitude_deg=51.5, longitude_deg=0.0, north_deg=0.0)
# The plan's south wall faces five degrees south of east: in it the sun rises early in March.
FACING_SUNRISE = LONDON.model_copy(update={"north_deg": -85.0})
# On the north wall, 2.0 m up; the glass opposite reaches 0.3 m higher: the low sun comes in under its head.
LOW = on_wall("living-movement", "fan", "north", 2.65, height_m=2.0)
TALL_SOUTH = window("tall", "south", 2.65, width_m=1.2, sill_m=0.1, head_m=2.3)
# In the window's own wall's corner, looking along it.
BESIDE = on_wall("living-movement", "fan", "south", 0.3, height_m=2.3, heading_deg=45.0)
# On the east wall: the south window is not ahead, but its light lies on the floor between.
ACROSS = on_wall("living-movement", "fan", "east", 2.15, height_m=2.35, heading_deg=180.0)
WIDE_SOUTH = window("wide", "south", 2.15, width_m=3.0)

# Aimed along the floor of the room, whose polish shows it the sun through the window on its left.
POLISHED = (one_room().spaces[0].model_copy(update={"has_glossy_floor": True}),)
LOOKING_WEST = on_wall("living-movement", "fan", "east", 2.15, height_m=2.2)
SOUTH = window("south-window", "south", 2.65, width_m=2.0)

HOUSES: dict[str, Houses] = {
    "SUN101": Houses(
        fires=one_room(devices=(LOW,), openings=(TALL_SOUTH,), place=FACING_SUNRISE),
        silent=one_room(devices=(BESIDE,), openings=(TALL_SOUTH,), place=FACING_SUNRISE),
        cannot_run=one_room(devices=(LOW,), openings=(TALL_SOUTH,)),
    ),
    "SUN102": Houses(
        fires=one_room(devices=(ACROSS,), openings=(WIDE_SOUTH,), place=LONDON),
        silent=one_room(devices=(ACROSS,), openings=(window("north-window", "north", 2.15),), place=LONDON),
        cannot_run=one_room(devices=(ACROSS,), openings=(WIDE_SOUTH,)),
    ),
    "SUN103": Houses(
        fires=one_room(devices=(LOOKING_WEST,), openings=(SOUTH,), place=LONDON, spaces=POLISHED),
        silent=one_room(devices=(LOOKING_WEST,), openings=(SOUTH,), place=LONDON),
        cannot_run=one_room(devices=(LOOKING_WEST,), openings=(SOUTH,), spaces=POLISHED),
    ),
}
