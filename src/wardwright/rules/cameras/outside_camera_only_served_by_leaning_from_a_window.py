"""CAM102: a camera outside that is served only by leaning out of a window."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.camera_kit import outside_cameras
from wardwright.rules.finding import Finding
from wardwright.rules.ladders import height_over_ground, is_served_on_foot, nearest_window
from wardwright.rules.outside_spots import facing_off_its_wall, moved_outside
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions

LEANING_M = 1.5
"""From a window farther off than this nobody reaches a camera, even leaning out. [m] (assumption)"""


@rule(
    code="CAM102",
    name="outside-camera-only-served-by-leaning-from-a-window",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def outside_camera_only_served_by_leaning_from_a_window(
    site: Site, catalogue: Catalogue
) -> Iterator[Finding]:
    """Cameras outside that no ladder on firm ground serves, so that somebody will lean out of a window to them.

    What it checks
        For each camera outside, whether one gets to it from open ground with a usual ladder set at 1 in 4, or from a
        balcony of ours; and where not, how far the nearest window that opens is. One within 1.5 m is what people
        will lean out of.
    Why it matters
        Its lens is wiped and its cell changed again and again for years, by whoever lives there. Leaning out of an
        upper window with both hands full is how people fall.
    How to put it right
        Move it to the place given, which is served from a ladder on open ground and out of reach of a hand. Where
        there is none, have it served from a platform by somebody trained, and never lean out to it.
    What it cannot know
        Water, banks and soft ground, which nobody draws; whether a neighbour lets a ladder be set up; who is fit to
        climb one.

    Parameters
    ----------
    site : Site
        The house, the ground about it and the devices.
    catalogue : Catalogue
        The devices' sheets, and how far up one works from a ladder.

    Yields
    ------
    Finding
        One for each such camera, with its height above the ground [m], held against that of work from a ladder where
        it is too high for one.

    Raises
    ------
    NotComputable
        If there is no camera outside.
    """
    this = outside_camera_only_served_by_leaning_from_a_window
    ladder = catalogue.figure("ladder-work").value
    for device, sheet in outside_cameras(site, catalogue):
        place = standing(site, device)
        off = facing_off_its_wall(site, device)
        window = nearest_window(site, place)
        if is_served_on_foot(site, off, ladder) or window is None or window.distance_m > LEANING_M:
            continue
        height = height_over_ground(site, place)
        mends = moved_outside(
            site,
            device,
            low_m=sheet.height_low_m,
            high_m=sheet.height_high_m,
            out_of_reach_m=catalogue.figure("reach-up").high,
            ladder_m=ladder,
        )
        why = "it is too high for a ladder" if height > ladder else "no ladder stands firm below it"
        here = (place.x_m, place.y_m)
        yield this.finding(
            device.id,
            f"{device.name}: {why}, so that it is served by leaning out of {window.opening.name}",
            cure="Move it to the place given, and never lean out of a window to it"
            if mends
            else "Have it served from a platform, and never lean out of a window to it",
            estimate=exactly(height, "m", weakest(device.basis_of("mount"), site.ground.basis_of("level_m"))),
            limit=ladder if height > ladder else None,
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=place.storey, points=(here,), label=device.name),
                *suggestions(site, mends),
            ),
            related=(window.opening.id,),
        )
