"""The least move of a device that gives it the room its service wants."""

from __future__ import annotations

import math
from collections.abc import Iterator

import shapely

from wardwright.model.device import CeilingMount, Device, FreeMount, WallMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.floor import solid_walls, storey_parts
from wardwright.model.placement import direction, space_at, standing
from wardwright.model.site import Site
from wardwright.rules.ceiling_spots import ceiling_spots, moved_on_ceiling
from wardwright.rules.finding import Mend
from wardwright.rules.service_room import room_to_serve
from wardwright.rules.sheet_heights import ROUNDING_M, top_for
from wardwright.rules.wall_spots import CLEAR_OF_OPENING_M, END_M

SHIFT_STEP_M = 0.05
"""Between places along a wall that are tried. [m] (assumption)"""
SHIFT_MOST_M = 3.0
"""A device is not shifted farther than this along its wall. [m] (assumption)"""


def has_room(site: Site, device: Device, sheet: DeviceSheet) -> bool:
    """Whether a device has the room that its sheet wants, or none is asked for."""
    free = room_to_serve(site, device, sheet)
    return free is None or free.length_m >= sheet.service_clearance_m - ROUNDING_M


def shifted(site: Site, device: Device, sheet: DeviceSheet, *, lacking_m: float) -> tuple[Mend, ...]:
    """The least shift that gives a device its room.

    Parameters
    ----------
    site : Site
        The house and its fixtures.
    device : Device
        The device.
    sheet : DeviceSheet
        Its sheet.
    lacking_m : float
        How much room it lacks. [m]

    Returns
    -------
    tuple of Mend
        One: up or down by what is lacking before along the wall; empty where no place near is fit.
    """
    mount = device.mount
    if isinstance(mount, CeilingMount):
        return _on_ceiling(site, device, sheet)
    if isinstance(mount, (WallMount, FreeMount)):
        way = -1.0 if sheet.service_side == "above" else 1.0
        height = mount.height_m + way * lacking_m
        moved = device.model_copy(update={"mount": mount.model_copy(update={"height_m": height})})
        is_upright = sheet.service_side in ("above", "below")
        if is_upright and _may_hang(sheet, height) and _is_fit(site, device, moved, sheet=sheet):
            return (Mend(action="move-device", subject=device.id, values=(("height_m", height),)),)
    if isinstance(mount, WallMount):
        for offset in _offsets(mount.offset_m, lacking_m):
            moved = device.model_copy(update={"mount": mount.model_copy(update={"offset_m": offset})})
            if _is_fit(site, device, moved, sheet=sheet):
                return (Mend(action="move-device", subject=device.id, values=(("offset_m", offset),)),)
    return ()


def _offsets(offset_m: float, lacking_m: float) -> Iterator[float]:
    yield offset_m + lacking_m
    yield offset_m - lacking_m
    for step in range(1, math.ceil(SHIFT_MOST_M / SHIFT_STEP_M) + 1):
        yield offset_m + step * SHIFT_STEP_M
        yield offset_m - step * SHIFT_STEP_M


def _may_hang(sheet: DeviceSheet, height_m: float) -> bool:
    """Whether the sheet's own heights allow it; those of what hangs outside count from the ground: left alone."""
    ranges = [(t.height_low_m, t.height_high_m) for t in (sheet.movement, sheet.button) if t is not None]
    return all(
        (low is None or height_m >= low - ROUNDING_M) and (high is None or height_m <= high + ROUNDING_M)
        for low, high in ranges
    )


def _is_fit(site: Site, device: Device, moved: Device, *, sheet: DeviceSheet) -> bool:
    """Whether a device may hang where it would be moved: in the same room, on its wall, on no opening."""
    mount, now, then = moved.mount, standing(site, device), standing(site, moved)
    here, there = (now.x_m, now.y_m), (then.x_m, then.y_m)
    if space_at(site, now.storey, here) != space_at(site, then.storey, there):
        return False
    if not 0.0 <= then.height_m <= top_for(site, moved) + ROUNDING_M:
        return False
    if isinstance(mount, WallMount):
        if not END_M <= mount.offset_m <= direction(site.wall(mount.wall).line_m)[2] - END_M:
            return False
        if shapely.intersects_xy(solid_walls(storey_parts(site, then.storey)), *there):
            return False
        for opening in site.openings:
            is_level = (
                opening.sill_m - CLEAR_OF_OPENING_M < mount.height_m < opening.head_m + CLEAR_OF_OPENING_M
            )
            is_near = abs(opening.offset_m - mount.offset_m) < opening.width_m / 2 + CLEAR_OF_OPENING_M
            if opening.wall == mount.wall and is_level and is_near:
                return False
    return has_room(site, moved, sheet)


def _on_ceiling(site: Site, device: Device, sheet: DeviceSheet) -> tuple[Mend, ...]:
    place = standing(site, device)
    here = (place.x_m, place.y_m)
    space = space_at(site, place.storey, here)
    if space is None or not isinstance(device.mount, CeilingMount):
        return ()
    for point in ceiling_spots(space, nearest_to=here):
        mount = device.mount.model_copy(update={"at_m": point})
        if has_room(site, device.model_copy(update={"mount": mount}), sheet):
            return (moved_on_ceiling(device, place.storey, point),)
    return ()
