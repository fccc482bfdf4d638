"""Better places and directions for a movement detector: in its own room, clear of heat, not facing glass."""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache

import numpy as np

from wardwright.model.device import CeilingMount, Device, WallMount
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.fabric import Space
from wardwright.model.placement import direction, space_at, standing
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.ceiling_spots import ceiling_spots, moved_on_ceiling
from wardwright.rules.finding import Mend
from wardwright.rules.glass_ahead import view_from
from wardwright.rules.hot_things import hot_things_near
from wardwright.rules.wall_spots import TURN_LIMIT_DEG, WallSpot, wall_spots

CENTRE_SHARE = 1 / 3
"""Share of the fan, about its axis, that is kept off glass. [-] (common practice: not aimed at glass)"""
LOOKS_ALL_ROUND_DEG = 360.0
"""A fan this wide has no axis. [deg]"""
TURN_STEP_DEG = 5.0
"""Between directions that are tried. [deg] (assumption)"""
FREE_VIEW_M = 2.0
"""A detector is not turned to face a wall nearer than this. [m] (assumption)"""

Accepts = Callable[[Device], bool]
"""Whether a detector, as it would hang, is fit in whatever else is asked of it."""


def anywhere(device: Device) -> bool:
    """Ask nothing more of a detector in its new place."""
    del device
    return True


def half_centre_deg(sheet: MovementSheet) -> float:
    """From the axis to the edge of the part of the fan that is kept off glass. [deg]"""
    return sheet.angle_deg * CENTRE_SHARE / 2


def is_clear(site: Site, storey: str, eye: Point2, *, heading_deg: float, sheet: MovementSheet) -> bool:
    """Whether a place and direction keep clear of warm things and glass and look into a free room."""
    return _is_clear(site.bare, (storey, eye), heading_deg=heading_deg, sheet=sheet)


@lru_cache(maxsize=4096)
def _is_clear(site: Site, at: tuple[str, Point2], *, heading_deg: float, sheet: MovementSheet) -> bool:
    """Remembered by the house: whatever hangs there, and whoever asks."""
    storey, eye = at
    if hot_things_near(site, storey, eye, clearance_m=sheet.hot_clearance_m):
        return False
    if sheet.angle_deg >= LOOKS_ALL_ROUND_DEG:
        return True
    view = view_from(site, storey, eye)
    if view.panes(heading_deg, half_deg=half_centre_deg(sheet), reach_m=sheet.reach_m):
        return False
    return view.free_length(heading_deg) >= FREE_VIEW_M


def turned_away(
    site: Site, device: Device, sheet: MovementSheet, *, accepts: Accepts = anywhere
) -> tuple[Mend, ...]:
    """The smallest turn, on the spot, that faces no glass and is accepted besides; empty if there is none."""
    place = standing(site, device)
    eye = (place.x_m, place.y_m)
    limit, middle = 180.0, place.heading_deg
    if isinstance(device.mount, WallMount):
        _, (nx, ny), _ = direction(site.wall(device.mount.wall).line_m)
        sign = 1.0 if device.mount.side == "left" else -1.0
        limit, middle = TURN_LIMIT_DEG, math.degrees(math.atan2(sign * ny, sign * nx))
    steps = np.arange(-limit, limit + TURN_STEP_DEG / 2, TURN_STEP_DEG).tolist()
    steps.sort(key=lambda step: (round(_between(middle + step, place.heading_deg), 6), step))
    for step in steps:
        heading = (middle + step) % 360.0
        if not is_clear(site, place.storey, eye, heading_deg=heading, sheet=sheet):
            continue
        if accepts(device.model_copy(update={"heading_deg": heading})):
            return (Mend(action="turn-device", subject=device.id, values=(("heading_deg", heading),)),)
    return ()


def moved_to_better_spot(
    site: Site, device: Device, sheet: MovementSheet, *, accepts: Accepts = anywhere
) -> tuple[Mend, ...]:
    """The nearest clear corner of its space, or else the nearest clear place on its walls; empty if none is.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        The detector.
    sheet : MovementSheet
        Its sheet.
    accepts : callable
        What else is asked of the detector in its new place.

    Returns
    -------
    tuple of Mend
        One, or none.
    """
    place = standing(site, device)
    here = (place.x_m, place.y_m)
    space = space_at(site, place.storey, here)
    if space is None:
        return ()
    if isinstance(device.mount, CeilingMount) and sheet.angle_deg >= LOOKS_ALL_ROUND_DEG:
        return _moved_on_ceiling(site, device, space, sheet=sheet, accepts=accepts)
    height = min(max(place.height_m, sheet.height_low_m), sheet.height_high_m)
    spots = sorted(
        wall_spots(site, space, height_m=height),
        key=lambda spot: (spot.corner == 0, math.dist(here, (spot.x_m, spot.y_m)), spot),
    )
    for spot in spots:
        eye = (spot.x_m, spot.y_m)
        if not is_clear(site, place.storey, eye, heading_deg=spot.heading_deg, sheet=sheet):
            continue
        if accepts(hung_at(device, spot, height_m=height)):
            values = spot.values(height, heading_deg=spot.heading_deg % 360.0)
            return (Mend(action="move-device", subject=device.id, values=values),)
    return ()


def hung_at(device: Device, spot: WallSpot, *, height_m: float) -> Device:
    """A detector as it would hang at a place on a wall, looking off it or out of its corner."""
    mount = WallMount(wall=spot.wall, side=spot.side, offset_m=spot.offset_m, height_m=height_m)
    return device.model_copy(update={"mount": mount, "heading_deg": spot.heading_deg % 360.0})


def _moved_on_ceiling(
    site: Site, device: Device, space: Space, *, sheet: MovementSheet, accepts: Accepts
) -> tuple[Mend, ...]:
    place = standing(site, device)
    for point in ceiling_spots(space, nearest_to=(place.x_m, place.y_m)):
        if not is_clear(site, place.storey, point, heading_deg=place.heading_deg, sheet=sheet):
            continue
        mount = CeilingMount(storey=place.storey, at_m=point)
        if accepts(device.model_copy(update={"mount": mount})):
            return (moved_on_ceiling(device, place.storey, point),)
    return ()


def _between(a_deg: float, b_deg: float) -> float:
    return abs((a_deg - b_deg + 180.0) % 360.0 - 180.0)
