"""MOV102: a movement detector higher or lower than its sheet says."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, FreeMount, WallMount
from wardwright.model.placement import ceiling_height, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import movement_detectors
from wardwright.rules.registry import exactly, rule

ROUNDING_M = 1e-6
"""Heights closer to the limit than this are the limit. [m] (assumption)"""
ROOM_ABOVE_M = 0.05
"""How far a device's middle stays below the ceiling. [m] (assumption)"""


@rule(
    code="MOV102",
    name="movement-detector-height-outside-its-sheet",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="must mend",
    sources=(),
)
def movement_detector_height_outside_its_sheet(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Movement detectors mounted higher or lower than their own sheet says.

    What it checks
        For each movement detector, the height of its middle above the floor it watches, against the two heights on
        its sheet.
    Why it matters
        The fan is aimed for those heights. Too low, furniture hides more and pets come into it; too high, its near
        part passes over people and its far part ends short of the sheet's reach.
    How to put it right
        Move it straight up or down to the nearest height inside the sheet. Under a low slope, move it to a place
        where that height exists.
    What it cannot know
        Settings inside the detector that let it hang at another height; steps and platforms in the floor before it.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each detector outside its sheet, with its height and the nearest height inside [m].

    Raises
    ------
    NotComputable
        If there is no movement detector.
    """
    this = movement_detector_height_outside_its_sheet
    for device, sheet in movement_detectors(site, catalogue):
        place = standing(site, device)
        nearest = min(max(place.height_m, sheet.height_low_m), sheet.height_high_m)
        if abs(nearest - place.height_m) <= ROUNDING_M:
            continue
        mend = _moved_up_or_down(site, device, nearest)
        side = "higher" if place.height_m > nearest else "lower"
        yield this.finding(
            device.id,
            f"{device.name}: it is mounted {side} than its sheet says",
            cure="Move it straight up or down to the height given"
            if mend
            else "Mount it where a height inside its sheet exists, or use a detector made for this place",
            estimate=exactly(place.height_m, "m", device.basis_of("mount")),
            limit=nearest,
            mends=mend,
            sketches=(
                Sketch(
                    role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=device.name
                ),
            ),
        )


def _moved_up_or_down(site: Site, device: Device, height_m: float) -> tuple[Mend, ...]:
    """The mend, where the device is on something that lets it move and there is room below the ceiling."""
    if not isinstance(device.mount, (WallMount, FreeMount)):
        return ()
    place = standing(site, device)
    if height_m > ceiling_height(site, place.storey, (place.x_m, place.y_m)) - ROOM_ABOVE_M:
        return ()
    return (Mend(action="move-device", subject=device.id, values=(("height_m", height_m),)),)
