"""CAM104: a camera higher or lower than its sheet says."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount
from wardwright.model.placement import ceiling_height, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.camera_kit import cameras
from wardwright.rules.finding import Finding
from wardwright.rules.footings import footing_below
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.sheet_heights import moved_under_ceiling, moved_up_or_down, nearest_inside
from wardwright.rules.suggestion import suggestions


@rule(
    code="CAM104",
    name="camera-height-outside-its-sheet",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="must mend",
    sources=(),
)
def camera_height_outside_its_sheet(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Cameras mounted higher or lower than their own sheet says.

    What it checks
        For each camera, the height of its middle above the floor, or above the ground where it hangs outside, against
        the two heights on its sheet; for one on a ceiling, the height of that ceiling.
    Why it matters
        Too high, it shows the tops of heads and no face. Too low, it is covered, turned or taken away by hand, and a
        passer-by fills its picture.
    How to put it right
        Move it straight up or down to the nearest height inside the sheet, then look at its picture again.
    What it cannot know
        Steps, slopes and banks in the ground before it: the ground is taken to be level all round the house.

    Parameters
    ----------
    site : Site
        The house, its ground and devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each camera outside its sheet, with its height and the nearest height inside [m].

    Raises
    ------
    NotComputable
        If there is no camera.
    """
    this = camera_height_outside_its_sheet
    for device, sheet in cameras(site, catalogue):
        place = standing(site, device)
        here, foot = (place.x_m, place.y_m), footing_below(site, place)
        below = foot.level_m - site.storey(place.storey).elevation_m
        hangs = isinstance(device.mount, CeilingMount)
        own = ceiling_height(site, place.storey, here) if hangs else place.height_m
        height = own if hangs else own - below
        nearest = nearest_inside(height, sheet.height_low_m, sheet.height_high_m)
        if nearest is None:
            continue
        mends = (
            moved_under_ceiling(site, device, low_m=sheet.height_low_m, high_m=sheet.height_high_m)
            if hangs
            else moved_up_or_down(site, device, nearest + below)
        )
        side = "higher" if height > nearest else "lower"
        yield this.finding(
            device.id,
            f"{device.name}: it is mounted {side} than its sheet says",
            cure="Move it to the place given, then look at its picture again"
            if mends
            else "Mount it where a height inside its sheet exists, or use a camera made for this place",
            estimate=exactly(height, "m", weakest(device.basis_of("mount"), foot.basis)),
            limit=nearest,
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=place.storey, points=(here,), label=device.name),
                *suggestions(site, mends),
            ),
        )
