"""Distances of smoke, heat, CO and water devices that have a published limit: a check, no fire design."""

from __future__ import annotations

import math
from typing import NamedTuple

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount, FreeMount
from wardwright.model.fabric import Space
from wardwright.model.fixture import Fixture
from wardwright.model.floor import solid_walls, storey_parts
from wardwright.model.limits import Limit
from wardwright.model.placement import (
    ceiling_height,
    fixture_outline,
    opening_line,
    sides_of_opening,
)
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.fire.burning_appliance_without_co_alarm import BURNING
from wardwright.rules.fire_alarms import (
    HABITABLE,
    Alarm,
    below,
    doors_of,
    is_cooker,
    to_fixture_m,
    walk_m,
)
from wardwright.rules.water_detectors import WaterDetector, to_water_m


class Distance(NamedTuple):
    """One distance with its limit."""

    what: str
    """Such as `to the nearest wall`."""
    value_m: float
    limit: Limit
    is_least: bool
    """Whether it is to be at least the limit; otherwise at most."""
    to: Point2 | None
    """Where it is measured to on the plan; None: not on the plan. [m]"""

    @property
    def margin_m(self) -> float:
        """How far it keeps within its limit; negative beyond it. [m]"""
        return self.value_m - self.limit.value if self.is_least else self.limit.value - self.value_m


def distances_of_alarm(site: Site, catalogue: Catalogue, alarm: Alarm) -> tuple[Distance, ...]:
    """All distances of one smoke, heat or CO alarm that the rule pack has a figure for.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        The limits.
    alarm : Alarm
        The alarm in its place.

    Returns
    -------
    tuple of Distance
        Empty where the pack has none for such a device. [m]
    """
    kind = alarm.row.kind
    found = [*_to_wall(site, catalogue, alarm), *_under_the_ceiling(site, catalogue, alarm)]
    if kind == "smoke-alarm":
        found += _from_cooking_and_damp(site, catalogue, alarm)
    if kind == "heat-alarm" and alarm.space is not None:
        corner = max(alarm.space.outline_m, key=lambda one: math.dist(one, alarm.point))
        found += _with_limit(
            site, catalogue, "heat-alarm-reach", what="to the farthest corner of its room",
            measured=(math.dist(corner, alarm.point), corner),
        )  # fmt: skip
    if kind == "co-alarm":
        found += _from_burning(site, catalogue, alarm)
    return tuple(found)


def _with_limit(
    site: Site, catalogue: Catalogue, limit_id: str, *, what: str, measured: tuple[float, Point2 | None]
) -> list[Distance]:
    """A distance under the pack's first limit of an id, if it has one and the distance is known."""
    value, to = measured
    if math.isinf(value):
        return []
    # By their names: what is at most is a reach, a walk, or the far end of a range.
    is_most = limit_id.endswith("-most") or limit_id in MOST
    return [
        Distance(what, value, limit, not is_most, to)
        for limit in catalogue.limits_in(limit_id, site.place.rule_pack)[:1]
    ]


MOST = frozenset(
    {"heat-alarm-reach", "water-detector-to-water", "smoke-alarm-to-bedroom-door", "smoke-alarm-to-room-door"}
)
"""Limits that are not to be exceeded."""


def _to_wall(site: Site, catalogue: Catalogue, alarm: Alarm) -> list[Distance]:
    if not isinstance(alarm.device.mount, CeilingMount):
        return []
    walls = solid_walls(storey_parts(site, alarm.place.storey))
    if walls.is_empty:
        return []
    name = "co-alarm-to-wall" if alarm.row.kind == "co-alarm" else "alarm-to-wall"
    to = shapely.get_coordinates(shapely.shortest_line(shapely.Point(alarm.point), walls))[1]
    measured = (math.dist(to, alarm.point), (float(to[0]), float(to[1])))
    return _with_limit(site, catalogue, name, what="to the nearest wall", measured=measured)


def _under_the_ceiling(site: Site, catalogue: Catalogue, alarm: Alarm) -> list[Distance]:
    # On a ceiling its own body sets how far below it senses.
    if isinstance(alarm.device.mount, CeilingMount | FreeMount):
        return []
    under = ceiling_height(site, alarm.place.storey, alarm.point) - alarm.place.height_m
    found = []
    for end in ("least", "most"):
        name = f"{alarm.row.kind}-below-ceiling-{end}"
        found += _with_limit(site, catalogue, name, what="below the ceiling", measured=(under, None))
    return found


def _nearest(site: Site, alarm: Alarm, things: list[Fixture]) -> tuple[float, Point2 | None, str]:
    """The nearest of some fixtures that no wall hides: how far, where, and its name."""
    each = [(to_fixture_m(site, alarm.place.storey, alarm.point, fixture=one), one.id, one) for one in things]
    distance, _, fixture = min(each, default=(math.inf, "", None))
    if fixture is None or math.isinf(distance):
        return math.inf, None, ""
    outline = shapely.Polygon(fixture_outline(fixture))
    to = shapely.get_coordinates(shapely.shortest_line(shapely.Point(alarm.point), outline))[1]
    return distance, (float(to[0]), float(to[1])), fixture.name


def _from_cooking_and_damp(site: Site, catalogue: Catalogue, alarm: Alarm) -> list[Distance]:
    found = []
    cooker = _nearest(site, alarm, [one for one in site.fixtures if is_cooker(site, one)])
    vent = _nearest(site, alarm, [one for one in site.fixtures if one.kind == "vent"])
    found += _with_limit(
        site, catalogue, "smoke-alarm-to-cooking", what=f"to {cooker[2]}", measured=cooker[:2]
    )
    found += _with_limit(
        site, catalogue, "smoke-alarm-to-moving-air", what=f"to {vent[2]}", measured=vent[:2]
    )
    doors = []
    for opening in site.openings:
        wall = site.wall(opening.wall)
        uses = {site.space(side).use for side in sides_of_opening(site, opening) if side is not None}
        if opening.kind == "door" and wall.storey == alarm.place.storey and uses & {"bathroom", "kitchen"}:
            line = shapely.LineString(opening_line(wall, opening))
            to = shapely.get_coordinates(shapely.shortest_line(shapely.Point(alarm.point), line))[1]
            doors.append((math.dist(to, alarm.point), opening.name, (float(to[0]), float(to[1]))))
    if doors:
        distance, name, place = min(doors)
        found += _with_limit(
            site, catalogue, "smoke-alarm-to-wet-door", what=f"to {name}", measured=(distance, place)
        )
    return found


def _from_burning(site: Site, catalogue: Catalogue, alarm: Alarm) -> list[Distance]:
    burning = _nearest(
        site, alarm, [one for one in site.fixtures if one.kind in BURNING and not is_cooker(site, one)]
    )
    cooker = _nearest(site, alarm, [one for one in site.fixtures if is_cooker(site, one)])
    found = []
    for end in ("least", "most"):
        name = f"co-alarm-to-appliance-{end}"
        found += _with_limit(site, catalogue, name, what=f"to {burning[2]}", measured=burning[:2])
    return found + _with_limit(
        site, catalogue, "co-alarm-to-cooker-least", what=f"to {cooker[2]}", measured=cooker[:2]
    )


def distances_of_water(site: Site, catalogue: Catalogue, one: WaterDetector) -> tuple[Distance, ...]:
    """The distance of a water detector's contacts to the nearest thing that may leak; empty where none is drawn."""
    found = to_water_m(site, one.place.storey, one.point)
    if found is None:
        return ()
    distance, fixture = max(0.0, found[0] - one.sheet.lead_m), found[1]
    measured = (distance, fixture.centre_m)
    return tuple(
        _with_limit(site, catalogue, "water-detector-to-water", what=f"to {fixture.name}", measured=measured)
    )


def distance_of_room(
    site: Site, catalogue: Catalogue, room: Space, *, smoke: tuple[Alarm, ...]
) -> Distance | None:
    """The walk from the nearest smoke alarm to a habitable room's door; None where none is asked or found."""
    if room.use not in HABITABLE or not room.is_protected:
        return None
    walks = [
        (walk_m(site, door, below(alarm)), (door.x, door.y))
        for door in doors_of(site, room)
        for alarm in smoke
    ]
    name = "smoke-alarm-to-bedroom-door" if room.use == "bedroom" else "smoke-alarm-to-room-door"
    words = "walk from the nearest smoke alarm to its door"
    found = _with_limit(site, catalogue, name, what=words, measured=min(walks, default=(math.inf, None)))
    return found[0] if found else None
