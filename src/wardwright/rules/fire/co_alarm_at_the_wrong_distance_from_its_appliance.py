"""FIR109: a CO alarm too near to what burns, or too far away."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.limits import Limit
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.alarm_spots import ROUNDING_M, moved_alarm
from wardwright.rules.finding import Finding
from wardwright.rules.fire.burning_appliance_without_co_alarm import BURNING
from wardwright.rules.fire_alarms import advised, alarms, is_cooker, to_fixture_m
from wardwright.rules.limits import severity_of
from wardwright.rules.registry import exactly, rule
from wardwright.rules.suggestion import suggestions


@rule(
    code="FIR109",
    name="co-alarm-at-the-wrong-distance-from-its-appliance",
    since="0.1",
    stage="trial use",
    mark="published",
    severity="check with the standard",
    sources=("en-50292", "nachi-co-guidance"),
)
def co_alarm_at_the_wrong_distance_from_its_appliance(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """CO alarms in the room of a stove, fire or boiler that are nearer or farther than the rule pack asks.

    What it checks
        For each CO alarm whose room has such an appliance: the level distance to the nearest, against 1 to 3 m in
        the British and European rule pack. The American advice is the opposite, at least 15 ft away, and 5 ft from
        a cooker: the rule pack decides.
    Why it matters
        Too near, it rings for the puff of each lighting; too far, it is late.
    How to put it right
        Move it to the place given, on the ceiling of the same room.
    What it cannot know
        Which way the air moves; whether the appliance burns anything. Both figures are disputed between countries.
        It is a check of distances, not a fire design: the local code and licensed practice decide.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets and the limits.

    Yields
    ------
    Finding
        One for each such alarm, with the distance and the limit that it breaks [m].

    Raises
    ------
    NotComputable
        If there is no CO alarm, or no such appliance is drawn.
    """
    this = co_alarm_at_the_wrong_distance_from_its_appliance
    present = alarms(site, catalogue, "co-alarm")
    if not any(fixture.kind in BURNING or is_cooker(site, fixture) for fixture in site.fixtures):
        raise NotComputable("no stove, fire or boiler is drawn", cure="Add what burns gas, oil, wood or coal")
    for alarm in present:
        storey = alarm.place.storey
        found = _broken(site, catalogue, storey, point=alarm.point)
        if found is None:
            continue

        def fits(point: Point2, storey: str = storey) -> bool:
            return _broken(site, catalogue, storey, point=point) is None

        distance, limit = found
        mends = moved_alarm(site, catalogue, alarm, fits=fits)
        yield this.finding(
            alarm.device.id,
            f"{alarm.device.name}: it is too {'near to' if distance < limit.value else 'far from'} what burns",
            cure=advised("Move it to the place given" if mends else "Move it", catalogue, limit),
            severity=severity_of(limit),
            estimate=exactly(distance, "m", alarm.device.basis_of("mount")),
            limit=limit.value,
            mends=mends,
            sketches=suggestions(site, mends),
        )


def _broken(site: Site, catalogue: Catalogue, storey: str, *, point: Point2) -> tuple[float, Limit] | None:
    """The distance to the nearest appliance of the room and the limit that it breaks; None where it breaks none."""
    pack = site.place.rule_pack
    burning = [
        to_fixture_m(site, storey, point, fixture=one)
        for one in site.fixtures
        if one.kind in BURNING and not is_cooker(site, one)
    ]
    cookers = [
        to_fixture_m(site, storey, point, fixture=one) for one in site.fixtures if is_cooker(site, one)
    ]
    nearest, cooker = min(burning, default=math.inf), min(cookers, default=math.inf)
    for name, distance in (("co-alarm-to-appliance-least", nearest), ("co-alarm-to-cooker-least", cooker)):
        for limit in catalogue.limits_in(name, pack)[:1]:
            if distance < limit.value - ROUNDING_M:
                return distance, limit
    for limit in catalogue.limits_in("co-alarm-to-appliance-most", pack)[:1]:
        if limit.value + ROUNDING_M < nearest < math.inf:
            return nearest, limit
    return None
