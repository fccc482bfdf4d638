"""Two rooms and a hall with an alarm, for tests of coming in and leaving.

The front door is at (5.1, 0), the keypad on the hall's west wall at y = 3: before it one stands at (4.5, 3.0). The
"""

from __future__ import annotations

from typing import Any

from common.houses import on_opening, on_wall, two_rooms_and_hall, zone
from wardwright.model.device import Device
from wardwright.model.household import Person
from wardwright.model.opening import LeafState
from wardwright.model.programme import Programme
from wardwright.model.revision import replaced
from wardwright.model.site import Site

KEYPAD = on_wall("keypad", "keypad-radio", "kitchen-wall", 3.0, side="right", height_m=1.4)
UNIT = on_wall("unit", "control-unit-radio", "east", 5.0, height_m=1.5)
FRONT = on_opening("front-contact", "front-door", "contact-radio")
KITCHEN = on_wall("kitchen-movement", "movement-12m", "west", 0.5, heading_deg=-40.0)
HALL = on_wall("hall-movement", "movement-12m", "north", 5.25)
STUDY = on_wall("study-movement", "movement-12m", "east", 5.8, heading_deg=-135.0)
SOUNDER = on_wall("sounder", "sounder-inside", "north", 2.0)
SLOW = Person(id="grandmother", name="grandmother", pace="slow")
USUAL = Person(id="father", name="father", pace="usual")
QUICK = Person(id="teenager", name="teenager", pace="quick")
ROLES = {
    "front-contact": "entry-exit",
    "hall-movement": "entry-route",
    "kitchen-movement": "instant",
    "study-movement": "instant",
}


def arrival_house(
    *,
    kitchen_door: LeafState | None = "shut",
    roles: dict[str, str] | None = None,
    also: tuple[Device, ...] = (),
    without: tuple[str, ...] = (),
    programme: Programme | None = None,
    **parts: Any,
) -> Site:
    """The house; the kitchen door stands as told, or nobody has said how (None)."""
    site = two_rooms_and_hall()
    told: dict[str, Any] = {} if kitchen_door is None else {"habit": kitchen_door}
    openings = tuple(
        type(one)(**{**one.model_dump(exclude_unset=True), **told}) if one.id == "kitchen-door" else one
        for one in site.openings
    )
    kit = (KEYPAD, UNIT, FRONT, KITCHEN, HALL, STUDY, SOUNDER)
    devices = (*(one for one in kit if one.id not in without), *also)
    behaviours = ROLES | (roles or {})
    zones = tuple(
        zone(i, name, name, behaviour=behaviours[name])
        for i, name in enumerate(sorted(behaviours), 1)
        if any(one.id == name for one in devices)
    )
    usual: dict[str, Any] = {
        "openings": openings,
        "devices": devices,
        "zones": zones,
        "people": (SLOW, USUAL),
        "programme": programme or Programme(entry_time_s=30.0, exit_time_s=30.0, abort_delay_s=10.0),
    }
    return replaced(site, **(usual | parts))
