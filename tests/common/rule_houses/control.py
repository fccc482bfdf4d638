"""Houses for the rules with codes CTL."""

from __future__ import annotations

from common.houses import (
    on_wall,
    two_rooms_and_hall,
    zone,
)
from common.rule_houses.form import Houses
from wardwright.model.fabric import Wall
from wardwright.model.fixture import Outlet

KEYPAD = on_wall("keypad", "keypad", "kitchen-wall", 1.0, side="right", height_m=1.3)
UNIT_IN_HALL = on_wall("unit", "unit", "study-wall", 2.0, height_m=1.5)
UNIT_IN_STUDY = on_wall("unit", "unit", "study-wall", 2.0, side="right", height_m=1.5)
# In the study's south-east corner, looking out of it.
STUDY_FAN = on_wall("study-fan", "fan", "south", 10.1, heading_deg=135.0)
STUDY_ZONE = zone(1, "Study movement", "study-fan")
# On the study's west wall, at (6.24, 1.0).
MAINS_UNIT = on_wall("unit", "unit-mains", "study-wall", 1.0, side="right", height_m=1.5)

# On the kitchen's west wall, at (0.04, 1.0), and the fan it has to hear on the study's east wall, at (10.16, 1.0).
WEST_UNIT = on_wall("unit", "unit", "west", 5.15, height_m=1.5)
EAST_FAN = on_wall("east-fan", "fan", "east", 1.15)
# Three more walls in the kitchen, each from the south wall up to y = 2.
MANY_WALLS = (
    *two_rooms_and_hall().walls,
    *(
        Wall(id=f"extra-{i}", storey="ground", line_m=((1.0 + i, 0.0), (1.0 + i, 2.0)), thickness_m=0.1)
        for i in range(3)
    ),
)
# On the study's west wall, at (6.24, 3.0), opposite the middle of its window.
UNIT_BY_WINDOW = on_wall("unit", "unit", "study-wall", 3.0, side="right", height_m=1.5)
ROUTER = on_wall("router", "router", "study-wall", 2.0, height_m=0.5)
ROUTER_IN_STUDY = on_wall("router", "router", "study-wall", 2.0, side="right", height_m=0.5)


def socket(x: float, y: float, height_m: float = 0.45) -> Outlet:
    return Outlet(id="socket", name="socket", kind="power", storey="ground", at_m=(x, y), height_m=height_m)


HOUSES: dict[str, Houses] = {
    "CTL101": Houses(
        fires=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_HALL, STUDY_FAN), zones=(STUDY_ZONE,)),
        silent=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY)),
        cannot_run=two_rooms_and_hall(devices=(UNIT_IN_HALL,)),
    ),
    "CTL102": Houses(
        fires=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_HALL, STUDY_FAN), zones=(STUDY_ZONE,)),
        silent=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY, STUDY_FAN), zones=(STUDY_ZONE,)),
        cannot_run=two_rooms_and_hall(devices=(UNIT_IN_HALL, STUDY_FAN)),
    ),
    "CTL103": Houses(
        fires=two_rooms_and_hall(
            devices=(WEST_UNIT, EAST_FAN), outlets=(socket(7.0, 0.05),), walls=MANY_WALLS
        ),
        silent=two_rooms_and_hall(devices=(UNIT_IN_STUDY, EAST_FAN), outlets=(socket(7.0, 0.05),)),
        cannot_run=two_rooms_and_hall(devices=(WEST_UNIT,), outlets=(socket(7.0, 0.05),)),
    ),
    "CTL104": Houses(
        fires=two_rooms_and_hall(devices=(UNIT_BY_WINDOW,)),
        silent=two_rooms_and_hall(devices=(UNIT_IN_HALL,)),
        cannot_run=two_rooms_and_hall(),
    ),
    "CTL105": Houses(
        fires=two_rooms_and_hall(devices=(KEYPAD, ROUTER, STUDY_FAN), zones=(STUDY_ZONE,)),
        silent=two_rooms_and_hall(devices=(KEYPAD, ROUTER_IN_STUDY, STUDY_FAN), zones=(STUDY_ZONE,)),
        cannot_run=two_rooms_and_hall(devices=(KEYPAD, STUDY_FAN), zones=(STUDY_ZONE,)),
    ),
    "CTL106": Houses(
        fires=two_rooms_and_hall(devices=(MAINS_UNIT,), outlets=(socket(0.05, 0.5),)),
        silent=two_rooms_and_hall(devices=(MAINS_UNIT,), outlets=(socket(7.0, 0.05),)),
        cannot_run=two_rooms_and_hall(devices=(MAINS_UNIT,)),
    ),
    "CTL107": Houses(
        fires=two_rooms_and_hall(devices=(on_wall("path", "by-broadband", "study-wall", 1.0, side="right"),)),
        silent=two_rooms_and_hall(devices=(on_wall("path", "by-both", "study-wall", 1.0, side="right"),)),
        cannot_run=two_rooms_and_hall(devices=(UNIT_IN_STUDY,)),
    ),
}
