"""CTL106: a control unit that no lead reaches."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.placement import Standing, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.held_to import severity_by
from wardwright.rules.kit import some_of
from wardwright.rules.power_points import nearest_power, power_points, spots_by_power
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions
from wardwright.rules.unit_spots import USUAL_HEIGHT_M
from wardwright.rules.wall_spots import WallSpot


@rule(
    code="CTL106",
    name="control-unit-far-from-power",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def control_unit_far_from_power(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Control units that run on mains with no power point in reach of a lead.

    What it checks
        For each control unit that runs on mains, the straight distance to the nearest power point of its own room,
        against a lead of 2 m. That length is common practice; no published source was found.
    Why it matters
        A lead across a doorway is pulled out, and an extension lead is switched off by the vacuum cleaner. Mains
        work for a new point costs an electrician's visit.
    How to put it right
        Put it near a power point; the finding carries the nearest such place. Otherwise have a fused spur set there
        by a competent electrician.
    What it cannot know
        Power points that nobody drew; which of them are switched with the light, or already in use.

    Parameters
    ----------
    site : Site
        The house, its power points and devices.
    catalogue : Catalogue
        The devices' sheets, and the length of a lead.

    Yields
    ------
    Finding
        One for each such unit, with the distance [m] where its room has a power point.

    Raises
    ------
    NoneOfAKind
        If there is no control unit.
    NotComputable
        If no power point is drawn.
    """
    this = control_unit_far_from_power
    units = some_of(site, catalogue, "control-unit")
    power_points(site)
    limit = catalogue.limit("lead-to-power", site.place.rule_pack)
    for unit, sheet in units:
        if sheet.power != "mains":
            continue
        place = standing(site, unit)
        near = nearest_power(site, place)
        if near is not None and near[1] <= limit.value:
            continue
        mends = _moved(site, unit, place, lead_m=limit.value)
        new = suggestions(site, mends)
        yield this.finding(
            unit.id,
            f"{unit.name}: "
            + (
                "no power point is drawn in its room"
                if near is None
                else "no power point is in reach of its lead"
            ),
            cure=f"Move it to the place given, in {new[0].label}"
            if new
            else "Have a fused spur set beside it",
            severity=severity_by(limit),
            estimate=None
            if near is None
            else exactly(near[1], "m", weakest(unit.basis_of("mount"), near[0].basis_of("at_m"))),
            limit=None if near is None else limit.value,
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=unit.name),
                *new,
            ),
            related=() if near is None else (near[0].id,),
        )


def _moved(site: Site, unit: Device, place: Standing, *, lead_m: float) -> tuple[Mend, ...]:
    """To the nearest place by a power point, on its own storey before others."""
    height = unit.mount.height_m if isinstance(unit.mount, WallMount) else USUAL_HEIGHT_M

    def cost(spot: WallSpot) -> tuple[bool, float, WallSpot]:
        way = math.dist((spot.x_m, spot.y_m), (place.x_m, place.y_m))
        return (spot.storey != place.storey, round(way, 6), spot)

    best = min(spots_by_power(site, height_m=height, lead_m=lead_m), key=cost, default=None)
    return () if best is None else (Mend(action="move-device", subject=unit.id, values=best.values(height)),)
