"""Houses for the rules with codes NAM."""

from __future__ import annotations

from common.houses import (
    on_opening,
    on_wall,
    person,
    two_rooms_and_hall,
    zone,
)
from common.rule_houses.form import Houses

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
}
