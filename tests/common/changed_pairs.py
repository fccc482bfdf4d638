"""A small house in states that differ by one thing each: what must be tested again is known without the program."""

from __future__ import annotations

from typing import Any

from common.houses import CATALOGUE, on_opening, on_wall, pet, two_rooms_and_hall, zone
from wardwright.model.fabric import Wall
from wardwright.model.fixture import Fixture
from wardwright.model.site import Site
from wardwright.questions.compared import State
from wardwright.questions.table import ask
from wardwright.rules.table import check

SOFA = Fixture(
    id="sofa", name="sofa", kind="sofa", storey="ground", centre_m=(8.0, 1.2), size_m=(2.0, 0.9), height_m=1.3
)
"""In the study, with a back high enough to hide floor behind it."""


def house(**parts: Any) -> Site:
    """Two rooms and a hall, a detector in each room, a contact on the front door, a keypad and a control unit."""
    usual: dict[str, Any] = {
        "devices": (
            on_wall("unit", "unit", "north", 5.0, height_m=1.4),
            on_wall("keypad", "keypad", "kitchen-wall", 1.0, side="right", height_m=1.4),
            on_wall("kitchen-movement", "fan", "north", 10.0),
            on_wall("study-movement", "fan", "north", 0.4),
            on_opening("front-contact", "front-door"),
        ),
        "zones": (
            zone(1, "front door", "front-contact", behaviour="entry-exit"),
            zone(2, "kitchen", "kitchen-movement"),
            zone(3, "study", "study-movement"),
        ),
        "fixtures": (SOFA,),
    }
    return two_rooms_and_hall(**(usual | parts))


def state(site: Site) -> State:
    """A site with all that is said of it."""
    return State(site, ask(site, CATALOGUE), check(site, CATALOGUE))


def sofa_moved() -> Site:
    """The sofa stands a metre farther from the south wall."""
    return house(fixtures=(SOFA.model_copy(update={"centre_m": (8.0, 2.2)}),))


def wall_added() -> Site:
    """A wall now stands across the kitchen, before its detector."""
    known = house()
    wall = Wall(id="kitchen-cross", storey="ground", line_m=((0.0, 3.0), (3.0, 3.0)), thickness_m=0.1)
    return known.model_copy(update={"walls": (*known.walls, wall)})


def detector_moved() -> Site:
    """The study's detector now hangs at the other end of its wall."""
    known = house()
    moved = on_wall("study-movement", "fan", "north", 3.6)
    devices = tuple(moved if one.id == moved.id else one for one in known.devices)
    return known.model_copy(update={"devices": devices})


def dog_arrived() -> Site:
    """A big dog that may be in the kitchen."""
    return house(pets=(pet("big-dog", spaces=("kitchen",)),))
