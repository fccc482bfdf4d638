"""Smoke, heat and CO alarms in their places, and the walks from them: for a check of distances, not a fire design."""

from __future__ import annotations

import math
import re
from typing import NamedTuple

import shapely

from wardwright.errors import CatalogueError, NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import USUAL_MOUNTS, Device, DeviceKind
from wardwright.model.device_sheets import DeviceSheet, FireSheet
from wardwright.model.fabric import Space, SpaceUse
from wardwright.model.fixture import Fixture
from wardwright.model.floor import lets_through, solid_walls, storey_parts
from wardwright.model.limits import Limit
from wardwright.model.opening import Opening
from wardwright.model.placement import Standing, along, fixture_outline, sides_of_opening, space_at, standing
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Paces, Spot, fastest_route, premises_network
from wardwright.rules.kit import devices_of, some_of
from wardwright.rules.limits import cited

CAUTION = "a check of distances, not a fire design: the local code and licensed practice decide"
"""What every finding about these alarms says."""
WAYS_ABOUT: tuple[SpaceUse, ...] = ("hall", "landing", "stairwell")
"""Spaces one goes through to get out."""
HABITABLE: tuple[SpaceUse, ...] = ("bedroom", "living", "dining", "kitchen", "study", "conservatory")
"""Rooms whose doors are to be near to a smoke alarm. (from memory: kitchens count, bathrooms do not)"""
METRES = Paces(1.0, 1.0, 0.0)
"""At 1 m/s everywhere, through doors at once: the clock of a walk is its length."""
COOKERS = re.compile(r"\b(cookers?|hobs?|ovens?|ranges?)\b", re.IGNORECASE)
"""Names of things to cook on."""
THROUGH_WALL_M = 0.02
"""A straight line that is in walls for longer than this passes through one. [m] (assumption)"""


class Alarm(NamedTuple):
    """A smoke, heat or CO alarm in its place."""

    device: Device
    row: DeviceSheet
    sheet: FireSheet
    place: Standing
    space: Space | None

    @property
    def point(self) -> Point2:
        """Where it is on the plan. [m]"""
        return (self.place.x_m, self.place.y_m)

    @property
    def may_hang(self) -> bool:
        """Whether it goes on a ceiling."""
        return "ceiling" in (self.row.mounts or USUAL_MOUNTS[self.row.kind])


def alarms(site: Site, catalogue: Catalogue, *kinds: DeviceKind) -> tuple[Alarm, ...]:
    """All alarms of some kinds, by kind and id; NoneOfAKind, about the first kind, if there is none of any."""
    pairs = [pair for kind in kinds for pair in devices_of(site, catalogue, kind)]
    found = []
    for device, row in pairs or some_of(site, catalogue, kinds[0]):
        if row.fire is None:
            raise CatalogueError(
                f"a {row.kind} without a table 'fire'",
                where=f"catalogue, sheet '{row.id}'",
                cure="Add [sheet.fire] to it",
            )
        place = standing(site, device)
        space = space_at(site, place.storey, (place.x_m, place.y_m))
        found.append(Alarm(device, row, row.fire, place, space))
    return tuple(found)


def advised(text: str, catalogue: Catalogue, *limits: Limit) -> str:
    """A cure with where its limits are from, and the caution that all of these carry."""
    sources = "; ".join(dict.fromkeys(cited(catalogue, row) for row in limits))
    return f"{text} ({sources}; {CAUTION})" if sources else f"{text} ({CAUTION})"


def doors_of(site: Site, space: Space) -> tuple[Spot, ...]:
    """The middles of the doorways and open edges between a space and others of ours, by id."""
    found: list[Spot] = []
    for opening in sorted(site.openings, key=lambda one: one.id):
        sides = sides_of_opening(site, opening)
        if space.id in sides and lets_through(opening) and _is_inside(site, sides):
            found.append(door_spot(site, opening))
    for edge in sorted(site.open_edges, key=lambda one: one.id):
        if space.id in edge.spaces and _is_inside(site, edge.spaces):
            (ax, ay), (bx, by) = edge.line_m
            found.append(Spot(space.storey, (ax + bx) / 2, (ay + by) / 2))
    return tuple(found)


def _is_inside(site: Site, sides: tuple[str | None, str | None]) -> bool:
    return all(side is not None and site.space(side).is_protected for side in sides)


def door_spot(site: Site, opening: Opening) -> Spot:
    """The middle of a doorway."""
    wall = site.wall(opening.wall)
    return Spot(wall.storey, *along(wall.line_m, opening.offset_m))


def walk_m(site: Site, start: Spot, goal: Spot) -> float:
    """The length of the shortest walk between two places, along stairs too; inf where there is none. [m]"""
    try:
        route = fastest_route(premises_network(site), start, goal, paces=METRES)
    except NotComputable:
        return math.inf
    return math.inf if route is None else float(route.clock[-1])


def below(alarm: Alarm) -> Spot:
    """The place on the floor under an alarm."""
    return Spot(alarm.place.storey, *alarm.point)


def to_walls_m(site: Site, storey: str, point: Point2) -> float:
    """To the nearest wall on the plan; inf where none is drawn. [m]"""
    walls = solid_walls(storey_parts(site, storey))
    return math.inf if walls.is_empty else float(walls.distance(shapely.Point(point)))


def is_cooker(site: Site, fixture: Fixture) -> bool:
    """Whether a fixture is one to cook on: a stove in a kitchen, or an appliance of such a name."""
    space = space_at(site, fixture.storey, fixture.centre_m)
    if fixture.kind == "stove" and space is not None and space.use == "kitchen":
        return True
    return fixture.kind in ("stove", "appliance") and bool(COOKERS.search(fixture.name))


def to_fixture_m(site: Site, storey: str, point: Point2, *, fixture: Fixture) -> float:
    """To the nearest point of a fixture on the plan; inf behind a wall or on another storey. [m]"""
    if fixture.storey != storey:
        return math.inf
    walls = solid_walls(storey_parts(site, storey))
    outline = shapely.Polygon(fixture_outline(fixture))
    free = outline.difference(walls)
    seen = free if not free.is_empty else outline
    place = shapely.Point(point)
    is_hidden = shapely.shortest_line(place, seen).intersection(walls).length > THROUGH_WALL_M
    return math.inf if is_hidden else float(seen.distance(place))
