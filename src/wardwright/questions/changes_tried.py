"""What could be changed about an alarm for one way in: each change as what a race would then be run against.

No changed site is made up for what leaves the house as it is: a race hangs on the alarm and on where it goes.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from contextlib import suppress
from functools import lru_cache
from typing import NamedTuple

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount, WallMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.estimate import Estimate
from wardwright.model.fabric import Space
from wardwright.model.opening import Opening
from wardwright.model.placement import sides_of_opening, space_at, standing
from wardwright.model.programme import STANDARD_BEHAVIOURS, Behaviour, Zone
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.questions.glass_watch_tried import watches_to_add
from wardwright.questions.unit_elsewhere import best_elsewhere
from wardwright.rules.at_the_opening import is_on, notices_at_the_opening
from wardwright.rules.kit import is_instant
from wardwright.rules.wall_spots import wall_spots
from wardwright.trials.alarm import Alarm, alarm_of, without_abort_delay
from wardwright.trials.watchers import control_units, devices_of, notice_together
from wardwright.trials.ways_in import WayIn
from wardwright.trials.ways_on_foot import spot_of

CORNERS_TRIED = 2
"""Corners of a space that a movement detector is tried in, the farthest from the way in first. [-]"""


class Trial(NamedTuple):
    """What a mend would change a race to: the alarm, and where the control unit stands."""

    alarm: Alarm
    goal: Spot

    def without(self, silent: frozenset[str]) -> Trial:
        """The same without the devices that notice on none of the ways, by their ids: no race hangs on them."""
        heard = tuple(pair for pair in self.alarm.heard if pair[0].id not in silent)
        return self._replace(alarm=self.alarm._replace(heard=heard))


Values = tuple[tuple[str, str | float | int | bool], ...]
"""Names and values of what would be changed."""
Change = tuple[str, str, Values, Trial]
"""The mend's action, subject and values, and what a race would then be run against."""


def changes_for(site: Site, catalogue: Catalogue, way: WayIn, *, now: Estimate) -> list[Change]:
    """What could be changed about the alarm for one way in.

    Parameters
    ----------
    site : Site
        As it is, with a control unit.
    catalogue : Catalogue
        Sheets and figures.
    way : WayIn
        The way in, in its worst manner.
    now : Estimate
        The time in hand as it is: another place for the unit is thought of only where there is none. [s]

    Returns
    -------
    list of Change
        Whether any brings time is not asked here.
    """
    found: list[Change] = []
    alarm = alarm_of(site, catalogue)
    unit = control_units(site, catalogue)[0]
    as_it_is = Trial(alarm, spot_of(site, unit))
    sheet = next((s for s in catalogue.sheets if s.kind == "opening-contact"), None)
    contacts = devices_of(site, catalogue, "opening-contact")
    has_contact = any(is_on(device, way.opening) for device in contacts)
    can_tell = way.manner == "opened" and way.opening.kind != "gap" and way.opening.habit == "shut"
    if sheet is not None and can_tell and not has_contact:
        values: Values = (("sheet", sheet.id), ("behaviour", "instant"))
        contact = contact_on(way.opening, sheet, device_id=_unused(site, "proposed-contact"))
        after = alarm.with_detector(contact, instant_of(site))
        found.append(("add-device", way.opening.id, values, as_it_is._replace(alarm=after)))
    name = _unused(site, "proposed-at-the-opening")
    for values, detector in watches_to_add(site.bare, catalogue, alarm.heard, way=way, device_id=name):
        after = alarm.with_detector(detector, instant_of(site))
        found.append(("add-device", way.opening.id, values, as_it_is._replace(alarm=after)))
    for space, values, detector in _movement(site, catalogue, way.opening):
        after = alarm.with_detector(detector, instant_of(site))
        found.append(("add-device", space, values, as_it_is._replace(alarm=after)))
    elsewhere = best_elsewhere(site, catalogue) if now.value <= 0 else None
    if elsewhere is not None:
        moved = as_it_is._replace(goal=elsewhere.spot)
        found.append(("move-device", unit.id, (("near", elsewhere.outlet),), moved))
    if site.programme.abort_delay_s > 0:
        at_once = without_abort_delay(alarm.programme)
        after = alarm._replace(programme=at_once)
        values = (("abort_delay_s", 0.0),)
        found.append(("change-programme", "programme", values, as_it_is._replace(alarm=after)))
    starting = {b.id for b in site.behaviours if b.starts_entry}
    for zone in site.zones:
        if zone.behaviour in starting and _hears_a_way_nobody_uses(site, catalogue, zone, way=way):
            known, behaviour = with_instant(site)
            instant = zone.model_copy(update={"behaviour": behaviour})
            zones = tuple(instant if one.id == zone.id else one for one in site.zones)
            after = alarm_of(known.model_copy(update={"zones": zones}), catalogue)
            values = (("behaviour", "instant"),)
            found.append(("change-behaviour", zone.id, values, as_it_is._replace(alarm=after)))
    return found


def notice_on_all(site: Site, catalogue: Catalogue, ways: Sequence[WayIn], *, goal: Spot) -> None:
    """Let the detectors there are, and those to be tried as mends of some ways, notice in one pass over all ways."""
    heard = (device for device, _ in alarm_of(site, catalogue).heard)
    there = [one for one in heard if catalogue.sheet(one.sheet).kind == "movement-detector"]
    # Where it is not computable, the answer about each way in says so.
    with suppress(NotComputable):
        openings = {way.opening.id: way.opening for way in ways}.values()
        tried = [device for one in openings for _, _, device in _movement(site, catalogue, one)]
        notice_together(site.bare, catalogue, [*there, *tried], goal=goal)


def _hears_a_way_nobody_uses(site: Site, catalogue: Catalogue, zone: Zone, *, way: WayIn) -> bool:
    if way.opening.is_entry_door:
        return False
    return any(
        notices_at_the_opening(site.bare, catalogue, site.device(one), opening=way.opening, manner=way.manner)
        for one in zone.devices
    )


@lru_cache(maxsize=256)
def _movement(site: Site, catalogue: Catalogue, opening: Opening) -> tuple[tuple[str, Values, Device], ...]:
    """A movement detector in a far corner of the space that an opening leads into, if none is there yet."""
    sheet = next((s for s in catalogue.sheets if s.kind == "movement-detector"), None)
    inside = [s for s in sides_of_opening(site, opening) if s and site.space(s).is_protected]
    if sheet is None or not inside:
        return ()
    space = site.space(inside[0])
    detectors = devices_of(site, catalogue, "movement-detector")
    if any(_stands_in(site.bare, device) == space.id for device in detectors):
        return ()
    start = way_in_spot(site, opening)
    name = _unused(site, "proposed-movement")
    corners = _in_corners(site.bare, sheet, space, start=start, device_id=name)
    return tuple((space.id, *one) for one in corners)


@lru_cache(maxsize=256)
def _in_corners(
    house: Site, sheet: DeviceSheet, space: Space, *, start: Spot, device_id: str
) -> tuple[tuple[Values, Device], ...]:
    """A movement detector in the corners of a space that are farthest from a start, remembered by the house."""
    if sheet.movement is None:
        return ()
    height = (sheet.movement.height_low_m + sheet.movement.height_high_m) / 2
    corners = [spot for spot in wall_spots(house, space, height_m=height) if spot.corner]
    corners.sort(
        key=lambda spot: (-math.hypot(spot.x_m - start.x, spot.y_m - start.y), spot.wall, spot.offset_m)
    )
    found: list[tuple[Values, Device]] = []
    for spot in corners[:CORNERS_TRIED]:
        mount = WallMount(wall=spot.wall, side=spot.side, offset_m=spot.offset_m, height_m=height)
        device = Device(
            id=device_id,
            name=f"{space.name} movement",
            sheet=sheet.id,
            mount=mount,
            heading_deg=spot.heading_deg,
        )
        found.append(((("sheet", sheet.id), ("behaviour", "instant"), *spot.values(height)), device))
    return tuple(found)


@lru_cache(maxsize=256)
def _stands_in(house: Site, device: Device) -> str | None:
    at = standing(house, device)
    found = space_at(house, at.storey, (at.x_m, at.y_m))
    return None if found is None else found.id


@lru_cache(maxsize=256)
def contact_on(opening: Opening, sheet: DeviceSheet, *, device_id: str) -> Device:
    """An opening contact on an opening."""
    mount = OpeningMount(opening=opening.id)
    return Device(id=device_id, name=f"{opening.name} contact", sheet=sheet.id, mount=mount)


def instant_of(site: Site) -> Behaviour:
    """The site's instant behaviour; the trade's usual one where it has none."""
    known, behaviour = with_instant(site)
    return known.behaviour(behaviour)


def with_instant(site: Site) -> tuple[Site, str]:
    """The site and the id of its instant behaviour; the trade's usual one is added where it has none."""
    for one in site.behaviours:
        if is_instant(one) and not (one.delays_message or one.is_always_active):
            return site, one.id
    usual = STANDARD_BEHAVIOURS[0]
    taken = {one.id for one in site.behaviours}
    added = usual.model_copy(update={"id": usual.id if usual.id not in taken else "proposed-instant"})
    return site.model_copy(update={"behaviours": (*site.behaviours, added)}), added.id


@lru_cache(maxsize=64)
def _unused(site: Site, wanted: str) -> str:
    taken = {one.id for one in site.devices} | {one.id for one in site.zones}
    return next(
        name for i in range(len(taken) + 1) if (name := wanted if i == 0 else f"{wanted}-{i}") not in taken
    )
