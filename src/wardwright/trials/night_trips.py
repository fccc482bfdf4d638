"""The household's trips while a part is set at night: from bed in the night, and out in the morning.

Nobody unsets the alarm on a trip in the night; in the morning it is unset at the keypad that is reached first, or
with a keyfob that is kept by the bed, before anybody goes to a door.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, NamedTuple

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fabric import Space
from wardwright.model.household import Person
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in, space_at, standing
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.rules.entry_routes import place_before
from wardwright.rules.kit import NIGHT
from wardwright.trials.home_goals import TOILETS, middle_of, rooms_by
from wardwright.trials.household_walk import walk
from wardwright.trials.trip_floor import Ends
from wardwright.trials.trips import controls_of
from wardwright.trials.watchers import devices_of
from wardwright.trials.ways_in import leads_outside

Goal = Literal["toilet", "kitchen", "child", "out", "astray"]
"""What somebody gets up for; `out`: through a door in the morning; `astray`: where they are told not to be."""


class NightTrip(NamedTuple):
    """One trip of one person from bed."""

    person: Person
    goal: Goal
    place: Space | Opening
    """The room that they go to, or the door that they go out by."""
    ends: Ends | None
    """The walk while the part is set; None: nothing is walked, the alarm is unset by the bed."""
    control: Device | None = None
    """In the morning the keypad that it ends at."""


def night_trips(site: Site, catalogue: Catalogue) -> tuple[NightTrip, ...]:
    """Every trip from bed of everybody who lives there, by person, goal and place.

    Parameters
    ----------
    site : Site
        The house, its people and its keypads.
    catalogue : Catalogue
        Sheets and figures.

    Returns
    -------
    tuple of NightTrip
        To the nearest toilet and kitchen, for who is no child to each child's bed, and out by each door. Where
        somebody is not to be by what is told of them is no trip of theirs.
    """
    found: list[NightTrip] = []
    for person in sorted(site.people, key=lambda one: one.id):
        bed = _bed_of(site, person)
        if bed is not None:
            found += _from_bed(site, catalogue, person, bed=bed)
    return tuple(found)


def wrong_turns_at_night(site: Site) -> tuple[NightTrip, ...]:
    """The trips from bed of everybody who lives there to each space where they are told not to be.

    Parameters
    ----------
    site : Site
        The house and its people.

    Returns
    -------
    tuple of NightTrip
        By person and space; none where nobody is told of such a space.
    """
    found: list[NightTrip] = []
    for person in sorted(site.people, key=lambda one: one.id):
        bed = _bed_of(site, person)
        if bed is None:
            continue
        found += [
            _to_room(person, bed, goal="astray", room=space)
            for space in sorted(site.spaces, key=lambda one: one.id)
            if space.is_protected and not person.may_be_in(space.id, NIGHT)
        ]
    return tuple(found)


def _bed_of(site: Site, person: Person) -> Space | None:
    """The room of ours where somebody sleeps who lives there."""
    if person.comes != "lives":
        return None
    return next((one for one in site.spaces if one.id == person.bed and one.is_protected), None)


def _to_room(person: Person, bed: Space, *, goal: Goal, room: Space) -> NightTrip:
    return NightTrip(person, goal, room, Ends(middle_of(bed), middle_of(room), (bed, room)))


def _from_bed(site: Site, catalogue: Catalogue, person: Person, *, bed: Space) -> list[NightTrip]:
    found = []
    wanted: tuple[tuple[Goal, tuple[str, ...]], ...] = (("toilet", TOILETS), ("kitchen", ("kitchen",)))
    for goal, uses in wanted:
        rooms = (one for one in rooms_by(site.bare, bed, uses) if person.may_be_in(one.id, NIGHT))
        nearest = list(rooms)[:1]
        found += [_to_room(person, bed, goal=goal, room=room) for room in nearest if room.id != bed.id]
    if not person.is_child:
        beds = {one.bed for one in site.people if one.is_child and one.bed != bed.id}
        rooms = (one for one in site.spaces if one.id in beds and one.is_protected)
        found += [
            _to_room(person, bed, goal="child", room=one) for one in sorted(rooms, key=lambda one: one.id)
        ]
    if person.knows_code:
        found += [_out(site, catalogue, person, bed=bed, door=door) for door in doors_out(site)]
    return found


def doors_out(site: Site) -> tuple[Opening, ...]:
    """The doors that somebody may go out by in the morning, by id: entry doors, and others that lead outside."""
    return _doors_out(site.bare)


@lru_cache(maxsize=64)
def _doors_out(site: Site) -> tuple[Opening, ...]:
    return tuple(
        one
        for one in sorted(site.openings, key=lambda one: one.id)
        if one.kind in ("door", "garage-door")
        and one.hinge != "fixed"
        and is_way_in(site, one)
        and leads_outside(site, one)
    )


def _out(site: Site, catalogue: Catalogue, person: Person, *, bed: Space, door: Opening) -> NightTrip:
    """In the morning: to the keypad that is reached first, by which the door is reached unset."""
    start = middle_of(bed)
    if _is_keyfob_in(site, catalogue, bed):
        return NightTrip(person, "out", door, None)
    try:
        controls = controls_of(site, catalogue)
    except NotComputable:
        # Nobody can unset it: the door is walked to as it is.
        return NightTrip(person, "out", door, Ends(start, way_in_spot(site, door), (bed,)))
    nearest = _nearest(site.bare, catalogue, start, controls=controls)
    if nearest is None:
        return NightTrip(person, "out", door, None)
    keypad, place = nearest
    return NightTrip(person, "out", door, Ends(start, place, (bed,)), keypad)


def _is_keyfob_in(site: Site, catalogue: Catalogue, bed: Space) -> bool:
    """Whether a keyfob is kept in a bedroom."""
    for one in devices_of(site, catalogue, "keyfob"):
        at = standing(site, one)
        space = space_at(site, at.storey, (at.x_m, at.y_m))
        if space is not None and space.id == bed.id:
            return True
    return False


@lru_cache(maxsize=256)
def _nearest(
    house: Site, catalogue: Catalogue, start: Spot, *, controls: tuple[Device, ...]
) -> tuple[Device, Spot] | None:
    """The keypad that is reached first, and where one stands before it; None where there are only keyfobs."""
    ways = []
    for one in controls:
        place = place_before(house, one)
        route = walk(house, catalogue, start, goal=place)
        if route is not None:
            ways.append((float(route.clock[-1]), one.id, one, place))
    if not ways:
        return (controls[0], place_before(house, controls[0])) if controls else None
    _, _, keypad, place = min(ways, key=lambda one: one[:2])
    return keypad, place
