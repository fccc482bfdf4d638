"""Houses for the rules with codes PRG."""

from __future__ import annotations

from typing import Any

from common.houses import (
    on_opening,
    on_wall,
    one_room,
    opening,
    person,
    standing_free,
    two_rooms_and_hall,
    zone,
)
from common.rule_houses.form import Houses
from wardwright.model.place import Place
from wardwright.model.programme import STANDARD_BEHAVIOURS, Behaviour, Programme, Response
from wardwright.model.site import Site

DOOR = opening("door", "south", 2.65, is_entry_door=True)
CONTACT = on_opening("door-contact", "door")
ENTRY = zone(1, "Hall door", "door-contact", behaviour="entry-exit")
US = Place(rule_pack="us", country="US")
BRITISH = Place(rule_pack="uk-eu", country="GB")
WAITING = Behaviour(id="waiting", name="waiting", delays_message=True)
KEYPAD = on_wall("keypad", "keypad", "kitchen-wall", 1.0, side="right", height_m=1.3)
BACK_DOOR = opening("back-door", "north", 5.25)
BACK_CONTACT = on_opening("back-contact", "back-door")
TWO_DOORS = (*two_rooms_and_hall().openings, BACK_DOOR)


def timed(place: Place = US, **times: Any) -> Site:
    """One room with an entry door, and times that somebody told."""
    return one_room(
        place=place, openings=(DOOR,), devices=(CONTACT,), zones=(ENTRY,), programme=Programme(**times)
    )


def waiting(delay_s: float, behaviour: str = "waiting") -> Site:
    return one_room(
        devices=(on_wall("fan", "fan", "south", 2.65),),
        zones=(zone(1, "Living movement", "fan", behaviour=behaviour),),
        behaviours=(*STANDARD_BEHAVIOURS, WAITING),
        programme=Programme(abort_delay_s=delay_s),
    )


def fire_zone(*responses: Response, **facts: Any) -> Site:
    return one_room(
        devices=(standing_free("smoke", "fan", 2.5, 2.0),),
        zones=(zone(1, "Living smoke", "smoke", behaviour="fire"),),
        programme=Programme(responses=responses, **facts),
    )


def two_doors(behaviour: str) -> Site:
    return two_rooms_and_hall(
        openings=TWO_DOORS,
        devices=(KEYPAD, on_opening("front-contact", "front-door"), BACK_CONTACT),
        zones=(
            zone(1, "Hall back door", "back-contact", behaviour=behaviour),
            zone(2, "Hall front door", "front-contact", behaviour="entry-exit"),
        ),
    )


def users(count: int, **parts: Any) -> Site:
    unit = on_wall("unit", "unit", "south", 2.65, height_m=1.5)
    return one_room(devices=(unit,), people=tuple(person(f"P{i}") for i in range(count)), **parts)


HOUSES: dict[str, Houses] = {
    "PRG101": Houses(
        fires=timed(BRITISH, entry_time_s=60.0), silent=timed(BRITISH, entry_time_s=45.0), cannot_run=timed(BRITISH)
    ),
    "PRG102": Houses(
        fires=timed(exit_time_s=30.0),
        silent=timed(exit_time_s=45.0),
        cannot_run=timed(BRITISH, exit_time_s=30.0),
    ),
    "PRG103": Houses(
        fires=timed(entry_time_s=50.0, abort_delay_s=30.0),
        silent=timed(entry_time_s=30.0, abort_delay_s=30.0),
        cannot_run=timed(entry_time_s=50.0),
    ),
    "PRG104": Houses(fires=waiting(30.0), silent=waiting(30.0, "instant"), cannot_run=one_room()),
    "PRG105": Houses(
        fires=timed(BRITISH, sounding_time_s=1200.0),
        silent=timed(BRITISH, sounding_time_s=900.0),
        cannot_run=timed(sounding_time_s=900.0),
    ),
    "PRG106": Houses(
        fires=fire_zone(Response(signal="fire", state="unset", sounders="none", message=True)),
        silent=fire_zone(),
        cannot_run=one_room(),
    ),
    "PRG107": Houses(fires=two_doors("entry-exit"), silent=two_doors("instant"), cannot_run=two_rooms_and_hall()),
    "PRG108": Houses(fires=users(17), silent=users(16), cannot_run=one_room()),
    "PRG109": Houses(
        fires=timed(abort_delay_s=60.0),
        silent=timed(abort_delay_s=45.0),
        cannot_run=timed(BRITISH, abort_delay_s=60.0),
    ),
}  # fmt: skip
