"""The household's own trips: in by an entry door to the keypad, and out again; how long each person takes.

The entry time starts as the leaf opens, so unlocking it does not count on the way in; the exit time starts as the
alarm is set at the keypad, and ends when the door is shut from outside.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.device import Device
from wardwright.model.household import Person
from wardwright.model.opening import Opening
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import BODY_RADIUS_M, WAY_IN_STEP_M, Route, Spot, way_in_spot
from wardwright.rules.entry_routes import keypads, place_before, routes_to
from wardwright.trials.draws import Cases, Input, cases_of
from wardwright.trials.paces import walking_pace
from wardwright.trials.watchers import devices_of

SOMEBODY = Person(id="somebody", name="somebody slow", pace="slow")
"""Who is taken to come in where nobody is named: the most cautious word."""


class Legs(NamedTuple):
    """What is walked on a trip: hashable, so that times are remembered by it."""

    threshold_m: float
    """Through the doorway itself. [m]"""
    flat_m: float
    stairs_m: float
    inside_doors: int
    """Leaves that are opened on the way."""
    at_keypad: bool
    """Whether a code is entered; otherwise a keyfob is pressed."""


class Trip(NamedTuple):
    """The way between one entry door and the place where the alarm is set and unset."""

    door: Opening
    control: Device | None
    """The keypad, or control unit with one; None: a keyfob, pressed at the door."""
    route: Route | None
    """From the door inward; None where there is no way, or none is needed."""
    legs: Legs


def ends_of(site: Site, trip: Trip) -> tuple[Spot, Spot]:
    """Where one stands inside the entry door, and before the keypad; with a keyfob at the door both times."""
    start = way_in_spot(site, trip.door)
    return start, start if trip.control is None else place_before(site, trip.control)


class Taken(NamedTuple):
    """How long one person takes, in every row of the cases. [s]"""

    person: Person
    cases: Cases
    arriving: FloatArray
    """From the leaf opening to the alarm being unset."""
    leaving: FloatArray
    """From the alarm being set to the door being shut outside."""


def controls_of(site: Site, catalogue: Catalogue) -> tuple[Device, ...]:
    """Where the alarm is set and unset, by id: keypads; none where there are only keyfobs.

    Raises
    ------
    NotComputable
        If there is neither keypad nor keyfob.
    """
    try:
        return keypads(site, catalogue)
    except NotComputable:
        if not devices_of(site, catalogue, "keyfob"):
            raise
        return ()


def trips(site: Site, catalogue: Catalogue) -> tuple[Trip, ...]:
    """The way in from each entry door, by the doors' ids.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets, and an ordinary pace to choose the way by.

    Returns
    -------
    tuple of Trip
        To the keypad that is reached first. Where there is no keypad but a keyfob, nothing is walked.

    Raises
    ------
    NotComputable
        If there is no entry door, or neither keypad nor keyfob.
    """
    return trips_to(site.bare, catalogue, controls_of(site, catalogue))


@lru_cache(maxsize=256)
def trips_to(house: Site, catalogue: Catalogue, controls: tuple[Device, ...]) -> tuple[Trip, ...]:
    """As `trips`, on the bare house with its keypads."""
    if not controls:
        doors = sorted((one for one in house.openings if one.is_entry_door), key=lambda one: one.id)
        if not doors:
            raise NotComputable("no opening is told to be an entry door")
        return tuple(
            Trip(door, None, None, Legs(_threshold(house, door), 0.0, 0.0, 0, at_keypad=False))
            for door in doors
        )
    found = []
    for one in routes_to(house, catalogue, controls):
        legs = one.route.legs if one.route is not None else ()
        flat = sum(leg.length for leg in legs if leg.kind == "floor")
        stairs = sum(leg.length for leg in legs if leg.kind.startswith("stairs"))
        doors_opened = sum(1 for leg in legs if leg.kind == "door" and leg.last > leg.first)
        told = Legs(_threshold(house, one.door), flat, stairs, doors_opened, at_keypad=True)
        found.append(Trip(one.door, one.keypad, one.route, told))
    return tuple(found)


def _threshold(house: Site, door: Opening) -> float:
    """From just outside a doorway to where a way in begins. [m]"""
    return house.wall(door.wall).thickness_m + 2.0 * (BODY_RADIUS_M + WAY_IN_STEP_M)


PACE = "pace"
LOAD = "load"
ON_STAIRS = "pace on stairs"
DOORS = "inside doors"
UNLOCK = "unlock"
SHUT = "shut"
PUT_DOWN = "put down"
CODE = "code"
KEYFOB = "keyfob"


def household(site: Site) -> tuple[Person, ...]:
    """Who sets and unsets the alarm, by id; somebody slow where nobody is named."""
    known = (one for one in site.people if one.knows_code)
    return tuple(sorted(known, key=lambda one: one.id)) or (SOMEBODY,)


@lru_cache(maxsize=512)
def taken(catalogue: Catalogue, legs: Legs, person: Person) -> Taken:
    """How long one person takes on a trip, with shopping in both hands.

    Parameters
    ----------
    catalogue : Catalogue
        Figures.
    legs : Legs
        What is walked.
    person : Person
        Who.

    Returns
    -------
    Taken
        Both ways, in every row.
    """
    cases = cases_of(_inputs(catalogue, legs, person))
    rows = cases.rows
    pace = rows[f"{PACE} of {person.id}"] * rows[LOAD]
    through, nothing = legs.threshold_m / pace, 0.0 * pace
    walk = legs.flat_m / pace
    if legs.stairs_m > 0.0:
        walk = walk + legs.stairs_m / (pace * rows[ON_STAIRS])
    if legs.inside_doors:
        walk = walk + legs.inside_doors * rows[DOORS]
    if not legs.at_keypad:
        # Set and unset from outside or on the threshold: nothing is left to walk while a time runs.
        return Taken(person, cases, through + rows[KEYFOB], nothing)
    arriving = through + rows[SHUT] + walk + rows[PUT_DOWN] + rows[CODE]
    return Taken(person, cases, arriving, walk + rows[UNLOCK] + through + rows[SHUT])


def _inputs(catalogue: Catalogue, legs: Legs, person: Person) -> tuple[Input, ...]:
    def default(key: str, name: str, figure: str) -> Input:
        return Input(key, name, catalogue.figure(figure), "default")

    pace: Figure = walking_pace(catalogue, person.pace)
    known: Basis = "default" if person is SOMEBODY else person.basis_of("pace")
    inputs = [
        Input(f"{PACE} of {person.id}", f"pace of {person.name}", pace, known),
        default(LOAD, "pace with shopping", "load-share"),
    ]
    if legs.stairs_m > 0.0:
        inputs.append(default(ON_STAIRS, "pace on stairs", "stairs-share"))
    if legs.inside_doors:
        inputs.append(default(DOORS, "opening inside doors", "pass-door"))
    if legs.at_keypad:
        inputs += [
            default(UNLOCK, "unlocking the door", "unlock-door"),
            default(SHUT, "shutting the door", "shut-door"),
            default(PUT_DOWN, "putting shopping down", "put-down"),
            default(CODE, "entering the code", "code-entry"),
        ]
    else:
        inputs.append(default(KEYFOB, "pressing the keyfob", "keyfob-press"))
    return tuple(inputs)
