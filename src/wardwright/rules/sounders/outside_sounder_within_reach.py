"""SND102: an outside sounder that is reached without a ladder."""

from __future__ import annotations

import math
from collections.abc import Iterator

import shapely

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.placement import Standing, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.model.surroundings import GroundThing
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.footings import is_climbable, outline_of
from wardwright.rules.held_to import severity_by
from wardwright.rules.kit import some_of
from wardwright.rules.registry import exactly, rule, weakest

ACROSS_M = 1.5
"""How far sideways one reaches from a thing that is climbed. [m] (assumption)"""
BELOW_EAVES_M = 0.2
"""How far a sounder stays below the top of its wall. [m] (assumption)"""


@rule(
    code="SND102",
    name="outside-sounder-within-reach",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def outside_sounder_within_reach(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Outside sounders that are reached from the ground or from something that is climbed.

    What it checks
        The height of each outside sounder above the ground, and above anything within 1.5 m sideways that can be
        climbed (as it is told; a wall, shed, flat roof, bin or car also where nobody has said): against 3 m, which is
        the custom, and against 4 m, which insurers are said to ask. No published source was found for either: under
        3 m it is advised to move it, between the two to ask.
    Why it matters
        A sounder in reach is filled with foam, muffled or torn off before the house is entered.
    How to put it right
        Move it up its wall to the height given, in view of the approach, where a ladder stands on firm ground for
        its service. Or take away what is climbed.
    What it cannot know
        Bins, cars and ladders that come and go; eaves and gutters; what the user's insurer wrote.

    Parameters
    ----------
    site : Site
        The house, the ground and the devices.
    catalogue : Catalogue
        The devices' sheets and the heights.

    Yields
    ------
    Finding
        One for each such sounder, with its height and the height that is asked [m].

    Raises
    ------
    NoneOfAKind
        If there is no sounder.
    NotComputable
        If none of them is outside.
    """
    this = outside_sounder_within_reach
    outside = [device for device, sheet in some_of(site, catalogue, "sounder") if sheet.is_outside]
    if not outside:
        raise NotComputable("no outside sounder", cure="Add the outside sounder that is planned")
    pack = site.place.rule_pack
    custom = catalogue.limit("sounder-outside-height", pack)
    insurers = catalogue.limit("sounder-outside-height-insurers", pack)
    for sounder in outside:
        place = standing(site, sounder)
        above, thing = _height(site, place)
        limit = custom if above < custom.value else insurers
        if above >= insurers.value:
            continue
        base = "the ground" if thing is None else thing.name
        short = "the custom" if limit is custom else "insurers are said to ask"
        rise = insurers.value - above
        mends = _raised(
            site, sounder, place, to_m=(place.height_m + rise, place.height_m + custom.value - above)
        )
        yield this.finding(
            sounder.id,
            f"{sounder.name}: it hangs lower above {base} than {short}",
            cure="Move it up to the height given"
            if mends
            else "Hang it higher, or where nothing is climbed; its wall ends below the height asked",
            severity=severity_by(limit),
            estimate=exactly(above, "m", weakest(sounder.basis_of("mount"), site.ground.basis_of("level_m"))),
            limit=limit.value,
            mends=mends,
            sketches=(
                Sketch(
                    role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=sounder.name
                ),
            ),
            related=() if thing is None else (thing.id,),
        )


def _height(site: Site, place: Standing) -> tuple[float, GroundThing | None]:
    """Above the ground, or above the thing that brings one nearest to it. [m]"""
    up = site.storey(place.storey).elevation_m + place.height_m - site.ground.level_m
    here = shapely.Point(place.x_m, place.y_m)
    best: tuple[float, GroundThing | None] = (up, None)
    for thing in sorted(site.ground.things, key=lambda one: one.id):
        if is_climbable(thing) and outline_of(thing.outline_m).distance(here) <= ACROSS_M:
            best = min(best, (max(up - thing.height_m, 0.0), thing), key=lambda one: one[0])
    return best


def _raised(site: Site, sounder: Device, place: Standing, *, to_m: tuple[float, float]) -> tuple[Mend, ...]:
    """Straight up its wall, to the height that insurers ask, where its wall goes up so far."""
    if not isinstance(sounder.mount, WallMount):
        return ()
    wall, storey = site.wall(sounder.mount.wall), site.storey(place.storey)
    top = (
        (math.inf if _is_storey_above(site, place) else storey.height_m)
        if wall.height_m is None
        else wall.height_m
    )
    full, _ = to_m
    if full > top - BELOW_EAVES_M:
        return ()
    return (Mend(action="move-device", subject=sounder.id, values=(("height_m", full),)),)


def _is_storey_above(site: Site, place: Standing) -> bool:
    """Whether a storey that reaches high enough stands behind the same face."""
    own = site.storey(place.storey)
    near = shapely.Point(place.x_m, place.y_m).buffer(0.6)
    return any(
        storey.elevation_m > own.elevation_m
        and any(s.storey == storey.id and near.intersects(shapely.Polygon(s.outline_m)) for s in site.spaces)
        for storey in site.storeys
    )
