"""What a shock detector feels: how far it is from the corners of what it guards, and what it is fixed to."""

from __future__ import annotations

import math

from wardwright.errors import CatalogueError
from wardwright.model.device import Device, OpeningMount, Surface, WallMount
from wardwright.model.device_sheets import DeviceSheet, ShockSheet
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in
from wardwright.model.site import Site

FRAMES: frozenset[Surface] = frozenset(("upvc", "timber", "steel", "aluminium"))
"""What frames and leaves are made of: one whose surface nobody told is one of these."""


def shock_table(row: DeviceSheet) -> ShockSheet:
    """What a sheet says of shocks; CatalogueError where it has no such table."""
    if row.shock is None:
        raise CatalogueError(
            "a shock detector without a table 'shock'",
            where=f"catalogue, sheet '{row.id}'",
            cure="Add [sheet.shock] to it",
        )
    return row.shock


def guarded_opening(site: Site, device: Device) -> Opening | None:
    """The opening that it is on; on a wall, the nearest way in of that wall."""
    mount = device.mount
    if isinstance(mount, OpeningMount):
        return site.opening(mount.opening)
    if not isinstance(mount, WallMount):
        return None
    ways = [one for one in site.openings if one.wall == mount.wall and is_way_in(site, one)]
    return min(ways, key=lambda one: (abs(one.offset_m - mount.offset_m), one.id), default=None)


def farthest_corner_m(device: Device, opening: Opening) -> float:
    """To the farthest corner, in the plane of the wall; on an opening, from the best place there is. [m]"""
    mount = device.mount
    if isinstance(mount, WallMount):
        return from_wall_m(opening, mount.offset_m, mount.height_m)
    short, long = sorted((opening.width_m, opening.head_m - opening.sill_m))
    is_on_leaf = isinstance(mount, OpeningMount) and mount.electronics_on == "leaf"
    return math.hypot(short / 2 if is_on_leaf else short, long / 2)


def from_wall_m(opening: Opening, offset_m: float, height_m: float) -> float:
    """From a place on the wall of an opening to its farthest corner. [m]"""
    along = abs(opening.offset_m - offset_m) + opening.width_m / 2
    up = max(abs(opening.head_m - height_m), abs(opening.sill_m - height_m))
    return math.hypot(along, up)


def feels(device: Device, row: DeviceSheet, opening: Opening) -> bool:
    """Whether a shock detector feels blows at every corner of an opening, as far as its sheet says.

    Parameters
    ----------
    device : Device
        On the opening, or on its wall.
    row : DeviceSheet
        Its sheet.
    opening : Opening
        What is struck.

    Returns
    -------
    bool
        False too where its sheet names surfaces and it is not known to be on one of them.
    """
    mount, sheet = device.mount, shock_table(row)
    is_there = (isinstance(mount, OpeningMount) and mount.opening == opening.id) or (
        isinstance(mount, WallMount) and mount.wall == opening.wall
    )
    return is_there and farthest_corner_m(device, opening) <= sheet.radius_m and _is_on_fit(device, sheet)


def _is_on_fit(device: Device, sheet: ShockSheet) -> bool:
    """Whether it is on a surface that its sheet is for; untold on a frame: whichever the frame may be."""
    surface = "unknown" if device.fixing is None else device.fixing.surface
    if surface == "unknown" and isinstance(device.mount, OpeningMount):
        return not sheet.surfaces or set(sheet.surfaces) >= FRAMES
    return not sheet.surfaces or surface in sheet.surfaces
