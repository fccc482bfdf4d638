"""FIR107: an alarm on a sloped ceiling, far from its highest line."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.fabric import Space
from wardwright.model.placement import CEILING_DROP_M, ceiling_height, slope_plane
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.alarm_spots import moved_alarm
from wardwright.rules.finding import Finding
from wardwright.rules.fire_alarms import advised, alarms
from wardwright.rules.limits import limit_for, severity_of
from wardwright.rules.registry import exactly, rule
from wardwright.rules.suggestion import suggestions

LEVEL_M = 1e-6
"""Heights closer than this are the same. [m] (assumption)"""
FAR_M = 100.0
"""Longer than any room. [m] (assumption)"""


@rule(
    code="FIR107",
    name="alarm-off-the-apex-of-a-sloped-ceiling",
    since="0.1",
    stage="trial use",
    mark="published",
    severity="check with the standard",
    sources=("bs-5839-6", "nfpa-72"),
)
def alarm_off_the_apex_of_a_sloped_ceiling(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Smoke and heat alarms under a sloped ceiling that hang far from its highest line.

    What it checks
        For each smoke or heat alarm whose space has a higher ceiling than where it hangs: the level distance from
        the alarm to the highest line of that ceiling, against 900 mm, and 36 in in America. Sources disagree: some
        ask for 600 mm straight down instead.
    Why it matters
        Smoke runs up a slope and gathers under the ridge; an alarm low on the slope is passed by.
    How to put it right
        Move it near the ridge, to the place given, but not into the topmost 100 mm.
    What it cannot know
        Collar beams and boxed-in ridges that nobody drew; which of the figures the edition in force has. It is a
        check of distances, not a fire design: the local code and licensed practice decide.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets and the limits.

    Yields
    ------
    Finding
        One for each such alarm, with the distance to the highest line and the limit [m].

    Raises
    ------
    NotComputable
        If there is no smoke or heat alarm.
    """
    this = alarm_off_the_apex_of_a_sloped_ceiling
    most = limit_for(catalogue, "alarm-from-apex", site)
    for alarm in alarms(site, catalogue, "smoke-alarm", "heat-alarm"):
        space, storey = alarm.space, alarm.place.storey
        if space is None or not site.storey(storey).slopes:
            continue
        top, ridge = highest_line(site, space)
        if ceiling_height(site, storey, alarm.point) >= top - CEILING_DROP_M:
            continue

        def far_m(point: Point2, ridge: shapely.Geometry = ridge) -> float:
            return float(ridge.distance(shapely.Point(point)))

        distance = far_m(alarm.point)
        if distance <= most.value:
            continue

        def fits(point: Point2, ridge: shapely.Geometry = ridge) -> bool:
            return float(ridge.distance(shapely.Point(point))) <= most.value

        mends = moved_alarm(site, catalogue, alarm, fits=fits)
        yield this.finding(
            alarm.device.id,
            f"{alarm.device.name}: it hangs far from the highest line of the sloped ceiling",
            cure=advised("Move it near the ridge", catalogue, most),
            severity=severity_of(most),
            estimate=exactly(distance, "m", alarm.device.basis_of("mount")),
            limit=most.value,
            mends=mends,
            sketches=suggestions(site, mends),
        )


def highest_line(site: Site, space: Space) -> tuple[float, shapely.Geometry]:
    """How high the ceiling of a space is at its highest, and where on the plan: a point, a line or an area. [m]"""
    floor = shapely.Polygon(space.outline_m)
    storey = site.storey(space.storey)
    planes = [slope_plane(slope.corners_m) for slope in storey.slopes]
    planes.append((0.0, 0.0, storey.height_m if space.height_m is None else space.height_m))
    places = [(float(x), float(y)) for x, y in shapely.get_coordinates(floor.exterior)]
    outlines = [shapely.Polygon([(x, y) for x, y, _ in slope.corners_m]).exterior for slope in storey.slopes]
    lines = [_crease(first, second) for first, second in combinations(planes, 2)]
    for line in (*outlines, *(one for one in lines if one is not None)):
        places += [(float(x), float(y)) for x, y in shapely.get_coordinates(line.intersection(floor))]
    heights = [(ceiling_height(site, space.storey, place), place) for place in places]
    top = max(height for height, _ in heights)
    highest = shapely.MultiPoint([place for height, place in heights if height >= top - LEVEL_M])
    return top, highest.convex_hull


def _crease(
    first: tuple[float, float, float], second: tuple[float, float, float]
) -> shapely.LineString | None:
    """Where two planes meet, on the plan, as a long line; None where they are parallel."""
    a, b, c = (one - other for one, other in zip(first, second, strict=True))
    size = a * a + b * b
    if size < LEVEL_M**2:
        return None
    x, y, long = -a * c / size, -b * c / size, FAR_M / size**0.5
    return shapely.LineString([(x - b * long, y + a * long), (x + b * long, y - a * long)])
