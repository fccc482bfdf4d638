"""The premises as floors, doors and flights of stairs in plain arrays, and the network of ways among them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray
from wardwright.geometry.taut import Net, net_of
from wardwright.physics.walking.free_floor import Rooms, free_floor
from wardwright.physics.walking.network import Join, Web, web_between

OFF_THE_WALL_M = 1e-3
"""A place taken to the nearest free floor ends this far inside it. [m] (derived here: clear of rounding)"""
SAME_SIDE_M = 2.0
"""How far floor on the same side of the walls is looked for before the nearest of all counts. [m] (assumption)"""
RIM_STEP_M = 0.1
"""Between the places tried on its rim. [m] (assumption)"""


class Doors(NamedTuple):
    """Doors of one floor, by their lines from jamb to jamb."""

    timed: tuple[str, ...]
    """Those that take time to pass."""
    timed_lines: FloatArray
    """Shape (D, 2, 2). [m]"""
    left_open: tuple[str, ...]
    """Those that stand open."""
    open_lines: FloatArray
    """Shape (O, 2, 2). [m]"""


class FloorPlan(NamedTuple):
    """One floor before a body's width is allowed for."""

    storey: str
    room: shapely.Geometry
    """Between the walls, doorways included. [m]"""
    furniture: shapely.Geometry
    """What is walked round. [m]"""
    rooms: Rooms
    doors: Doors


class Flight(NamedTuple):
    """A flight of stairs."""

    stair: str
    lower: int
    """Number of the floor it starts from. [-]"""
    upper: int
    line: tuple[tuple[float, float], ...]
    """Its walking line on the plan, upward. [m]"""
    length: float
    """Along its slope. [m]"""


@dataclass(frozen=True, eq=False)
class Network:
    """All ways about the premises."""

    storeys: tuple[str, ...]
    """The storey of each floor."""
    rooms: tuple[shapely.Geometry, ...]
    """Between the walls. [m]"""
    free: tuple[shapely.Geometry, ...]
    """Where a person's middle can be. [m]"""
    inner: tuple[shapely.Geometry, ...]
    """The same, a hair smaller: where ways start and end. [m]"""
    doors: tuple[Doors, ...]
    flights: tuple[Flight, ...]
    """In the order of the web's joins."""
    web: Web
    body_radius: float
    """[m]"""

    def snapped(self, floor: int, point: FloatArray) -> FloatArray:
        """The nearest place where a person's middle can be, on this side of the walls where there is one.

        Parameters
        ----------
        floor : int
            Which floor. [-]
        point : ndarray, shape (2,)
            Anywhere. [m]

        Returns
        -------
        ndarray, shape (2,)
            The point itself where it is free. [m]
        """
        return _snapped(self.inner[floor], point, self.rooms[floor])


class Ground(NamedTuple):
    """What hangs on one floor alone."""

    free: shapely.Geometry
    """Where a person's middle can be. [m]"""
    inner: shapely.Geometry
    """The same, a hair off the walls. [m]"""
    net: Net
    """Its taut lines."""


def ground_of(plan: FloorPlan, *, body_radius: float) -> Ground:
    """Find where one can be on a floor, and the taut lines about it.

    Parameters
    ----------
    plan : FloorPlan
        The floor.
    body_radius : float
        Half a person's width. [m]

    Returns
    -------
    Ground
        For `network_between`.
    """
    free = free_floor(plan.room, plan.furniture, plan.rooms, radius=body_radius)
    return Ground(free, _inner(free), net_of(free, plan.doors.timed_lines))


def network_between(
    plans: tuple[FloorPlan, ...],
    flights: tuple[Flight, ...],
    *,
    body_radius: float,
    grounds: tuple[Ground, ...] | None = None,
) -> Network:
    """Find the ways about floors joined by flights of stairs.

    Parameters
    ----------
    plans : tuple of FloorPlan
        The floors.
    flights : tuple of Flight
        The stairs; one that ends on an empty floor leads nowhere and is left out.
    body_radius : float
        Half a person's width. [m]
    grounds : tuple of Ground, optional
        Those of the floors, where they are known already.

    Returns
    -------
    Network
        Ready to be asked.
    """
    if grounds is None:
        grounds = tuple(ground_of(plan, body_radius=body_radius) for plan in plans)
    free, inner, nets = (tuple(one) for one in zip(*grounds, strict=True)) if grounds else ((), (), ())
    used = tuple(f for f in flights if not (free[f.lower].is_empty or free[f.upper].is_empty))
    joins = tuple(
        Join(
            f.lower,
            _pair(inner[f.lower], f.line[0], plans[f.lower].room),
            f.upper,
            _pair(inner[f.upper], f.line[-1], plans[f.upper].room),
            f.length,
        )
        for f in used
    )
    web = web_between(nets, joins)
    storeys, rooms = tuple(p.storey for p in plans), tuple(p.room for p in plans)
    return Network(storeys, rooms, free, inner, tuple(p.doors for p in plans), used, web, body_radius)


def _inner(area: shapely.Geometry) -> shapely.Geometry:
    inner = area.buffer(-OFF_THE_WALL_M, join_style="mitre")
    return area if inner.is_empty else inner


def _snapped(area: shapely.Geometry, point: FloatArray, room: shapely.Geometry) -> FloatArray:
    place = shapely.Point(point)
    if area.covers(place):
        return np.array(point, dtype=np.float64)
    line = shapely.shortest_line(place, area)
    if room.covers(place) and not room.covers(line):
        line = _same_side_line(area, place, room) or line
    nearest: FloatArray = shapely.get_coordinates(line)[-1]
    return nearest


def _same_side_line(
    area: shapely.Geometry, place: shapely.Point, room: shapely.Geometry
) -> shapely.LineString | None:
    """The shortest line to an area's rim that stays in the room, to rim points `RIM_STEP_M` apart; None if none."""
    near = area.intersection(place.buffer(SAME_SIDE_M))
    rim = shapely.get_coordinates(shapely.segmentize(near, RIM_STEP_M))
    if not len(rim):
        return None
    start = np.broadcast_to(shapely.get_coordinates(place), rim.shape)
    lines = shapely.linestrings(np.stack([start, rim], axis=1))
    shapely.prepare(room)
    kept = lines[shapely.covers(room, lines)]
    return kept[shapely.length(kept).argmin()] if len(kept) else None


def _pair(area: shapely.Geometry, point: tuple[float, float], room: shapely.Geometry) -> tuple[float, float]:
    x, y = _snapped(area, np.array(point), room)
    return float(x), float(y)
