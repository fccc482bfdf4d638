"""Zones in and out of the night part, and what is noticed then."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.still_protected import openings_noticed_by
from wardwright.rules.finding import Mend
from wardwright.rules.kit import NIGHT
from wardwright.trials.alarm import DETECTORS, alarm_of
from wardwright.trials.night_rings import ring_on
from wardwright.trials.night_trips import NightTrip
from wardwright.trials.watchers import control_units, heard_in
from wardwright.trials.ways_on_foot import spot_of


def still_noticed(site: Site, catalogue: Catalogue) -> Estimate | None:
    """How many openings are noticed at night on a changed site. [openings]"""
    heard = heard_at_night(site, catalogue)
    return still_noticed_by(site.bare, catalogue, heard, goal=where_the_unit_is(site, catalogue))


def where_the_unit_is(site: Site, catalogue: Catalogue) -> Spot | None:
    """Where somebody stands at the control unit; None without one."""
    return next((spot_of(site, unit) for unit in control_units(site, catalogue)), None)


def heard_at_night(site: Site, catalogue: Catalogue) -> tuple[Device, ...]:
    """The detectors that give an alarm at night: what is noticed hangs on them, and on where the control unit is."""
    heard = alarm_of(site, catalogue, NIGHT).heard
    return tuple(device for device, behaviour in heard if behaviour.alarms)


@lru_cache(maxsize=128)
def heard_with(site: Site, catalogue: Catalogue, after: Site) -> tuple[Device, ...]:
    """The detectors of a site that give an alarm at night once some of them and the zones are as after a change.

    Parameters
    ----------
    site : Site
        With all its detectors.
    catalogue : Catalogue
        Sheets.
    after : Site
        The same changed, with some of the detectors only.

    Returns
    -------
    tuple of Device
        In the order of ids.
    """
    behaviours, changed = heard_in(after, NIGHT), {one.id: one for one in after.devices}
    return tuple(
        changed.get(device.id, device)
        for device in sorted(site.devices, key=lambda one: one.id)
        if catalogue.sheet(device.sheet).kind in DETECTORS
        and device.id in behaviours
        and behaviours[device.id].alarms
    )


def still_noticed_by(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, goal: Spot | None
) -> Estimate | None:
    """How many openings some detectors notice somebody come in by who goes to the control unit. [openings]"""
    return None if goal is None else openings_noticed_by(house, catalogue, devices, goal=goal)


def more_at_night(
    site: Site, catalogue: Catalogue, trips: Sequence[NightTrip], *, now: Estimate
) -> tuple[Mend, ...]:
    """Zones that could be set at night, too: more openings are noticed, and no trip rings that does not ring now.

    Parameters
    ----------
    site : Site
        As it is.
    catalogue : Catalogue
        Sheets and figures.
    trips : sequence of NightTrip
        The trips of the household.
    now : Estimate
        How many openings are noticed now. [openings]

    Returns
    -------
    tuple of Mend
        Each with how many are noticed then, most first. Each was tried on all trips, with leaves in every habit.
    """
    found = []
    silent = [one for one in trips if ring_on(site, catalogue, one, leaves="most") is None]
    for zone in site.zones:
        if NIGHT in zone.parts or site.behaviour(zone.behaviour).is_always_active:
            continue
        after = _with_zone(site, zone.model_copy(update={"parts": (*zone.parts, NIGHT)}))
        still = still_noticed(after, catalogue)
        if still is None or still.value <= now.value:
            continue
        if all(ring_on(after, catalogue, one, leaves="most") is None for one in silent):
            found.append(Mend(action="add-to-part", subject=zone.id, values=(("part", NIGHT),), gain=still))
    found.sort(key=lambda one: (-(one.gain.value if one.gain else 0.0), one.subject))
    return tuple(found)


def _with_zone(site: Site, zone: Zone) -> Site:
    return site.model_copy(update={"zones": tuple(zone if one.id == zone.id else one for one in site.zones)})


@lru_cache(maxsize=64)
def out_of_night(site: Site, zone: Zone) -> Site:
    """A site with one zone taken out of the night part; one object, since mends of many trips try the same."""
    parts = tuple(part for part in zone.parts if part != NIGHT)
    return _with_zone(site, zone.model_copy(update={"parts": parts}))


@lru_cache(maxsize=64)
def part_set(site: Site, zone: Zone, *, behaviour: str) -> Site:
    """A site whose zone behaves otherwise when part set; in the full part nothing changes."""
    return _with_zone(site, zone.model_copy(update={"behaviour_part_set": behaviour}))
