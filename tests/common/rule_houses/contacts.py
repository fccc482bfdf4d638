"""Houses for the rules with codes CON."""

from __future__ import annotations

from common.houses import (
    on_opening,
    one_room,
    opening,
    window,
)
from common.rule_houses.form import Houses

OUT = {"swing": "right"}
"""The rooms are on the left of the outer walls' lines."""

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
}
