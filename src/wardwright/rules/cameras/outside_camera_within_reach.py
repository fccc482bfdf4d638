"""CAM101: a camera outside that a standing person reaches."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.camera_kit import outside_cameras
from wardwright.rules.finding import Finding
from wardwright.rules.footings import footings_near, level_of_place
from wardwright.rules.outside_spots import moved_outside
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.sheet_heights import ROUNDING_M
from wardwright.rules.suggestion import suggestions


@rule(
    code="CAM101",
    name="outside-camera-within-reach",
    since="0.1",
    stage="trial use",
    mark="assumption",
    severity="advise",
    sources=("own",),
)
def outside_camera_within_reach(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Cameras outside that somebody reaches who stands below or beside them.

    What it checks
        For each camera outside, how high it hangs above everything within 0.5 m of it that anybody may stand on: the
        ground, a thing that can be climbed, a flat roof, an outside stair, a gallery. Held against the height that a
        tall person reaches with a hand stretched up.
    Why it matters
        A camera in reach is turned to the wall, covered or pulled off before anything happens in front of it.
    How to put it right
        Move it to the height given, or to the place given where its wall or its sheet ends below that height. Then
        look at its picture again: from higher up it shows less of a face.
    What it cannot know
        What is carried there: a bin, a ladder left out, a stick. Whether the thing it is near can really be climbed.

    Parameters
    ----------
    site : Site
        The house, the ground about it and the devices.
    catalogue : Catalogue
        The devices' sheets, and how high people reach.

    Yields
    ------
    Finding
        One for each camera within reach, with its height above what one stands on [m].

    Raises
    ------
    NotComputable
        If there is no camera outside.
    """
    this = outside_camera_within_reach
    reach = catalogue.figure("reach-up").high
    for device, sheet in outside_cameras(site, catalogue):
        place = standing(site, device)
        foot = footings_near(site, place)[0]
        above = level_of_place(site, place) - foot.level_m
        if above >= reach - ROUNDING_M:
            continue
        mends = moved_outside(
            site,
            device,
            low_m=sheet.height_low_m,
            high_m=sheet.height_high_m,
            out_of_reach_m=reach,
            ladder_m=catalogue.figure("ladder-work").value,
        )
        here = (place.x_m, place.y_m)
        yield this.finding(
            device.id,
            f"{device.name}: it can be reached by hand from {foot.name}",
            cure="Move it to the place given, then look at its picture again"
            if mends
            else "Mount it higher or elsewhere: no place on our outer walls is out of reach and inside its sheet",
            estimate=exactly(above, "m", weakest(device.basis_of("mount"), foot.basis)),
            limit=reach,
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=place.storey, points=(here,), label=device.name),
                *suggestions(site, mends),
            ),
            related=() if foot.subject is None else (foot.subject,),
        )
