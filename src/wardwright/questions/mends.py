"""What would mend a way in: locks first, then the alarm, each with what it would bring."""

from __future__ import annotations

import math
from collections.abc import Sequence

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount, WallMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.estimate import Estimate
from wardwright.model.fabric import Space
from wardwright.model.placement import sides_of_opening, space_at, standing
from wardwright.model.programme import STANDARD_BEHAVIOURS, Zone
from wardwright.model.revision import replaced, with_device
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import way_in_spot
from wardwright.questions.time_in_hand import least_hand, worst_of
from wardwright.questions.unit_elsewhere import best_elsewhere, moved_to
from wardwright.rules.finding import Mend
from wardwright.rules.kit import is_instant
from wardwright.rules.wall_spots import wall_spots
from wardwright.trials.draws import estimate_of
from wardwright.trials.race import Race, race
from wardwright.trials.watchers import control_units, devices_of, is_on, opens_contact
from wardwright.trials.ways_in import WayIn, leads_outside
from wardwright.trials.ways_on_foot import spot_of

WORTH_S = 0.5
"""A mend is named if it brings at least this. [s] (assumption)"""
WEAK_LOCK_S = 60.0
"""An opening that likely holds less than this is named for its lock first. [s] (assumption)"""
CORNERS_TRIED = 2
"""Corners of a space that a movement detector is tried in, the farthest from the way in first. [-]"""
BETTER_LOCK = "force-rc2"
"""The figure a better lock is held against."""


def mends_for(
    site: Site, catalogue: Catalogue, *, ways: Sequence[WayIn], worst: Race, now: Estimate
) -> tuple[Mend, ...]:
    """Cures for one opening, the better ones first.

    Parameters
    ----------
    site : Site
        As it is.
    catalogue : Catalogue
        Sheets and figures.
    ways : sequence of WayIn
        All manners of coming in by the opening.
    worst : Race
        The race of the worst of them.
    now : Estimate
        The time in hand as it is. [s]

    Returns
    -------
    tuple of Mend
        Locks and lights where the opening is weak; then changes to the alarm that were tried on the model and
        bring time, most first. Each is tried on all manners, as asking again would.
    """
    tried = []
    for action, subject, values, changed in _changes(site, catalogue, worst.way, now=now):
        after = _worst_after(changed, catalogue, ways)
        if after is not None and after.value - now.value >= WORTH_S:
            tried.append(Mend(action=action, subject=subject, values=values, gain=after))
    tried.sort(key=lambda mend: (-(mend.gain.value if mend.gain else 0.0), mend.action, mend.subject))
    best = {(mend.action, mend.subject): mend for mend in reversed(tried)}
    kept = (mend for mend in tried if best[mend.action, mend.subject] is mend)
    return (*locks_and_lights(site, catalogue, worst.way), *kept)


def _worst_after(site: Site, catalogue: Catalogue, ways: Sequence[WayIn]) -> Estimate | None:
    """The time in hand of the worst manner on a changed site; None where it cannot be worked out."""
    goal = spot_of(site, control_units(site, catalogue)[0])
    try:
        races = [race(site, catalogue, way=way, goal=goal) for way in ways]
    except NotComputable:
        return None
    one = worst_of(races, catalogue)
    return estimate_of(least_hand(one, catalogue), one.cases, unit="s")


def locks_and_lights(site: Site, catalogue: Catalogue, way: WayIn) -> tuple[Mend, ...]:
    """A better lock or pane, and a light, for an opening to the outside that does not hold long."""
    if way.holds.value >= WEAK_LOCK_S or not leads_outside(site, way.opening):
        return ()
    better = catalogue.figure(BETTER_LOCK)
    brings = Estimate(
        value=better.value - way.holds.value,
        low=better.low - way.holds.high,
        high=better.high - way.holds.low,
        unit="s",
        basis=way.holds_basis,
    )
    what = "glazing" if way.manner == "through the glass" else "lock"
    return (
        Mend(action="change-lock", subject=way.opening.id, values=(("what", what),), gain=brings),
        Mend(action="add-light", subject=way.opening.id),
    )


_Change = tuple[str, str, tuple[tuple[str, str | float | int | bool], ...], Site]


def _changes(site: Site, catalogue: Catalogue, way: WayIn, *, now: Estimate) -> list[_Change]:
    found: list[_Change] = []
    sheet = next((s for s in catalogue.sheets if s.kind == "opening-contact"), None)
    has_contact = any(is_on(device, way.opening) for device in site.devices)
    can_tell = way.manner == "opened" and way.opening.kind != "gap" and way.opening.habit == "shut"
    if sheet is not None and can_tell and not has_contact:
        values = (("sheet", sheet.id), ("behaviour", "instant"))
        found.append(("add-device", way.opening.id, values, with_contact(site, way, sheet)))
    found.extend(_movement(site, catalogue, way))
    elsewhere = best_elsewhere(site, catalogue) if now.value <= 0 else None
    if elsewhere is not None:
        unit = control_units(site, catalogue)[0]
        moved = moved_to(site, catalogue, elsewhere.spot)
        found.append(("move-device", unit.id, (("near", elsewhere.outlet),), moved))
    if site.programme.abort_delay_s > 0:
        changed = site.programme.model_copy(update={"abort_delay_s": 0.0})
        site_after = site.model_copy(update={"programme": changed})
        found.append(("change-programme", "programme", (("abort_delay_s", 0.0),), site_after))
    starting = {b.id for b in site.behaviours if b.starts_entry}
    for zone in site.zones:
        if zone.behaviour in starting and _hears_a_way_nobody_uses(site, zone, way):
            known, behaviour = with_instant(site)
            instant = zone.model_copy(update={"behaviour": behaviour})
            zones = tuple(instant if one.id == zone.id else one for one in site.zones)
            after = known.model_copy(update={"zones": zones})
            found.append(("change-behaviour", zone.id, (("behaviour", "instant"),), after))
    return found


def _hears_a_way_nobody_uses(site: Site, zone: Zone, way: WayIn) -> bool:
    if way.opening.is_entry_door:
        return False
    return any(opens_contact(site.device(one), way) for one in zone.devices)


def _movement(site: Site, catalogue: Catalogue, way: WayIn) -> list[_Change]:
    """A movement detector in a far corner of the space that the way leads into, if none is there yet."""
    sheet = next((s for s in catalogue.sheets if s.kind == "movement-detector"), None)
    inside = [s for s in sides_of_opening(site, way.opening) if s and site.space(s).is_protected]
    if sheet is None or sheet.movement is None or not inside:
        return []
    space = site.space(inside[0])
    if any(_is_in(site, device, space) for device in devices_of(site, catalogue, "movement-detector")):
        return []
    height = (sheet.movement.height_low_m + sheet.movement.height_high_m) / 2
    start = way_in_spot(site, way.opening)
    corners = [spot for spot in wall_spots(site, space, height_m=height) if spot.corner]
    corners.sort(
        key=lambda spot: (-math.hypot(spot.x_m - start.x, spot.y_m - start.y), spot.wall, spot.offset_m)
    )
    found: list[_Change] = []
    for spot in corners[:CORNERS_TRIED]:
        mount = WallMount(wall=spot.wall, side=spot.side, offset_m=spot.offset_m, height_m=height)
        device = Device(
            id=_unused(site, "proposed-movement"),
            name=f"{space.name} movement",
            sheet=sheet.id,
            mount=mount,
            heading_deg=spot.heading_deg,
        )
        after = with_instant_device(site, device)
        values = (("sheet", sheet.id), ("behaviour", "instant"), *spot.values(height))
        found.append(("add-device", space.id, values, after))
    return found


def _is_in(site: Site, device: Device, space: Space) -> bool:
    at = standing(site, device)
    found = space_at(site, at.storey, (at.x_m, at.y_m))
    return found is not None and found.id == space.id


def with_contact(site: Site, way: WayIn, sheet: DeviceSheet) -> Site:
    """The site with an instant opening contact added to a way in."""
    device = Device(
        id=_unused(site, "proposed-contact"),
        name=f"{way.opening.name} contact",
        sheet=sheet.id,
        mount=OpeningMount(opening=way.opening.id),
    )
    return with_instant_device(site, device)


def with_instant_device(site: Site, device: Device) -> Site:
    """The site with a device added, in an instant zone of its own."""
    known, behaviour = with_instant(site)
    zone = Zone(
        id=_unused(site, "proposed-zone"),
        number=1,  # numbers only give an order; this one is never programmed
        name=device.name,
        devices=(device.id,),
        behaviour=behaviour,
    )
    return replaced(with_device(known, device), zones=(*site.zones, zone))


def with_instant(site: Site) -> tuple[Site, str]:
    """The site and the id of its instant behaviour; the trade's usual one is added where it has none."""
    for one in site.behaviours:
        if is_instant(one) and not (one.delays_message or one.is_always_active):
            return site, one.id
    usual = STANDARD_BEHAVIOURS[0]
    taken = {one.id for one in site.behaviours}
    added = usual.model_copy(update={"id": usual.id if usual.id not in taken else "proposed-instant"})
    return site.model_copy(update={"behaviours": (*site.behaviours, added)}), added.id


def _unused(site: Site, wanted: str) -> str:
    taken = {one.id for one in site.devices} | {one.id for one in site.zones}
    return next(
        name for i in range(len(taken) + 1) if (name := wanted if i == 0 else f"{wanted}-{i}") not in taken
    )
