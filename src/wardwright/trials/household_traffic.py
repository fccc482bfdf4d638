"""How often the household sets off each detector on an ordinary day, whether the alarm is set or not."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.household import Person
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.rules.kit import devices_of
from wardwright.trials.home_goals import goals_from, middle_of
from wardwright.trials.household_walk import leaf_of, noticed_on
from wardwright.trials.trips import controls_of, ends_of, trips_to

WAKING_S = 16.0 * 3600.0
"""How long of a day somebody is up. [s] (assumption)"""
WINDOW_SHARE = 0.25
"""How much less often a window is opened than a door. [-] (assumption)"""
DOOR_SIGNALS = 2.0
"""A contact tells that its leaf opens, and that it shuts. [-]"""
STAY_USES = ("living", "dining", "kitchen", "study", "conservatory", "bedroom")
"""Rooms that people stay in. (assumption)"""
OUTINGS, AT_HOME, IN_ROOM = "outings-a-day", "walks-at-home-a-day", "activations-in-a-used-room"
NOBODY_KNOWN, DOORS = "activations-a-day", "doors-a-day"


class Traffic(NamedTuple):
    """What a device sends on an ordinary day besides its check-ins."""

    shares: tuple[tuple[str, float], ...]
    """Ids of figures, and how often each counts; none: it sends when something is wrong only."""
    most: float
    """Its own sleep lets it send no more than this in a day. [d-1]"""
    is_known: bool
    """Whether it rests on the household's own walks rather than on a default."""


def traffic_of(site: Site, catalogue: Catalogue, device: Device) -> Traffic:
    """How often one device sends on an ordinary day.

    Parameters
    ----------
    site : Site
        The house and who lives there.
    catalogue : Catalogue
        Sheets and figures.
    device : Device
        Any device.

    Returns
    -------
    Traffic
        By the household's walks past it where it is known who lives there, else a stated default.
    """
    sheet = catalogue.sheet(device.sheet)
    match sheet.kind:
        case "movement-detector":
            sleep = 0.0 if sheet.movement is None else sheet.movement.sleep_s
            most = WAKING_S / sleep if sleep > 0.0 else float("inf")
            if not site.people:
                return Traffic(((NOBODY_KNOWN, 1.0),), most, is_known=False)
            return Traffic(_past(site, catalogue, device), most, is_known=True)
        case "opening-contact":
            return _at_a_leaf(site, device)
        case "keypad" | "keyfob":
            # Set when going out, unset when coming in; by one of the things that can.
            same = sum(1 for _ in devices_of(site, catalogue, sheet.kind))
            people = max(1, len(site.people))
            return Traffic(((OUTINGS, 2.0 * people / same),), float("inf"), is_known=bool(site.people))
        case _:
            return Traffic((), float("inf"), is_known=True)


def _at_a_leaf(site: Site, device: Device) -> Traffic:
    never = float("inf")
    leaf = next((one for one in site.openings if one.id == leaf_of(device)), None)
    doors = sum(1 for one in site.openings if one.is_entry_door)
    if leaf is not None and leaf.is_entry_door and site.people:
        shares = ((OUTINGS, 2.0 * DOOR_SIGNALS * len(site.people) / doors),)
        return Traffic(shares, never, is_known=True)
    is_window = leaf is not None and leaf.kind not in ("door", "garage-door")
    return Traffic(((DOORS, DOOR_SIGNALS * (WINDOW_SHARE if is_window else 1.0)),), never, is_known=False)


def _past(site: Site, catalogue: Catalogue, device: Device) -> tuple[tuple[str, float], ...]:
    """The household's walks that a movement detector possibly notices."""
    people = tuple(sorted(site.people, key=lambda one: one.id))
    try:
        controls = controls_of(site, catalogue)
    except NotComputable:
        controls = None
    return _walks_past(site.bare, catalogue, device, people=people, controls=controls)


@lru_cache(maxsize=512)
def _walks_past(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    people: tuple[Person, ...],
    controls: tuple[Device, ...] | None,
) -> tuple[tuple[str, float], ...]:
    """By who lives there and the keypads, where there is anything that unsets it."""
    out = 0.0
    try:
        ways = () if controls is None else trips_to(house, catalogue, controls)
    except NotComputable:
        ways = ()
    for trip in ways:
        if trip.control is not None:
            start, goal = ends_of(house, trip)
            out += 2.0 * len(people) / len(ways) * _passes(house, catalogue, device, start=start, goal=goal)
    home = 0.0
    for person in people:
        bed = next((space for space in house.spaces if space.id == person.bed), None)
        if bed is not None:
            for goal in goals_from(house, bed):
                home += _passes(house, catalogue, device, start=middle_of(bed), goal=goal)
    at = standing(house, device)
    own = space_at(house, at.storey, (at.x_m, at.y_m))
    beds = {person.bed for person in people}
    is_used = own is not None and own.use in STAY_USES and (own.use != "bedroom" or own.id in beds)
    found = ((OUTINGS, out), (AT_HOME, home), (IN_ROOM, float(is_used)))
    return tuple((name, count) for name, count in found if count > 0.0)


@lru_cache(maxsize=4096)
def _passes(house: Site, catalogue: Catalogue, device: Device, *, start: Spot, goal: Spot) -> int:
    """1 where a walk is possibly noticed by a detector, else 0."""
    return int(bool(noticed_on(house, catalogue, device, start=start, goal=goal).any()))
