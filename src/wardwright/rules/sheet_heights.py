"""Heights at which sheets want their devices, and how to get there."""

from __future__ import annotations

from wardwright.model.device import CeilingMount, Device, FreeMount, WallMount
from wardwright.model.placement import ceiling_height, space_at, standing
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.ceiling_spots import ceiling_spots, moved_on_ceiling
from wardwright.rules.finding import Mend
from wardwright.rules.footings import is_in_the_open

ROUNDING_M = 1e-6
"""Heights closer to a limit than this are the limit. [m] (assumption)"""
ROOM_ABOVE_M = 0.05
"""How far a device's middle stays below the ceiling. [m] (assumption)"""
BEHIND_M = 0.6
"""Rooms of the storey above are looked for this near to an outer face. [m] (assumption)"""


def nearest_inside(height_m: float, low_m: float, high_m: float) -> float | None:
    """The nearest height between two; None where it is between them already. [m]"""
    nearest = min(max(height_m, low_m), high_m)
    return None if abs(nearest - height_m) <= ROUNDING_M else nearest


def moved_up_or_down(site: Site, device: Device, height_m: float) -> tuple[Mend, ...]:
    """Move a device straight up or down.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        The device.
    height_m : float
        Above its storey's floor. [m]

    Returns
    -------
    tuple of Mend
        One; empty where what it is on does not let it move, or does not reach that high.
    """
    if not isinstance(device.mount, (WallMount, FreeMount)) or height_m < 0.0:
        return ()
    if height_m > top_for(site, device) + ROUNDING_M:
        return ()
    return (Mend(action="move-device", subject=device.id, values=(("height_m", height_m),)),)


def top_for(site: Site, device: Device) -> float:
    """How high above its storey's floor a device may go where it is: under the ceiling, or up an outer face. [m]"""
    place = standing(site, device)
    point = (place.x_m, place.y_m)
    if not is_in_the_open(site, place) or not isinstance(device.mount, WallMount):
        return ceiling_height(site, place.storey, point) - ROOM_ABOVE_M
    return top_of_face(site, device.mount.wall, point)


def top_of_face(site: Site, wall_id: str, point: Point2) -> float:
    """How high an outer wall goes up at a place, above its storey's floor; storeys built on it count. [m]"""
    wall = site.wall(wall_id)
    if wall.height_m is not None:
        return wall.base_m + wall.height_m
    own = site.storey(wall.storey)
    above = [
        storey.elevation_m + storey.height_m - own.elevation_m
        for storey in site.storeys
        if storey.elevation_m > own.elevation_m
        and any(space_at(site, storey.id, near) is not None for near in _round(point))
    ]
    return max([own.height_m, *above])


def moved_under_ceiling(site: Site, device: Device, *, low_m: float, high_m: float) -> tuple[Mend, ...]:
    """Move a device on a ceiling to the nearest place of its space where the ceiling is between two heights.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        The device, on a ceiling.
    low_m, high_m : float
        Between which heights the ceiling is to be. [m]

    Returns
    -------
    tuple of Mend
        One; empty where there is no such place.
    """
    place = standing(site, device)
    here = (place.x_m, place.y_m)
    space = space_at(site, place.storey, here)
    if space is None or not isinstance(device.mount, CeilingMount):
        return ()
    for point in ceiling_spots(space, nearest_to=here):
        if nearest_inside(ceiling_height(site, place.storey, point), low_m, high_m) is None:
            return (moved_on_ceiling(device, place.storey, point),)
    return ()


def _round(point: Point2) -> tuple[Point2, ...]:
    x, y = point
    return ((x + BEHIND_M, y), (x - BEHIND_M, y), (x, y + BEHIND_M), (x, y - BEHIND_M))
