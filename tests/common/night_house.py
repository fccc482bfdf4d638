"""Two rooms and a hall, slept in, with part of the alarm set at night: for tests of trips from bed.

Ann sleeps in the study, whose middle is (8.2, 3); the middle of the kitchen is (2, 3). Both doors are at y = 4, told
to be shut at night. The walk between them is some 2 m, 2 m of hall and 2 m, through both doors.
"""

from __future__ import annotations

from typing import Any

from common.arrival_house import FRONT, HALL, KEYPAD, KITCHEN, STUDY, UNIT
from common.houses import two_rooms_and_hall, zone
from wardwright.model.device import Device
from wardwright.model.household import Person
from wardwright.model.opening import LeafState
from wardwright.model.programme import Programme
from wardwright.model.revision import replaced
from wardwright.model.site import Site

ANN = Person(id="ann", name="Ann", pace="usual", bed="study")
CHILD = Person(id="child", name="Child", pace="quick", bed="kitchen", is_child=True, knows_code=False)
AT_NIGHT = ("full", "night")
TOLD = (("habit", "told"), ("habit_night", "told"))


def night_house(
    roles: dict[str, str] | None = None,
    *,
    leaves: LeafState = "shut",
    ever: LeafState | None = None,
    also: tuple[Device, ...] = (),
    **parts: Any,
) -> Site:
    """The house; `roles` says which devices are in the night part, and how their zones behave.

    Inside doors stand at night as `leaves` says; told of them is also `ever`, how they usually stand by day.
    """
    site = two_rooms_and_hall()
    openings = tuple(
        one.model_copy(update={"habit": ever or leaves, "habit_night": leaves, "basis": TOLD})
        if one.id in ("kitchen-door", "study-door")
        else one
        for one in site.openings
    )
    roles = {"hall-movement": "instant"} if roles is None else roles
    devices = (KEYPAD, UNIT, FRONT, KITCHEN, HALL, STUDY, *also)
    zones = tuple(
        zone(number, name, name, behaviour=role, parts=AT_NIGHT)
        for number, (name, role) in enumerate(sorted(roles.items()), 1)
    )
    usual: dict[str, Any] = {
        "openings": openings,
        "devices": devices,
        "zones": zones,
        "people": (ANN,),
        "programme": Programme(entry_time_s=20.0, exit_time_s=30.0, abort_delay_s=10.0),
    }
    return replaced(site, **(usual | parts))
