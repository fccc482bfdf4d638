"""FIR106: a corner of a room that its heat alarm is too far from."""

from __future__ import annotations

import math
from collections.abc import Iterator

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.fabric import Space
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.alarm_spots import moved_alarm
from wardwright.rules.finding import Finding
from wardwright.rules.fire_alarms import Alarm, advised, alarms
from wardwright.rules.limits import limit_for, severity_of
from wardwright.rules.registry import exactly, rule
from wardwright.rules.suggestion import suggestions

SLIVER_M2 = 0.01
"""Less floor than this out of reach is rounding of the circle. [m2] (assumption)"""


@rule(
    code="FIR106",
    name="heat-alarm-beyond-its-reach",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("bs-5839-6",),
)
def heat_alarm_beyond_its_reach(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Rooms with a heat alarm that has a corner of the room out of its reach.

    What it checks
        For each space with heat alarms: whether every point of its floor is within 5.3 m, level, of one of them, in
        the British and European rule pack. For America no such figure is known, and the rule says so.
    Why it matters
        Heat spreads under the ceiling and cools as it goes: a fire in the far corner is large before the alarm
        feels it.
    How to put it right
        Move it to the middle, at the place given, or add a second one.
    What it cannot know
        Beams that hold the heat up; the part of an open-plan room that is the kitchen. It is a check of distances,
        not a fire design: the local code and licensed practice decide.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets and the limits.

    Yields
    ------
    Finding
        One for each such space, about its first heat alarm, with the distance to the farthest corner and the reach
        [m].

    Raises
    ------
    NotComputable
        If there is no heat alarm, or the rule pack has no figure.
    """
    this = heat_alarm_beyond_its_reach
    present = alarms(site, catalogue, "heat-alarm")
    reach = limit_for(catalogue, "heat-alarm-reach", site)
    rooms: dict[str, tuple[Space, list[Alarm]]] = {}
    for alarm in present:
        if alarm.space is None:
            yield this.not_run(
                alarm.device.id,
                f"{alarm.device.name}: it is in no space",
                cure="Draw the space that it is in",
            )
        else:
            rooms.setdefault(alarm.space.id, (alarm.space, []))[1].append(alarm)
    for space, inside in rooms.values():
        if not _is_left_out(space, [one.point for one in inside], reach.value):
            continue
        first = inside[0]
        others = [one.point for one in inside[1:]]

        def fits(point: Point2, space: Space = space, others: list[Point2] = others) -> bool:
            return not _is_left_out(space, [point, *others], reach.value)

        mends = moved_alarm(site, catalogue, first, fits=fits)
        yield this.finding(
            first.device.id,
            f"{first.device.name}: a part of {space.name} is out of its reach",
            cure=advised(
                "Move it to the place given" if mends else "Add a second heat alarm", catalogue, reach
            ),
            severity=severity_of(reach),
            estimate=exactly(
                max(min(math.dist(corner, one.point) for one in inside) for corner in space.outline_m),
                "m",
                first.device.basis_of("mount"),
            ),
            limit=reach.value,
            mends=mends,
            sketches=suggestions(site, mends),
            related=tuple(one.device.id for one in inside[1:]),
        )


def _is_left_out(space: Space, points: list[Point2], reach_m: float) -> bool:
    """Whether a part of a space is farther than the reach from all of the points."""
    if (
        all(min(math.dist(corner, point) for point in points) <= reach_m for corner in space.outline_m)
        and len(points) == 1
    ):
        return False
    circles = [shapely.Point(point).buffer(reach_m, quad_segs=64) for point in points]
    return bool(shapely.Polygon(space.outline_m).difference(shapely.union_all(circles)).area > SLIVER_M2)
