"""Walking about the premises of a site: the only file of this engine that knows the model."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.fabric import Stair
from wardwright.model.fixture import Fixture
from wardwright.model.floor import (
    BLOCKING_HEIGHT_M,
    CRAWL_UNDER_M,
    StoreyParts,
    lets_through,
    rooms_and_doorways,
    solid_walls,
    storey_parts,
)
from wardwright.model.opening import Opening
from wardwright.model.placement import (
    along,
    direction,
    fixture_outline,
    opening_line,
    sides_of_opening,
    space_at,
)
from wardwright.model.record import Line2
from wardwright.model.site import Site
from wardwright.physics.walking.free_floor import Passages, Rooms
from wardwright.physics.walking.maps import TimeMap, maps_from
from wardwright.physics.walking.network import Costs, Reach, reach_from, way_to
from wardwright.physics.walking.premises import (
    Doors,
    Flight,
    FloorPlan,
    Ground,
    Network,
    ground_of,
    network_between,
)
from wardwright.physics.walking.route import Leg, Paces, Route, costs_of, route_along

__all__ = [
    "BODY_RADIUS_M", "Leg", "Network", "Paces", "Route", "Spot", "TimeMap", "fastest_route", "premises_network",
    "time_maps", "way_in_spot",
]  # fmt: skip

BODY_RADIUS_M = 0.22
"""Half a person's width. [m] (the figure `body-radius` of the catalogue)"""
WAY_IN_STEP_M = 0.05
"""How far inside the wall's face, beyond the body's own radius, a way in ends. [m] (assumption)"""
OPEN_EDGE_GAP_M = 0.05
"""The widest gap between two spaces that an open edge closes. [m] (assumption)"""
FLIGHT_NEAR_M = 1.0
"""How far from our floor a flight may end that ends in no space at all. [m] (assumption)"""


class Spot(NamedTuple):
    """A place on a storey."""

    storey: str
    x: float
    """[m]"""
    y: float
    """[m]"""


class _Level(NamedTuple):
    """What bounds walking on one storey."""

    parts: StoreyParts
    open_edges: tuple[Line2, ...]


def premises_network(site: Site, *, body_radius: float = BODY_RADIUS_M) -> Network:
    """All ways about the premises; remembered by the fabric of our spaces only.

    Parameters
    ----------
    site : Site
        The site. Devices, people and programme make no difference.
    body_radius : float, default BODY_RADIUS_M
        Half a person's width. [m]

    Returns
    -------
    Network
        Ready to be asked by `fastest_route` and `time_maps`.
    """
    return _premises(site.bare, body_radius=body_radius)


@lru_cache(maxsize=32)
def _premises(site: Site, *, body_radius: float) -> Network:
    ours = {space.id for space in site.spaces if space.is_protected}
    levels = []
    for storey in sorted(site.storeys, key=lambda s: (s.elevation_m, s.id)):
        parts = storey_parts(site, storey.id)
        spaces = tuple(space for space in parts.spaces if space.id in ours)
        names = {space.id for space in spaces}
        edges = sorted(
            (e for e in site.open_edges if names.issuperset(e.spaces) and len(set(e.spaces)) == 2),
            key=lambda e: e.id,
        )
        flights = tuple(stair for stair in parts.stairs if _is_ours(site, stair))
        parts = parts._replace(
            spaces=spaces, stairs=flights, fixtures=tuple(f for f in parts.fixtures if _blocks(f))
        )
        levels.append((_Level(parts, tuple(e.line_m for e in edges)), storey.elevation_m))
    return _network(tuple(levels), body_radius)


def way_in_spot(site: Site, opening: Opening) -> Spot:
    """Where somebody stands who has just come in through an opening.

    Parameters
    ----------
    site : Site
        The site.
    opening : Opening
        A door, window or gap with one of our spaces on a side.

    Returns
    -------
    Spot
        Just inside, on our side.

    Raises
    ------
    NotComputable
        If none of our spaces is on either side.
    """
    return _way_in_spot(site.bare, opening)


@lru_cache(maxsize=1024)
def _way_in_spot(site: Site, opening: Opening) -> Spot:
    wall = site.wall(opening.wall)
    sides = sides_of_opening(site, opening)
    ours = [side is not None and site.space(side).is_protected for side in sides]
    if not any(ours):
        raise NotComputable(f"{opening.name} ({opening.id}) does not lead into one of our spaces")
    inward = (1.0 if ours[0] else -1.0) * (wall.thickness_m / 2 + BODY_RADIUS_M + WAY_IN_STEP_M)
    x, y = along(wall.line_m, opening.offset_m, left_m=inward)
    return Spot(wall.storey, x, y)


def fastest_route(network: Network, start: Spot, goal: Spot, *, paces: Paces) -> Route | None:
    """The quickest walk between two places.

    Parameters
    ----------
    network : Network
        The premises.
    start : Spot
        Where from; the nearest free floor counts.
    goal : Spot
        Where to; the nearest free floor counts.
    paces : Paces
        How fast.

    Returns
    -------
    Route or None
        The walk; None where there is no way.

    Raises
    ------
    NotComputable
        If a spot's storey has no floor of ours.
    """
    way = _way(network, start, goal, costs=costs_of(paces))
    if way is None:
        return None
    reach = _reach(network, start, costs_of(paces))
    return route_along(network, reach, (way[1], *_standing_place(network, goal)), paces=paces)


def fastest_time(network: Network, start: Spot, goal: Spot, *, paces: Paces) -> float:
    """How long the quickest walk between two places takes: `fastest_route` where no more is wanted.

    Parameters
    ----------
    network : Network
        The premises.
    start, goal : Spot
        Where from and where to; the nearest free floor counts.
    paces : Paces
        How fast.

    Returns
    -------
    float
        Infinite where there is no way. [s]

    Raises
    ------
    NotComputable
        If a spot's storey has no floor of ours.
    """
    way = _way(network, start, goal, costs=costs_of(paces))
    return math.inf if way is None else way[0]


@lru_cache(maxsize=1024)
def _way(network: Network, start: Spot, goal: Spot, *, costs: Costs) -> tuple[float, list[int]] | None:
    """As `way_to` finds it; not to be written to."""
    return way_to(network.web, _reach(network, start, costs), _standing_place(network, goal), costs=costs)


@lru_cache(maxsize=64)
def time_maps(
    network: Network, source: Spot, *, paces: Paces, toward: bool = False, cell: float = 0.1
) -> dict[str, TimeMap]:
    """Least walking times between a place and every cell of the premises.

    Parameters
    ----------
    network : Network
        The premises.
    source : Spot
        The place; the nearest free floor counts.
    paces : Paces
        How fast.
    toward : bool, default False
        Times from each cell to the place instead of from it. With these paces both are the same: doors and stairs
        take as long one way as the other.
    cell : float, default 0.1
        Side of a cell. [m]

    Returns
    -------
    dict of TimeMap
        By storey. Cells nearer to a wall or to furniture than a body can stand count as the free floor beside them.
        The arrays are shared and cannot be written to.

    Raises
    ------
    NotComputable
        If the place's storey has no floor of ours.
    """
    del toward
    costs = costs_of(paces)
    return maps_from(network, _reach(network, source, costs), costs=costs, cell=cell)


@lru_cache(maxsize=1024)
def _standing_place(network: Network, spot: Spot) -> tuple[int, FloatArray]:
    """The floor of a spot, and the nearest place there where a person's middle can be; not to be written to."""
    floor = network.storeys.index(spot.storey) if spot.storey in network.storeys else None
    if floor is None or network.rooms[floor].is_empty:
        raise NotComputable(f"storey {spot.storey} has no floor of ours to walk on")
    point = network.snapped(floor, np.array([spot.x, spot.y]))
    point.setflags(write=False)
    return floor, point


def _reach(network: Network, spot: Spot, costs: Costs) -> Reach:
    floor, point = _standing_place(network, spot)
    return _reach_at(network, floor, (float(point[0]), float(point[1])), costs=costs)


@lru_cache(maxsize=256)
def _reach_at(network: Network, floor: int, point: tuple[float, float], *, costs: Costs) -> Reach:
    return reach_from(network.web, floor, np.array(point), costs=costs)


def _blocks(fixture: Fixture) -> bool:
    return fixture.base_m < CRAWL_UNDER_M and fixture.base_m + fixture.height_m >= BLOCKING_HEIGHT_M


def _is_ours(site: Site, stair: Stair) -> bool:
    """Whether both ends of a flight are on our floor: not on a neighbour's or a shared one."""
    for storey, end in ((stair.lower, stair.line_m[0]), (stair.upper, stair.line_m[-1])):
        space = space_at(site, storey, end)
        if space is not None:
            if space.belongs != "ours":
                return False
            continue
        floors = [
            shapely.Polygon(s.outline_m) for s in site.spaces if s.storey == storey and s.belongs == "ours"
        ]
        place = shapely.Point(end)
        if not any(floor.distance(place) <= FLIGHT_NEAR_M for floor in floors):
            return False
    return True


@lru_cache(maxsize=64)
def _network(levels: tuple[tuple[_Level, float], ...], body_radius: float) -> Network:
    plans = tuple(_plan(level) for level, _ in levels)
    height = {level.parts.storey: elevation for level, elevation in levels}
    number = {level.parts.storey: i for i, (level, _) in enumerate(levels)}
    stairs = sorted({stair.id: stair for level, _ in levels for stair in level.parts.stairs}.items())
    flights = []
    for name, stair in stairs:
        if stair.lower not in number or stair.upper not in number or stair.lower == stair.upper:
            continue
        line = np.array(stair.line_m)
        run = float(np.linalg.norm(np.diff(line, axis=0), axis=1).sum())
        length = math.hypot(run, height[stair.upper] - height[stair.lower])
        flights.append(Flight(name, number[stair.lower], number[stair.upper], stair.line_m, length))
    grounds = tuple(_ground(level, body_radius) for level, _ in levels)
    return network_between(plans, tuple(flights), body_radius=body_radius, grounds=grounds)


@lru_cache(maxsize=64)
def _ground(level: _Level, body_radius: float) -> Ground:
    """Remembered by the storey: a wall that moves leaves the others as they were."""
    return ground_of(_plan(level), body_radius=body_radius)


@lru_cache(maxsize=64)
def _plan(level: _Level) -> FloorPlan:
    parts = level.parts
    by_id = {wall.id: wall for wall in parts.walls}
    ways = [o for o in parts.openings if lets_through(o)]
    lines = np.array([opening_line(by_id[o.wall], o) for o in ways]).reshape(-1, 2, 2)
    takes_time = np.array(
        [o.kind != "gap" and o.leaves > 0 and o.habit != "open" for o in ways], dtype=np.bool_
    )
    stands_open = np.array([o.kind != "gap" for o in ways], dtype=np.bool_) & ~takes_time
    passages = Passages(
        lines.mean(axis=1),
        np.array([direction(by_id[o.wall].line_m)[1] for o in ways]).reshape(-1, 2),
        np.array([by_id[o.wall].thickness_m / 2 for o in ways]),
        np.array([o.width_m for o in ways]),
    )
    boxes = [shapely.Polygon(fixture_outline(f)) for f in parts.fixtures]
    boxes += [_well(stair) for stair in parts.stairs if stair.upper == parts.storey]
    doors = Doors(
        tuple(o.id for o, timed in zip(ways, takes_time, strict=True) if timed),
        lines[takes_time],
        tuple(o.id for o, is_open in zip(ways, stands_open, strict=True) if is_open),
        lines[stands_open],
    )
    spaces = tuple(shapely.Polygon(space.outline_m).buffer(0) for space in parts.spaces)
    whole = _whole(level)
    room = whole.difference(solid_walls(parts))
    return FloorPlan(parts.storey, room, shapely.union_all(boxes), Rooms(whole, spaces, passages), doors)


def _whole(level: _Level) -> shapely.Geometry:
    """Rooms and doorways in one, open edges closed up. [m]"""
    rooms = rooms_and_doorways(level.parts)
    if not level.open_edges or not level.parts.spaces:
        return rooms
    strips = shapely.buffer(shapely.linestrings(level.open_edges), OPEN_EDGE_GAP_M, cap_style="flat")
    return shapely.union_all([rooms, *strips])


def _well(stair: Stair) -> shapely.Geometry:
    """The hole a flight leaves in the floor above. [m]"""
    if stair.well_m is not None:
        return shapely.Polygon(stair.well_m).buffer(0)
    return shapely.LineString(stair.line_m).buffer(stair.width_m / 2, cap_style="flat", join_style="mitre")
