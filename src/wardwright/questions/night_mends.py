"""What would let a trip from bed be made without an alarm: each cure tried on the model."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.behaviour_mends import headings_off
from wardwright.questions.zones_at_night import (
    heard_with,
    out_of_night,
    part_set,
    still_noticed_by,
    where_the_unit_is,
)
from wardwright.rules.finding import Mend
from wardwright.rules.kit import NIGHT
from wardwright.trials.barriers import grids_of
from wardwright.trials.leaves_between import states_of
from wardwright.trials.leaves_opened import Leaves
from wardwright.trials.night_rings import ring_on
from wardwright.trials.night_trips import NightTrip
from wardwright.trials.trip_floor import Ends, floor_seen

BY_BED_M = 0.6
"""The height of a bedside table. [m] (assumption)"""
TURN_SPARE_DEG = 8.0
"""How far the edge of a fan is turned beyond the last floor of a trip. [deg] (assumption)"""


class Cure(NamedTuple):
    """A mend, and the site with it."""

    mend: Mend
    after: Site | None
    """With those detectors that were asked about; None: what it brings is not asked."""


def night_mends(site: Site, catalogue: Catalogue, trip: NightTrip, *, leaves: Leaves) -> tuple[Mend, ...]:
    """Cures for a trip that rings, with what they bring.

    Parameters
    ----------
    site : Site
        As it is.
    catalogue : Catalogue
        Sheets and figures.
    trip : NightTrip
        The trip.
    leaves : {"night", "most"}
        How leaves stand where it rings.

    Returns
    -------
    tuple of Mend
        A leaf kept shut; the detector turned; in the morning its zone as one that starts the entry time, or a keyfob
        by the bed; its zones taken out of the night part. Each silences the trip, those of the last kind all
        together. What it brings is how many openings are still noticed with the night part set.
    """
    cures = night_cures(site, catalogue, trip, leaves=leaves)
    return with_gains(site, catalogue, cures, goal=where_the_unit_is(site, catalogue))


def with_gains(
    site: Site, catalogue: Catalogue, cures: tuple[Cure, ...], *, goal: Spot | None
) -> tuple[Mend, ...]:
    """Cures with what they bring: that hangs on where the control unit and all detectors are."""

    def gain(after: Site) -> Estimate | None:
        heard = heard_with(site, catalogue, after)
        return still_noticed_by(site.bare, catalogue, heard, goal=goal)

    return tuple(
        mend if after is None else mend.model_copy(update={"gain": gain(after)}) for mend, after in cures
    )


def night_cures(site: Site, catalogue: Catalogue, trip: NightTrip, *, leaves: Leaves) -> tuple[Cure, ...]:
    """Cures for a trip that rings; the same wherever the control unit and the sounders are.

    Parameters
    ----------
    site : Site
        As it is; of its devices only the detectors count.
    catalogue : Catalogue
        Sheets and figures.
    trip : NightTrip
        The trip.
    leaves : {"night", "most"}
        How leaves stand where it rings.

    Returns
    -------
    tuple of Cure
        As `night_mends` has them.
    """
    found: list[Cure] = []
    ring = ring_on(site, catalogue, trip, leaves=leaves)
    if ring is None:
        return ()
    if leaves == "most":
        found += _kept_shut(site, catalogue, trip)
    found += _turned(site, catalogue, trip, device=ring.device, leaves=leaves)
    if trip.goal == "out":
        found += _starting_entry(site, catalogue, trip, device=ring.device, leaves=leaves)
        found += _keyfob(site, catalogue, trip)
    return (*found, *_taken_out(site, catalogue, trip, leaves=leaves))


def _kept_shut(site: Site, catalogue: Catalogue, trip: NightTrip) -> list[Cure]:
    """Leaves one of which, told to be kept shut, takes the alarm away."""
    return [
        Cure(Mend(action="keep-shut", subject=one.id), None)
        for one in sorted(site.openings, key=lambda one: one.id)
        if one.leaves > 0
        and len(states_of(one)) > 1
        and ring_on(site, catalogue, trip, leaves="most", kept_shut=frozenset({one.id})) is None
    ]


def _turned(
    site: Site, catalogue: Catalogue, trip: NightTrip, *, device: Device, leaves: Leaves
) -> list[Cure]:
    sheet = catalogue.sheet(device.sheet).movement
    if sheet is None or sheet.angle_deg >= 180.0 or trip.ends is None:
        return []
    for heading in _headings_away(site.bare, catalogue, device, ends=trip.ends, angle_deg=sheet.angle_deg):
        there = device.model_copy(update={"heading_deg": heading})
        devices = tuple(there if one.id == device.id else one for one in site.devices)
        after = site.model_copy(update={"devices": devices})
        if ring_on(after, catalogue, trip, leaves=leaves) is None:
            mend = Mend(action="turn-device", subject=device.id, values=(("heading_deg", heading),))
            return [Cure(mend, after)]
    return []


def _headings_away(
    house: Site, catalogue: Catalogue, device: Device, *, ends: Ends, angle_deg: float
) -> tuple[float, ...]:
    """Headings that turn the fan of a detector off all floor of a trip, the least turn first. [deg]"""
    seen = floor_seen(house, catalogue, device, ends=ends)
    cells = tuple((storey, mask.tobytes()) for storey, mask in seen.items())
    return _headings_off(house, device, cells, half=angle_deg / 2.0 + TURN_SPARE_DEG)


@lru_cache(maxsize=512)
def _headings_off(
    house: Site, device: Device, cells: tuple[tuple[str, bytes], ...], *, half: float
) -> tuple[float, ...]:
    """By the floor itself: most trips differ in floor that the detector does not see."""
    middles = []
    for storey, mask in cells:
        grid = grids_of(house)[storey]
        middles.append(grid.centres()[np.frombuffer(mask, dtype=np.bool_).reshape(grid.shape)])
    return headings_off(house, device, np.concatenate([np.zeros((0, 2)), *middles]), halves=(half,))


def _starting_entry(
    site: Site, catalogue: Catalogue, trip: NightTrip, *, device: Device, leaves: Leaves
) -> list[Cure]:
    """The zone of a device as one that starts the entry time at night: it is unset before that ends."""
    zone = _zone_at_night(site, device)
    entry = next((one for one in site.behaviours if one.starts_entry and not one.is_always_active), None)
    if zone is None or entry is None:
        return []
    after = part_set(site, zone, behaviour=entry.id)
    if ring_on(after, catalogue, trip, leaves=leaves) is not None:
        return []
    mend = Mend(action="behave-part-set", subject=zone.id, values=(("behaviour", entry.id),))
    return [Cure(mend, after)]


def _keyfob(site: Site, catalogue: Catalogue, trip: NightTrip) -> list[Cure]:
    """A keyfob by the bed: it is unset before anybody gets up."""
    sheet = next((one.id for one in catalogue.sheets if one.kind == "keyfob"), None)
    if sheet is None or trip.ends is None:
        return []
    bed, at = trip.ends.rooms[0], trip.ends.start
    values = (
        ("sheet", sheet), ("on", "free"), ("storey", at.storey), ("x_m", round(at.x, 2)), ("y_m", round(at.y, 2)),
        ("height_m", BY_BED_M),
    )  # fmt: skip
    return [Cure(Mend(action="add-device", subject=bed.id, values=values), site)]


def _taken_out(site: Site, catalogue: Catalogue, trip: NightTrip, *, leaves: Leaves) -> list[Cure]:
    """The zones that are taken out of the night part, one after the other, until the trip is silent."""
    after, out = site, []
    while (ring := ring_on(after, catalogue, trip, leaves=leaves)) is not None:
        zone = _zone_at_night(after, ring.device)
        if zone is None or NIGHT not in zone.parts:
            return []  # it is always active: no part helps
        out.append(zone.id)
        after = out_of_night(after, zone)
    return [
        Cure(Mend(action="change-parts", subject=zone, values=(("without", NIGHT),)), after) for zone in out
    ]


def _zone_at_night(site: Site, device: Device) -> Zone | None:
    """The zone that hears a device with the night part set: the first by number."""
    always = {one.id for one in site.behaviours if one.is_always_active}
    return next(
        (
            one
            for one in sorted(site.zones, key=lambda one: one.number)
            if device.id in one.devices and (NIGHT in one.parts or one.behaviour in always)
        ),
        None,
    )
