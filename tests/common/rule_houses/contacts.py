"""Houses for the rules with codes CON."""

from __future__ import annotations

from typing import Any

from common.houses import (
    on_opening,
    one_room,
    opening,
    window,
    zone,
)
from common.rule_houses.form import Houses
from wardwright.model.site import Site

OUT = {"swing": "right"}
"""The rooms are on the left of the outer walls' lines."""


def garage(hinge: str) -> Site:
    door = opening("garage-door", "south", 2.65, kind="garage-door", width_m=2.4, hinge=hinge)
    return one_room(openings=(door,), devices=(on_opening("garage-contact", "garage-door"),))


def with_window(**facts: Any) -> Site:
    return one_room(
        openings=(window("window", "north", 2.65, **facts),),
        devices=(on_opening("window-contact", "window"),),
        zones=(zone(1, "Living window", "window-contact"),),
    )


def with_doors(*contacts: str) -> Site:
    doors = opening("doors", "south", 2.65, width_m=1.8, leaves=2)
    return one_room(openings=(doors,), devices=tuple(on_opening(name, "doors") for name in contacts))


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
    "CON103": Houses(
        fires=garage("top"),
        silent=garage("start"),
        cannot_run=one_room(
            openings=(opening("garage-door", "south", 2.65, kind="garage-door", width_m=2.4),),
            devices=(on_opening("garage-contact", "garage-door"),),
        ),
    ),
    "CON104": Houses(
        fires=with_window(habit="ajar"),
        silent=with_window(habit="shut"),
        cannot_run=with_window(),
        is_mend_computed=False,
    ),
    "CON105": Houses(
        fires=with_doors("first"),
        silent=with_doors("first", "second"),
        cannot_run=one_room(
            openings=(opening("doors", "south", 2.65, width_m=1.8),), devices=(on_opening("first", "doors"),)
        ),
    ),
}
