"""WTR101: a water detector whose contacts are not where the first water stands."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import FreeMount
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.floor_spots import floor_spot, standing_over
from wardwright.rules.limits import cited, limit_for, severity_of
from wardwright.rules.registry import exactly, rule
from wardwright.rules.water_detectors import WaterDetector, water_detectors

LIES_M = 0.05
"""A detector without a lead whose middle is no higher than this lies on the floor. [m] (assumption)"""


@rule(
    code="WTR101",
    name="water-detector-off-the-floor",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def water_detector_off_the_floor(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Water detectors whose contacts hang above the floor, stand high on it, or are under a thing that covers them.

    What it checks
        How far the contacts are above the floor: the height of the detector less the length of its lead. For one
        that lies on the floor, the height of the contacts on its own sheet against 2 mm, and whether a fixture stands
        right on its place.
    Why it matters
        A leak begins as a film of a millimetre or two. Contacts above it tell when the ceiling below is already wet;
        contacts under a heavy thing cannot be laid there, or never tested.
    How to put it right
        Lay it on the floor, or hang it so that its lead reaches down; use one with lower contacts; put it in front of
        the fixture, or use a lead under it.
    What it cannot know
        A carpet or a plinth under it; a floor that falls away from it; whether the lead was laid out as planned.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets, and how high contacts may be.

    Yields
    ------
    Finding
        One for each such detector, with the height of its contacts above the floor and what is allowed [m].

    Raises
    ------
    NotComputable
        If there is no water detector.
    """
    this = water_detector_off_the_floor
    most = limit_for(catalogue, "water-contact-height", site)
    for one in water_detectors(site, catalogue):
        device, lead = one.device, one.sheet.lead_m
        allowed = lead if lead > 0.0 else LIES_M
        over = standing_over(site, one.place.storey, one.point)
        if one.place.height_m > allowed:
            yield this.finding(
                device.id,
                f"{device.name}: its contacts hang above the floor",
                cure="Lay it on the floor"
                if lead == 0.0
                else "Fix it lower, so that its lead lies on the floor",
                estimate=exactly(one.place.height_m - lead, "m", device.basis_of("mount")),
                limit=0.0 if lead > 0.0 else LIES_M,
                mends=(
                    Mend(
                        action="change-mount",
                        subject=device.id,
                        values=(("height_m", lead / 2 if lead > 0.0 else 0.0),),
                    ),
                ),
            )
        elif over is not None and lead == 0.0:
            yield this.finding(
                device.id,
                f"{device.name}: {over.name} stands on its place, and it has no lead",
                cure=f"Put it beside {over.name}, or use one with a lead",
                mends=_beside(site, one),
                related=(over.id,),
            )
        elif one.sheet.contact_height_m > most.value + 1e-9:
            yield this.finding(
                device.id,
                f"{device.name}: its contacts stand higher than a film of water",
                cure=f"Use one with lower contacts where the first film is to be told ({cited(catalogue, most)})",
                severity=severity_of(most),
                estimate=exactly(one.sheet.contact_height_m, "m", device.basis_of("sheet")),
                limit=most.value,
                mends=_lower(catalogue, one, most_m=most.value),
            )


def _beside(site: Site, one: WaterDetector) -> tuple[Mend, ...]:
    if one.space is None or not isinstance(one.device.mount, FreeMount):
        return ()
    spot = floor_spot(site, one.space, nearest_to=one.point, fits=lambda _: True)
    if spot is None:
        return ()
    values = (("x_m", spot[0]), ("y_m", spot[1]), ("height_m", 0.0))
    return (Mend(action="move-device", subject=one.device.id, values=values),)


def _lower(catalogue: Catalogue, one: WaterDetector, *, most_m: float) -> tuple[Mend, ...]:
    found = sorted(
        row.cheapest_first
        for row in catalogue.sheets
        if row.water is not None
        and row.water.contact_height_m <= most_m
        and row.water.lead_m >= one.sheet.lead_m
        and (not row.mounts or one.device.mount.on in row.mounts)
    )
    return tuple(
        Mend(action="replace-device", subject=one.device.id, values=(("sheet", name),))
        for *_, name in found[:1]
    )
