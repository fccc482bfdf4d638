"""For each rule: a house where it fires, one where it is silent, one where it cannot run."""

from __future__ import annotations

from typing import NamedTuple

from common.houses import (
    on_opening,
    on_wall,
    one_room,
    opening,
    person,
    radiator,
    two_rooms_and_hall,
    window,
    zone,
)
from wardwright.model.site import Site


class Houses(NamedTuple):
    """Three houses for one rule."""

    fires: Site
    silent: Site
    cannot_run: Site
    is_mend_computed: bool = True
    """Whether each finding of the first house carries a mend."""


# In the middle of the living room's south wall, looking north at a window.
FACING_NORTH = on_wall("living-movement", "fan", "south", 2.65)
NORTH_WINDOW = window("north-window", "north", 2.65)
OUT = {"swing": "right"}
"""The rooms are on the left of the outer walls' lines."""

KEYPAD = on_wall("keypad", "keypad", "kitchen-wall", 1.0, side="right", height_m=1.3)
UNIT_IN_HALL = on_wall("unit", "unit", "study-wall", 2.0, height_m=1.5)
UNIT_IN_STUDY = on_wall("unit", "unit", "study-wall", 2.0, side="right", height_m=1.5)
# In the study's south-east corner, looking out of it.
STUDY_FAN = on_wall("study-fan", "fan", "south", 10.1, heading_deg=135.0)
STUDY_ZONE = zone(1, "Study movement", "study-fan")

HOUSES: dict[str, Houses] = {
    "CON101": Houses(
        fires=one_room(
            openings=(opening("door", "south", 2.65), window("window", "north", 2.65)),
            devices=(
                on_opening("door-contact", "door", gap_m=0.025),
                on_opening("win", "window", gap_m=0.02),
            ),
        ),
        silent=one_room(
            openings=(opening("door", "south", 2.65),),
            devices=(on_opening("door-contact", "door", gap_m=0.02),),
        ),
        cannot_run=one_room(
            openings=(opening("door", "south", 2.65),), devices=(on_opening("door-contact", "door"),)
        ),
    ),
    "CON102": Houses(
        fires=one_room(
            openings=(opening("door", "south", 2.65, **OUT),),
            devices=(on_opening("door-contact", "door", electronics_on="leaf"),),
        ),
        silent=one_room(
            openings=(opening("door", "south", 2.65, **OUT), opening("inward", "east", 2.0, swing="left")),
            devices=(
                on_opening("door-contact", "door", electronics_on="frame"),
                on_opening("for-outdoors", "door", "contact-outdoors", electronics_on="leaf"),
                on_opening("inward-contact", "inward", electronics_on="leaf"),
            ),
        ),
        cannot_run=one_room(openings=(opening("door", "south", 2.65, **OUT),)),
    ),
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
    "NAM101": Houses(
        fires=two_rooms_and_hall(
            people=(person("Anna"),),
            devices=(
                on_wall("unit", "unit", "north", 1.0),
                on_wall("kitchen-1", "fan", "south", 1.0),
                on_wall("kitchen-2", "fan", "south", 3.0),
                on_opening("front", "front-door"),
                on_wall("study-1", "fan", "south", 8.0),
                on_wall("study-2", "fan", "south", 9.0),
            ),
            zones=(
                zone(1, "Zone 1", "kitchen-1"),
                zone(2, "Kitchen movement east", "kitchen-1"),
                zone(3, "kitchen  movement west", "kitchen-2"),
                zone(4, "7", "front"),
                zone(5, "Anna's study", "study-1"),
                zone(6, "Lovely thing", "study-2"),
            ),
        ),
        silent=two_rooms_and_hall(
            people=(person("Anna"),),
            devices=(
                on_wall("unit", "unit", "north", 1.0),
                on_wall("kitchen-1", "fan", "south", 1.0),
                on_opening("front", "front-door"),
            ),
            zones=(zone(1, "Kitchen movement", "kitchen-1"), zone(2, "Front door", "front")),
        ),
        cannot_run=two_rooms_and_hall(devices=(on_wall("unit", "unit", "north", 1.0),)),
    ),
}
