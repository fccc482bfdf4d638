"""Somebody of the household sets the alarm and leaves, or tries to: what keeps it from being set.

The likely case only. While the exit time runs, zones of the way in are left alone; any other that signals keeps the
alarm from being set. What is open when it is set is refused or left out, as the programme says.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import Literal, NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray, painted
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fabric import Space
from wardwright.model.household import Person
from wardwright.model.opening import Opening
from wardwright.model.placement import sides_of_opening
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.trials.arrival import clock_in, heard_devices
from wardwright.trials.barriers import grids_of, standing_floor, watched_floor
from wardwright.trials.household_walk import leaf_of, noticed_on, walk, walked
from wardwright.trials.leaves_opened import Leaves
from wardwright.trials.trips import Trip, ends_of, taken
from wardwright.trials.ways_on_foot import opened_legs
from wardwright.trials.zone_response import Happening, Signal
from wardwright.trials.zone_roles import zone_hearing

Outcome = Literal["set", "kept from setting", "door open too long"]


class Left(NamedTuple):
    """One leaving, played on the control unit."""

    outcome: Outcome
    at_s: float
    """When it is decided: set at the end of the exit time. [s]"""
    by: str | None
    """Id of the device that keeps it from being set."""
    timeline: tuple[Happening, ...]


class LeftOpen(NamedTuple):
    """What follows if one opening is open when the alarm is set."""

    opening: Opening
    is_usual: bool
    """Whether it usually stands so."""
    is_refused: bool
    left_out: tuple[Device, ...]
    """The devices of the zone that is left out: none where setting is refused."""
    space: Space | None
    """The room behind it."""
    watched_share: float
    """Of that room's floor, where the devices that are left surely notice somebody. [-]"""
    watched_by: tuple[str, ...]
    """Ids of those devices."""


def settle(signals: Sequence[Signal], programme: Programme, *, shut_s: float) -> Left:
    """Play signals into a control unit whose exit time runs.

    Parameters
    ----------
    signals : sequence of Signal
        In any order; the clock starts as the alarm is set at the keypad.
    programme : Programme
        The exit time.
    shut_s : float
        When the entry door is shut from outside. [s]

    Returns
    -------
    Left
        What comes of it.

    Examples
    --------
    >>> from wardwright.model.programme import STANDARD_BEHAVIOURS as known
    >>> instant, door = known[0], known[1]
    >>> settle([Signal(4.0, door, "door")], Programme(exit_time_s=30.0), shut_s=12.0).outcome
    'set'
    >>> settle([Signal(4.0, door, "door"), Signal(1.0, instant, "md")], Programme(), shut_s=12.0)[:3]
    ('kept from setting', 1.0, 'md')
    >>> settle([Signal(20.0, door, "door")], Programme(exit_time_s=30.0), shut_s=31.0)[:2]
    ('door open too long', 30.0)
    """
    lines: list[Happening] = []
    ends = programme.exit_time_s
    for signal in sorted(signals, key=lambda one: (one.time_s, one.subject)):
        behaviour = signal.behaviour
        if signal.time_s >= ends:
            continue
        if not behaviour.alarms:
            lines.append(Happening(signal.time_s, "logged", signal.subject))
        elif behaviour.starts_entry or behaviour.allowed_after_entry:
            lines.append(Happening(signal.time_s, "allowed", signal.subject))
        else:
            lines.append(Happening(signal.time_s, "kept from setting", signal.subject))
            return Left("kept from setting", signal.time_s, signal.subject, tuple(lines))
    if shut_s >= ends:
        door = next((one.subject for one in signals if one.behaviour.starts_entry), None)
        lines.append(Happening(ends, "door open too long", door or ""))
        return Left("door open too long", ends, door, tuple(lines))
    return Left("set", ends, None, (*lines, Happening(ends, "set", "")))


def leave(site: Site, catalogue: Catalogue, trip: Trip, *, person: Person, leaves: Leaves = "usual") -> Left:
    """Play one person's leaving, with full hands.

    Parameters
    ----------
    site : Site
        The house, its devices and its programme.
    catalogue : Catalogue
        Sheets and figures.
    trip : Trip
        The way in, which is walked back.
    person : Person
        Who leaves.
    leaves : {"usual", "most"}, default "usual"
        How leaves stand that nobody opens.

    Returns
    -------
    Left
        What comes of it.
    """
    shut = float(taken(catalogue, trip.legs, person).leaving[0])
    found = []
    start, goal = ends_of(site, trip)
    progress = None if trip.control is None else walked(site.bare, catalogue, start, goal=goal)
    route = None if trip.control is None else walk(site.bare, catalogue, start, goal=goal)
    clock = None if progress is None else clock_in(catalogue, trip, person, progress=progress)
    # From the keypad the far side of a leaf on the way in is come to first.
    passed = {} if route is None else {leg.subject: leg.last for leg in opened_legs(route)}
    for device, behaviour in heard_devices(site):
        kind = catalogue.sheet(device.sheet).kind
        if kind == "movement-detector" and clock is not None:
            noticed = noticed_on(
                site.bare, catalogue, device, start=start, goal=goal, leaves=leaves, is_way_back=True
            )
            if noticed.any():
                last = int(np.nonzero(noticed)[0][-1])
                found.append(Signal(float(clock[-1] - clock[last]), behaviour, device.id))
        elif kind == "opening-contact" and leaf_of(device) == trip.door.id:
            opened = shut - trip_shutting(catalogue)
            found.append(Signal(max(0.0, opened), behaviour, device.id))
        elif kind == "opening-contact" and leaf_of(device) in passed and clock is not None:
            found.append(Signal(float(clock[-1] - clock[passed[leaf_of(device)]]), behaviour, device.id))
    return settle(found, site.programme, shut_s=shut)


def trip_shutting(catalogue: Catalogue) -> float:
    """How long the entry door stands open at the likely case: being shut and locked behind one. [s]"""
    return catalogue.figure("shut-door").value


def open_when_setting(site: Site, catalogue: Catalogue) -> tuple[LeftOpen, ...]:
    """What follows, opening by opening, if one with a contact is open as the alarm is set, by id.

    Parameters
    ----------
    site : Site
        The house, its devices and its programme.
    catalogue : Catalogue
        Sheets.

    Returns
    -------
    tuple of LeftOpen
        Entry doors are left out: they are to be opened.
    """
    found = []
    heard = heard_devices(site)
    for device, behaviour in heard:
        leaf = leaf_of(device)
        if catalogue.sheet(device.sheet).kind != "opening-contact" or leaf is None:
            continue
        opening, zone = site.opening(leaf), zone_hearing(site, device.id)
        if opening.is_entry_door or zone is None or not behaviour.alarms:
            continue
        refused = site.programme.if_open_when_setting == "refuse" or not behaviour.may_be_inhibited
        out = () if refused else tuple(one for one, _ in heard if one.id in zone.devices)
        inside = [s for s in sides_of_opening(site, opening) if s and site.space(s).is_protected]
        space = site.space(inside[0]) if inside else None
        share: float = 0.0
        by: tuple[str, ...] = ()
        if space is not None:
            rest = tuple(
                one for one, how in heard if how.alarms and how.signal == "intruder" and one not in out
            )
            share, by = _watched(site.bare, catalogue, space, devices=rest)
        found.append(LeftOpen(opening, opening.habit != "shut", refused, out, space, share, by))
    return tuple(found)


@lru_cache(maxsize=512)
def _watched(
    house: Site, catalogue: Catalogue, space: Space, *, devices: tuple[Device, ...]
) -> tuple[float, tuple[str, ...]]:
    """The share of a room's floor that movement detectors surely notice on, and which they are."""
    room = _floor_of(house, space)
    covered, by = np.zeros_like(room), []
    for device in devices:
        if catalogue.sheet(device.sheet).kind != "movement-detector":
            continue
        low = watched_floor(house, catalogue, device, side="likely").get(space.storey)
        if low is not None and (low & room).any():
            covered |= low & room
            by.append(device.id)
    return float(covered.sum()) / max(1.0, float(room.sum())), tuple(by)


@lru_cache(maxsize=512)
def _floor_of(house: Site, space: Space) -> BoolArray:
    """Where a person's middle can be in a room, on the house's own grid; shared, not to be written to."""
    inside = painted(grids_of(house)[space.storey], shapely.Polygon(space.outline_m))
    floor: BoolArray = inside & standing_floor(house)[space.storey]
    return floor
