"""FIR105: a smoke alarm that cooking, steam or blown air sets off."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.limits import Limit
from wardwright.model.placement import opening_line, sides_of_opening
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.alarm_spots import moved_alarm
from wardwright.rules.finding import Finding
from wardwright.rules.fire_alarms import advised, alarms, is_cooker, to_fixture_m
from wardwright.rules.limits import severity_of
from wardwright.rules.registry import exactly, rule
from wardwright.rules.suggestion import suggestions


class _Near(NamedTuple):
    """Something that an alarm is too near to."""

    what: str
    thing: str
    distance_m: float
    limit: Limit


@rule(
    code="FIR105",
    name="smoke-alarm-too-near-cooking-or-damp",
    since="0.1",
    stage="trial use",
    mark="published",
    severity="advise",
    sources=("nfpa-72", "own"),
)
def smoke_alarm_too_near_cooking_or_damp(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Smoke alarms too near to a cooker, to the door of a bathroom or kitchen, or to blown air.

    What it checks
        On the plan, with no wall between: from each smoke alarm to each cooker that is drawn, against 3 m, and in
        America against 10 ft, or 20 ft for alarms that cooking may set off; there also 36 in to the door of a
        bathroom or kitchen and to a vent. A cooker is a stove in a
        kitchen, or an appliance of such a name.
    Why it matters
        An alarm that rings for toast is taken down within the month, and then there is none.
    How to put it right
        Move it to the place given; where no place keeps clear, use a heat alarm in the kitchen instead.
    What it cannot know
        Whether the alarm is of a kind that cooking does not set off; fans; where steam really drifts. It is a check
        of distances, not a fire design: the local code and licensed practice decide.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets and the limits.

    Yields
    ------
    Finding
        One for each such alarm, with the distance to what is nearest to it beyond its limit, and that limit [m];
        one of severity `not run` where no cooker is drawn.

    Raises
    ------
    NotComputable
        If there is no smoke alarm.
    """
    this = smoke_alarm_too_near_cooking_or_damp
    present = alarms(site, catalogue, "smoke-alarm")
    if not any(is_cooker(site, fixture) for fixture in site.fixtures):
        yield this.not_run(
            site.name, "No cooker is drawn", cure="Add the cooker, oven or hob where it stands"
        )
    for alarm in present:
        storey = alarm.place.storey
        near = _too_near(site, catalogue, storey, point=alarm.point)
        if not near:
            continue

        def fits(point: Point2, storey: str = storey) -> bool:
            return not _too_near(site, catalogue, storey, point=point)

        mends = moved_alarm(site, catalogue, alarm, fits=fits)
        new = suggestions(site, mends)
        worst = near[0]
        yield this.finding(
            alarm.device.id,
            f"{alarm.device.name}: it is too near to {worst.what}",
            cure=advised(
                "Move it to the place given"
                if mends
                else "Move it out of this space, or use a heat alarm there",
                catalogue,
                worst.limit,
            ),
            severity=severity_of(worst.limit),
            estimate=exactly(worst.distance_m, "m", alarm.device.basis_of("mount")),
            limit=worst.limit.value,
            mends=mends,
            sketches=(Sketch(role="fault", storey=storey, points=(alarm.point,), label=worst.what), *new),
            related=tuple(dict.fromkeys(one.thing for one in near)),
        )


def _too_near(site: Site, catalogue: Catalogue, storey: str, *, point: Point2) -> list[_Near]:
    """What a place is too near to, the greatest shortfall first; the outer zone of cooking last of all."""
    pack = site.place.rule_pack
    cookers = [
        (one.name, one.id, to_fixture_m(site, storey, point, fixture=one))
        for one in site.fixtures
        if is_cooker(site, one)
    ]
    vents = [
        (one.name, one.id, to_fixture_m(site, storey, point, fixture=one))
        for one in site.fixtures
        if one.kind == "vent"
    ]
    found: list[_Near] = []
    for name, things in (
        ("smoke-alarm-to-cooking", cookers),
        ("smoke-alarm-to-wet-door", _wet_doors(site, storey, point)),
        ("smoke-alarm-to-moving-air", vents),
        ("smoke-alarm-to-cooking-outer", cookers),
    ):
        if name == "smoke-alarm-to-cooking-outer" and found:
            break
        for limit in catalogue.limits_in(name, pack)[:1]:
            found.extend(_Near(what, thing, far, limit) for what, thing, far in things if far < limit.value)
    return sorted(found, key=lambda one: (one.distance_m - one.limit.value, one.thing))


def _wet_doors(site: Site, storey: str, point: Point2) -> list[tuple[str, str, float]]:
    """Doors of bathrooms and kitchens of a storey, with the distance on the plan. [m]"""
    found = []
    for opening in site.openings:
        wall = site.wall(opening.wall)
        uses = {site.space(side).use for side in sides_of_opening(site, opening) if side is not None}
        if opening.kind == "door" and wall.storey == storey and uses & {"bathroom", "kitchen"}:
            line = shapely.LineString(opening_line(wall, opening))
            found.append((f"the door {opening.name}", opening.id, float(line.distance(shapely.Point(point)))))
    return found
