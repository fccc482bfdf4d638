"""FIR103: a ceiling alarm closer to a wall than is asked."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.alarm_spots import ROUNDING_M, moved_alarm
from wardwright.rules.finding import Finding
from wardwright.rules.fire_alarms import advised, alarms, to_walls_m
from wardwright.rules.limits import limit_for, severity_of
from wardwright.rules.registry import exactly, rule
from wardwright.rules.suggestion import suggestions


@rule(
    code="FIR103",
    name="alarm-too-near-a-wall",
    since="0.1",
    stage="trial use",
    mark="published",
    severity="advise",
    sources=("bs-5839-6", "en-50292"),
)
def alarm_too_near_a_wall(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Smoke, heat and CO alarms on a ceiling that are too near to a wall.

    What it checks
        For each alarm on a ceiling, the distance on the plan from its middle to the nearest wall, against 300 mm in
        the British and European rule pack. For America no such figure is known, and the rule says so.
    Why it matters
        In the corner between wall and ceiling the air stands still: smoke and gas come there last.
    How to put it right
        Move it out onto the ceiling, to the place given.
    What it cannot know
        Beams and boxed-in pipes that nobody drew; light fittings, which are to be kept as far away. It is a check
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
        One for each such alarm, with the distance and the limit [m].

    Raises
    ------
    NotComputable
        If there is no such alarm, or the rule pack has no figure.
    """
    this = alarm_too_near_a_wall
    for alarm in alarms(site, catalogue, "smoke-alarm", "heat-alarm", "co-alarm"):
        name = "co-alarm-to-wall" if alarm.row.kind == "co-alarm" else "alarm-to-wall"
        least = limit_for(catalogue, name, site)
        distance = to_walls_m(site, alarm.place.storey, alarm.point)
        if not isinstance(alarm.device.mount, CeilingMount) or distance >= least.value - ROUNDING_M:
            continue

        def fits(point: Point2, storey: str = alarm.place.storey, least_m: float = least.value) -> bool:
            return to_walls_m(site, storey, point) >= least_m - ROUNDING_M

        mends = moved_alarm(site, catalogue, alarm, fits=fits)
        yield this.finding(
            alarm.device.id,
            f"{alarm.device.name}: it is too near to a wall",
            cure=advised("Move it out onto the ceiling", catalogue, least),
            severity=severity_of(least),
            estimate=exactly(distance, "m", alarm.device.basis_of("mount")),
            limit=least.value,
            mends=mends,
            sketches=suggestions(site, mends),
        )
