"""Houses for the rules with codes NAM."""

from __future__ import annotations

from common.houses import (
    on_opening,
    on_wall,
    person,
    two_rooms_and_hall,
    window,
    zone,
)
from common.rule_houses.form import Houses

KITCHEN = (
    on_wall("unit", "unit", "north", 1.0),
    on_wall("kitchen-1", "fan", "south", 1.0),
    on_wall("kitchen-2", "fan", "south", 3.0),
)
# In the study's east wall, at y = 1.0 and y = 5.0: from inside, facing east, the southern one is on the right.
TWO_WINDOWS = (
    *(one for one in two_rooms_and_hall().openings if one.id != "study-window"),
    window("south-window", "east", 1.15),
    window("north-window", "east", 5.15),
)
SOUTHERN = (on_opening("southern", "south-window"),)

HOUSES: dict[str, Houses] = {
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
    "NAM102": Houses(
        fires=two_rooms_and_hall(
            devices=KITCHEN,
            zones=(
                zone(1, "Kitchen movement east", "kitchen-1"),
                zone(2, "Kitchen movement west", "kitchen-2"),
            ),
        ),
        silent=two_rooms_and_hall(
            devices=KITCHEN,
            zones=(
                zone(1, "East kitchen movement", "kitchen-1"),
                zone(2, "West kitchen movement", "kitchen-2"),
            ),
        ),
        cannot_run=two_rooms_and_hall(
            devices=KITCHEN[1:], zones=(zone(1, "Kitchen movement east", "kitchen-1"),)
        ),
    ),
    "NAM103": Houses(
        fires=two_rooms_and_hall(
            openings=TWO_WINDOWS, devices=SOUTHERN, zones=(zone(1, "Study window left", "southern"),)
        ),
        silent=two_rooms_and_hall(
            openings=TWO_WINDOWS, devices=SOUTHERN, zones=(zone(1, "Study window right", "southern"),)
        ),
        cannot_run=two_rooms_and_hall(openings=TWO_WINDOWS, devices=SOUTHERN),
    ),
}
