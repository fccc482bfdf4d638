"""What would mend an entry or exit time: the time itself, a nearer keypad, keyfobs."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.estimate import Estimate
from wardwright.model.opening import Opening
from wardwright.model.placement import along, direction, opening_line, sides_of_opening
from wardwright.model.revision import with_device
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import way_in_spot
from wardwright.questions.times_needed import STEP_S, Needed, needed
from wardwright.rules.finding import Mend
from wardwright.rules.wall_spots import WallSpot, wall_spots
from wardwright.trials.trips import Legs, Trip, household, trips

KEYPAD_HEIGHT_M = 1.4
"""Height at which a keypad is thought of. [m] (common practice)"""
WORTH_S = 1.0
"""A nearer keypad is named if the slowest is sooner there by at least this. [s] (assumption)"""
TRIED = 3
"""Places for a keypad that are tried, the nearest to the door first. [-]"""


def entry_time_mends(
    site: Site, catalogue: Catalogue, *, trip: Trip, times: tuple[Needed, Needed]
) -> tuple[Mend, ...]:
    """Cures for one door's times.

    Parameters
    ----------
    site : Site
        As it is.
    catalogue : Catalogue
        Sheets, figures and limits.
    trip : Trip
        The way between the door and the keypad.
    times : tuple of Needed
        Entry and exit.

    Returns
    -------
    tuple of Mend
        Each with what the slowest of the household then has in hand. A time is also named where it could be
        shorter, since every second of it is an intruder's too.
    """
    found = [_other_time(one) for one in times if _is_to_change(one)]
    if any(one.verdict != "good" for one in times) and trip.control is not None:
        found += _nearer_keypad(site, catalogue, trip, entry=times[0])
        found += _keyfob(site, catalogue, trip, entry=times[0])
    return tuple(found)


def _is_to_change(one: Needed) -> bool:
    if one.advised_s == one.programmed_s:
        return False
    # A shorter exit time helps nobody: only a shorter entry time is an intruder's loss.
    return one.verdict != "good" or (one.which == "entry" and one.advised_s <= one.programmed_s - STEP_S)


def _other_time(one: Needed) -> Mend:
    more = one.advised_s - one.programmed_s
    left = one.left.model_copy(
        update={"value": one.left.value + more, "low": one.left.low + more, "high": one.left.high + more}
    )
    return Mend(
        action="change-programme",
        subject="programme",
        values=((f"{one.which}_time_s", one.advised_s),),
        gain=left,
    )


def _left_with(site: Site, catalogue: Catalogue, legs: Legs, *, entry: Needed) -> Estimate:
    """What the slowest would have left of the entry time on other legs. [s]"""
    people, place = household(site), site.place
    return needed(catalogue, legs, people, which="entry", programmed_s=entry.programmed_s, place=place).left


def _nearer_keypad(site: Site, catalogue: Catalogue, trip: Trip, *, entry: Needed) -> Iterator[Mend]:
    control = trip.control
    if control is None:
        return
    is_keypad = catalogue.sheet(control.sheet).kind == "keypad"
    sheet = control.sheet if is_keypad else next((s.id for s in catalogue.sheets if s.kind == "keypad"), None)
    if sheet is None:
        return
    best: tuple[float, WallSpot, Estimate] | None = None
    for spot in _spots_by(site, trip.door)[:TRIED]:
        mount = WallMount(wall=spot.wall, side=spot.side, offset_m=spot.offset_m, height_m=KEYPAD_HEIGHT_M)
        keypad = Device(id="proposed-keypad", name="keypad", sheet=sheet, mount=mount)
        keypad = control.model_copy(update={"mount": mount, "heading_deg": None}) if is_keypad else keypad
        try:
            there = trips(with_device(site, keypad), catalogue)
        except NotComputable:
            continue
        one = next(other for other in there if other.door.id == trip.door.id)
        if one.route is None or one.control is None or one.control.id != keypad.id:
            continue
        left = _left_with(site, catalogue, one.legs, entry=entry)
        if best is None or left.value > best[0] + 1e-6:
            best = (left.value, spot, left)
    if best is not None and best[0] >= entry.left.value + WORTH_S:
        place = best[1].values(KEYPAD_HEIGHT_M)
        values = place if is_keypad else (("sheet", sheet), *place)
        action = "move-device" if is_keypad else "add-device"
        subject = control.id if is_keypad else trip.door.id
        yield Mend.model_validate({"action": action, "subject": subject, "values": values, "gain": best[2]})


def _spots_by(site: Site, door: Opening) -> list[WallSpot]:
    """Places for a keypad in the room behind a door, clear of its open leaf, the nearest first."""
    inside = [s for s in sides_of_opening(site, door) if s is not None and site.space(s).is_protected]
    start = way_in_spot(site, door)
    found = [
        spot
        for side in inside
        for spot in wall_spots(site, site.space(side), height_m=KEYPAD_HEIGHT_M)
        if not _is_behind_leaf(site, door, spot)
    ]
    return sorted(
        found,
        key=lambda spot: (
            round(math.hypot(spot.x_m - start.x, spot.y_m - start.y), 6), spot.wall, spot.offset_m
        ),
    )  # fmt: skip


def _is_behind_leaf(site: Site, door: Opening, spot: WallSpot) -> bool:
    """Whether a leaf that opens into the room would sweep over a place, or hide it."""
    if door.hinge not in ("start", "end") or door.leaves == 0:
        return False
    wall = site.wall(door.wall)
    line = opening_line(wall, door)
    _, (nx, ny), length = direction(line)
    hinge = along(line, 0.0 if door.hinge == "start" else length)
    sign = 1.0 if door.swing == "left" else -1.0
    is_on_swing_side = ((spot.x_m - hinge[0]) * nx + (spot.y_m - hinge[1]) * ny) * sign > 0.0
    reach = door.width_m / max(1, door.leaves)
    return (
        is_on_swing_side
        and math.hypot(spot.x_m - hinge[0], spot.y_m - hinge[1]) < reach + wall.thickness_m / 2
    )


def _keyfob(site: Site, catalogue: Catalogue, trip: Trip, *, entry: Needed) -> Iterator[Mend]:
    sheet = next((s.id for s in catalogue.sheets if s.kind == "keyfob"), None)
    if sheet is None:
        return
    legs = Legs(trip.legs.threshold_m, 0.0, 0.0, 0, at_keypad=False)
    left = _left_with(site, catalogue, legs, entry=entry)
    yield Mend(action="add-device", subject=trip.door.id, values=(("sheet", sheet),), gain=left)
