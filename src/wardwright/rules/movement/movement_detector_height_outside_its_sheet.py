"""MOV102: a movement detector higher or lower than its sheet says."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount
from wardwright.model.placement import ceiling_height, standing
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import movement_detectors
from wardwright.rules.registry import exactly, rule
from wardwright.rules.sheet_heights import moved_under_ceiling, moved_up_or_down, nearest_inside
from wardwright.rules.suggestion import suggestions


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
        For each movement detector, the height of its middle above the floor it watches, or the height of the ceiling
        that it hangs on, against the two heights on its sheet.
    Why it matters
        The fan is aimed for those heights. Too low, furniture hides more and pets come into it; too high, its near
        part passes over people and its far part ends short of the sheet's reach.
    How to put it right
        Move it straight up or down to the nearest height inside the sheet; one on a ceiling to the nearest place of
        its room where the ceiling is right. Under a low slope, move it to a place where that height exists.
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
        here = (place.x_m, place.y_m)
        hangs = isinstance(device.mount, CeilingMount)
        height = ceiling_height(site, place.storey, here) if hangs else place.height_m
        nearest = nearest_inside(height, sheet.height_low_m, sheet.height_high_m)
        if nearest is None:
            continue
        mends = (
            moved_under_ceiling(site, device, low_m=sheet.height_low_m, high_m=sheet.height_high_m)
            if hangs
            else moved_up_or_down(site, device, nearest)
        )
        side = "higher" if height > nearest else "lower"
        yield this.finding(
            device.id,
            f"{device.name}: {'its ceiling is' if hangs else 'it is mounted'} {side} than its sheet says",
            cure=_cure(mends, hangs=hangs),
            estimate=exactly(height, "m", _known(site, place.storey) if hangs else device.basis_of("mount")),
            limit=nearest,
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=place.storey, points=(here,), label=device.name),
                *suggestions(site, mends),
            ),
        )


def _cure(mends: tuple[Mend, ...], *, hangs: bool) -> str:
    if not mends:
        return "Mount it where a height inside its sheet exists, or use a detector made for this place"
    return "Move it to the place given" if hangs else "Move it straight up or down to the height given"


def _known(site: Site, storey: str) -> Basis:
    return site.storey(storey).basis_of("height_m")
