"""Which zone behaviour each device should have, derived from the plan and from how the household comes and goes."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, OpeningMount
from wardwright.model.programme import Behaviour, Zone
from wardwright.model.site import Site
from wardwright.rules.kit import FULL_SET
from wardwright.trials.arrival_band import SeenBand, doors_passed, seen_of_band
from wardwright.trials.leaves_between import states_of
from wardwright.trials.trips import Trip, trips_to

Role = Literal[
    "instant",
    "entry-exit",
    "entry-route",
    "always-on",
    "log-only",
    "tamper",
    "hold-up",
    "fire",
    "water",
    "fault",
]
"""What a zone's behaviour amounts to, whatever it is called."""

SPECK_M2 = 0.02
"""Less of the arrival band than this is no sight of it: two cells. [m2] (derived here)"""
BY_KIND: dict[DeviceKind, Role] = {
    "glass-break-detector": "instant",
    "smoke-alarm": "fire",
    "heat-alarm": "fire",
    "co-alarm": "fire",
    "water-detector": "water",
    "hold-up-button": "hold-up",
}
"""Kinds whose behaviour no plan changes."""


class Derived(NamedTuple):
    """What one device's behaviour is to be, and the number that decides it."""

    device: Device
    kind: DeviceKind
    role: Role
    """With the leaves in that habitual state that lets most be seen."""
    seen: SeenBand | None
    """For a movement detector."""
    opened: tuple[float, float, float] | None
    """For a contact: on how many ways in its leaf is opened: usually, at least, at most. [-]"""


def role_of(behaviour: Behaviour) -> Role:
    """What a behaviour amounts to.

    Examples
    --------
    >>> from wardwright.model.programme import STANDARD_BEHAVIOURS
    >>> [role_of(one) for one in STANDARD_BEHAVIOURS] == [one.id for one in STANDARD_BEHAVIOURS]
    True
    """
    if behaviour.signal != "intruder":
        return behaviour.signal
    if not behaviour.alarms:
        return "log-only"
    if behaviour.starts_entry:
        return "entry-exit"
    if behaviour.allowed_after_entry:
        return "entry-route"
    return "always-on" if behaviour.is_always_active else "instant"


def derived(site: Site, catalogue: Catalogue, controls: tuple[Device, ...]) -> tuple[Derived, ...]:
    """What the behaviour of each detector, alarm and hold-up button is to be, by id.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets.
    controls : tuple of Device
        The keypads, as `controls_of` gives them.

    Returns
    -------
    tuple of Derived
        Devices of other kinds are no zones of the alarm and are left out.

    Raises
    ------
    NotComputable
        If there is no entry door.
    """
    found = []
    for device in sorted(site.devices, key=lambda one: one.id):
        one = _derived(site.bare, catalogue, device, controls=controls)
        if one is not None:
            found.append(one)
    return tuple(found)


@lru_cache(maxsize=1024)
def _derived(
    house: Site, catalogue: Catalogue, device: Device, *, controls: tuple[Device, ...]
) -> Derived | None:
    kind = catalogue.sheet(device.sheet).kind
    if kind == "movement-detector":
        seen = seen_of_band(house, catalogue, device, controls=controls)
        role: Role = "entry-route" if seen.high > SPECK_M2 else "instant"
        return Derived(device, kind, role, seen, None)
    if kind in ("opening-contact", "shock-detector"):
        return _on_a_leaf(house, device, kind, trips=trips_to(house, catalogue, controls))
    if kind in BY_KIND:
        return Derived(device, kind, BY_KIND[kind], None, None)
    return None


def _on_a_leaf(house: Site, device: Device, kind: DeviceKind, *, trips: tuple[Trip, ...]) -> Derived:
    mount = device.mount
    if not isinstance(mount, OpeningMount):
        return Derived(device, kind, "instant", None, (0.0, 0.0, 0.0))
    doors = sum(1.0 for trip in trips if trip.door.id == mount.opening)
    if doors:
        # A slammed leaf shakes a shock detector after the contact has told that somebody comes in.
        role: Role = "entry-exit" if kind == "opening-contact" else "entry-route"
        return Derived(device, kind, role, None, (doors, doors, doors))
    opening = house.opening(mount.opening)
    passes = sum(1.0 for trip in trips if opening.id in doors_passed((trip,)))
    states = states_of(opening)
    usual, low, high = (
        passes if is_opened else 0.0
        for is_opened in (opening.habit == "shut", states == ("shut",), "shut" in states)
    )
    return Derived(device, kind, "entry-route" if high else "instant", None, (usual, low, high))


def zone_hearing(site: Site, device_id: str) -> Zone | None:
    """The zone that hears a device when nobody is in: the first by number, those of the full set before others."""
    has_full = any(part.id == FULL_SET for part in site.parts)

    def rank(zone: Zone) -> tuple[bool, int]:
        is_active = not has_full or FULL_SET in zone.parts or site.behaviour(zone.behaviour).is_always_active
        return (not is_active, zone.number)

    return min((zone for zone in site.zones if device_id in zone.devices), key=rank, default=None)
