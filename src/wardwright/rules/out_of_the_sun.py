"""Where a detector would have no sun straight on its lens: another height, direction, wall or corner."""

from __future__ import annotations

import math

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.estimate import Estimate
from wardwright.model.placement import ceiling_height, space_at, standing
from wardwright.model.site import Site
from wardwright.rules.detector_spots import Accepts, hung_at, moved_to_better_spot, turned_away
from wardwright.rules.finding import Mend
from wardwright.rules.lit_panes import blinds_on
from wardwright.rules.sun_on_detectors import LENS_LIMIT_MIN, SunOn, lens_minutes
from wardwright.rules.wall_spots import ROOM_ABOVE_M, WallSpot, wall_spots

HEIGHT_STEP_M = 0.1
"""Between heights that are tried. [m] (assumption)"""


def out_of_the_sun(
    site: Site, catalogue: Catalogue, device: Device, *, sheet: MovementSheet, sun: SunOn
) -> tuple[Mend, ...]:
    """What would take the sun off a lens, the smallest change first.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        For its sheet.
    device : Device
        The detector.
    sheet : MovementSheet
        The same sheet's table.
    sun : SunOn
        The sun on it where it hangs.

    Returns
    -------
    tuple of Mend
        Another height, else a turn, else another place, each with the minutes left; the place with the fewest where
        none is free of sun; then a blind on each pane.
    """

    def is_dark(moved: Device) -> bool:
        # What is lit where north counts for the place as it is need not be asked about all other norths.
        at_one = lens_minutes(site, catalogue, moved, norths=(sun.north,))
        return at_one <= LENS_LIMIT_MIN and lens_minutes(site, catalogue, moved) <= LENS_LIMIT_MIN

    found = (
        _at_another_height(site, device, sheet, is_dark=is_dark)
        or turned_away(site, device, sheet, accepts=is_dark)
        or moved_to_better_spot(site, device, sheet, accepts=is_dark)
    )
    told = tuple(one.model_copy(update={"gain": _left(LENS_LIMIT_MIN)}) for one in found)
    told = told or _with_the_fewest(site, catalogue, device, sheet=sheet, sun=sun)
    return (*told, *blinds(sun))


def blinds(sun: SunOn) -> tuple[Mend, ...]:
    """A blind on each pane that the sun comes through, to be drawn whenever the alarm is set."""
    return blinds_on(dict.fromkeys(beam.opening for beam in sun.on_lens if not beam.is_covered))


def _left(most: float) -> Estimate:
    """What is left of the sun where a place was only asked whether it is under the limit."""
    return Estimate(value=0.0, low=0.0, high=most, unit="min", basis="default")


def _at_another_height(
    site: Site, device: Device, sheet: MovementSheet, *, is_dark: Accepts
) -> tuple[Mend, ...]:
    mount = device.mount
    if not isinstance(mount, WallMount):
        return ()
    place = standing(site, device)
    ceiling = ceiling_height(site, place.storey, (place.x_m, place.y_m)) - ROOM_ABOVE_M
    count = math.floor((min(sheet.height_high_m, ceiling) - sheet.height_low_m) / HEIGHT_STEP_M + 1e-9)
    heights = (sheet.height_low_m + np.arange(count + 1) * HEIGHT_STEP_M).round(3).tolist()
    for height in sorted(heights, key=lambda one: (abs(one - mount.height_m), one)):
        moved = device.model_copy(update={"mount": mount.model_copy(update={"height_m": height})})
        if is_dark(moved):
            return (Mend(action="change-mount", subject=device.id, values=(("height_m", height),)),)
    return ()


def _with_the_fewest(
    site: Site, catalogue: Catalogue, device: Device, *, sheet: MovementSheet, sun: SunOn
) -> tuple[Mend, ...]:
    """The corner or place on a wall of its space with the fewest minutes, if they are fewer than now."""
    place = standing(site, device)
    space = space_at(site, place.storey, (place.x_m, place.y_m))
    if space is None:
        return ()
    height = min(max(place.height_m, sheet.height_low_m), sheet.height_high_m)
    # No place has fewer minutes at all norths than at one of them.
    at_least = sorted(
        (lens_minutes(site, catalogue, hung_at(device, spot, height_m=height), norths=(sun.north,)), spot)
        for spot in wall_spots(site, space, height_m=height)
    )
    best: tuple[float, WallSpot] | None = None
    for fewest, spot in at_least:
        if best is not None and fewest > best[0]:
            break
        found = (lens_minutes(site, catalogue, hung_at(device, spot, height_m=height)), spot)
        best = found if best is None else min(best, found)
    if best is None or best[0] >= 0.9 * sun.lens.value:
        return ()
    minutes, spot = best
    values = spot.values(height, heading_deg=spot.heading_deg % 360.0)
    gain = Estimate(value=minutes, low=minutes, high=minutes, unit="min", basis="default")
    return (Mend(action="move-device", subject=device.id, values=values, gain=gain),)
