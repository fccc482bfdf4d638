"""Houses for the rules with codes KEY."""

from __future__ import annotations

from common.houses import on_wall, opening, person, standing_free, two_rooms_and_hall
from common.rule_houses.control import socket
from common.rule_houses.form import Houses

# On the hall's west wall, at (4.14, 1.0), beside the front door.
KEYPAD = on_wall("keypad", "keypad-with-heights", "kitchen-wall", 1.0, side="right", height_m=1.1)
# On the hall's north wall, at (5.1, 5.96), facing the front door.
FAR_KEYPAD = on_wall("keypad", "keypad", "north", 5.25, height_m=1.1)
GLAZED = tuple(
    one
    if one.id != "front-door"
    else opening("front-door", "south", 5.25, is_entry_door=True, glazing="double")
    for one in two_rooms_and_hall().openings
)
KEYFOB = standing_free("keyfob", "keyfob", 5.1, 1.0)
# In the study's far corner, at (10.16, 5.5).
FAR_UNIT = on_wall("unit", "unit", "east", 5.65, height_m=1.5)
NEAR_UNIT = on_wall("unit", "unit", "study-wall", 2.0, side="right", height_m=1.5)
NEAR_BUTTON = on_wall("near", "hold-up", "kitchen-wall", 1.0, side="right", height_m=1.05)

HOUSES: dict[str, Houses] = {
    "KEY101": Houses(
        fires=two_rooms_and_hall(devices=(FAR_KEYPAD,)),
        silent=two_rooms_and_hall(devices=(KEYPAD,)),
        cannot_run=two_rooms_and_hall(),
    ),
    "KEY102": Houses(
        fires=two_rooms_and_hall(
            people=(person("Grandmother", pace="slow"),),
            devices=(
                on_wall("high", "keypad-with-heights", "kitchen-wall", 1.0, side="right", height_m=1.6),
                on_wall("stretch", "keypad", "kitchen-wall", 1.3, side="right", height_m=1.3),
            ),
        ),
        silent=two_rooms_and_hall(people=(person("Grandmother", pace="slow"),), devices=(KEYPAD,)),
        cannot_run=two_rooms_and_hall(),
    ),
    "KEY103": Houses(
        fires=two_rooms_and_hall(devices=(FAR_KEYPAD,), openings=GLAZED),
        silent=two_rooms_and_hall(devices=(FAR_KEYPAD,)),
        cannot_run=two_rooms_and_hall(),
    ),
    "KEY104": Houses(
        fires=two_rooms_and_hall(devices=(KEYFOB, FAR_UNIT), outlets=(socket(5.9, 0.05),)),
        silent=two_rooms_and_hall(devices=(KEYFOB, NEAR_UNIT)),
        cannot_run=two_rooms_and_hall(devices=(NEAR_UNIT,)),
    ),
    "KEY105": Houses(
        fires=two_rooms_and_hall(
            people=(person("Tom", is_child=True),),
            devices=(
                on_wall("far", "hold-up", "east", 1.15, height_m=1.05),
                on_wall("high", "hold-up", "kitchen-wall", 1.0, side="right", height_m=1.6),
                on_wall("single", "hold-up-single", "kitchen-wall", 0.6, side="right", height_m=1.05),
            ),
        ),
        silent=two_rooms_and_hall(people=(person("Tom", is_child=True),), devices=(NEAR_BUTTON,)),
        cannot_run=two_rooms_and_hall(),
    ),
}
