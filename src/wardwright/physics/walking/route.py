"""A quickest way told point by point: places, clock, and legs of floor, doors and stairs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import Literal, NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.geometry.taut import crossed
from wardwright.physics.walking.clock import sampled
from wardwright.physics.walking.network import Costs, Reach
from wardwright.physics.walking.premises import Network


class Paces(NamedTuple):
    """How fast somebody moves."""

    pace: float
    """On the flat. [m/s]"""
    stairs_share: float
    """Pace along a flight's slope, as a share of the pace on the flat. [-]"""
    pass_door: float
    """Opening an inside door on the way. [s]"""


class Leg(NamedTuple):
    """A part of a walk."""

    kind: Literal["floor", "door", "stairs-up", "stairs-down"]
    length: float
    """0 for a door. [m]"""
    subject: str | None
    """The opening or the flight of stairs."""
    first: int
    last: int
    """Numbers of its first and last point. A door that takes time has two points in one place."""


class Route(NamedTuple):
    """A walk, point by point."""

    points: FloatArray
    """At most 0.05 m apart, shape (n, 2). [m]"""
    storeys: tuple[str, ...]
    """Of each point; a flight's upper half counts to the upper storey."""
    clock: FloatArray
    """At each point, from 0, shape (n,). [s]"""
    legs: tuple[Leg, ...]
    """In the order walked."""


def costs_of(paces: Paces) -> Costs:
    """What walking costs at given paces.

    Parameters
    ----------
    paces : Paces
        How fast.

    Returns
    -------
    Costs
        The same, as times.
    """
    return Costs(1.0 / paces.pace, 1.0 / (paces.pace * paces.stairs_share), paces.pass_door)


def route_along(
    network: Network, reach: Reach, way: tuple[Sequence[int], int, FloatArray], *, paces: Paces
) -> Route:
    """Tell a way point by point.

    Parameters
    ----------
    network : Network
        The premises.
    reach : Reach
        Times from the start, worked out with the same paces.
    way : tuple
        Numbers of the nodes in order, without the two ends, as `way_to` finds them [-]; where to: the floor [-] and
        the point inside its free area, shape (2,) [m].
    paces : Paces
        How fast.

    Returns
    -------
    Route
        The walk.
    """
    chunks = list(_chunks(network, reach, way, paces=paces))
    return _route(chunks, network.storeys[reach.floor], reach.point)


class _Chunk(NamedTuple):
    """A piece of a walk with one kind and an even clock; not to be written to."""

    kind: Literal["floor", "door", "stairs-up", "stairs-down"]
    subject: str | None
    points: FloatArray
    """But for the first, where the piece before ends; a door's is one in the same place. [m]"""
    shares: FloatArray
    """How far along each point is. [-]"""
    storeys: tuple[str, ...]
    """Of each point."""
    length: float
    seconds: float


def _chunks(
    network: Network, reach: Reach, way: tuple[Sequence[int], int, FloatArray], *, paces: Paces
) -> Iterator[_Chunk]:
    """Take a way apart into straight floor, doors and stairs."""
    web = network.web
    nodes, goal_floor, goal = way
    places = [
        (reach.floor, reach.point),
        *((int(web.floor_of[n]), web.points[n]) for n in nodes),
        (goal_floor, goal),
    ]
    numbers = [-1, *nodes, -1]
    joins = int(web.first[-1])
    for i, ((floor, a), (floor_b, b)) in enumerate(pairwise(places)):
        if floor != floor_b:
            flight = network.flights[(numbers[i] - joins) // 2]
            is_up = (numbers[i] - joins) % 2 == 0
            line = np.array(flight.line if is_up else flight.line[::-1])
            line = np.vstack([a[None], line[1:-1], b[None]])
            storeys = (network.storeys[floor], network.storeys[floor_b])
            seconds = flight.length / (paces.pace * paces.stairs_share)
            kind: Literal["stairs-up", "stairs-down"] = "stairs-up" if is_up else "stairs-down"
            points, shares = _sampled(line)
            on_each = tuple(storeys[0] if share < 0.5 else storeys[1] for share in shares)
            yield _Chunk(kind, flight.stair, points, shares, on_each, flight.length, seconds)
            continue
        ends: _Ends = ((float(a[0]), float(a[1])), (float(b[0]), float(b[1])))
        yield from _floor_chunks(network, floor, ends, paces=paces)


_Ends = tuple[tuple[float, float], tuple[float, float]]
# Of a straight piece of floor. [m]


@lru_cache(maxsize=1024)
def _floor_chunks(network: Network, floor: int, ends: _Ends, *, paces: Paces) -> tuple[_Chunk, ...]:
    """One straight piece of floor, cut where it passes doors; remembered, since most ways to a place share theirs."""
    way = np.array(ends)
    storey, doors, net = network.storeys[floor], network.doors[floor], network.web.nets[floor]
    timed = crossed(way[None], net.crossing_lines)[0]
    met = [
        (float(share), doors.timed[net.line_numbers[i]], paces.pass_door)
        for i, share in enumerate(timed)
        if np.isfinite(share)
    ]
    untimed = crossed(way[None], doors.open_lines)[0]
    met += [(float(s), doors.left_open[i], 0.0) for i, s in enumerate(untimed) if np.isfinite(s)]
    found = list[_Chunk]()
    last = way[0]
    for share, door, seconds in [*sorted(met), (1.0, None, 0.0)]:
        place = way[0] + share * (way[1] - way[0])
        length = float(np.linalg.norm(place - last))
        if length > 0.0:
            points, shares = _sampled(np.stack([last, place]))
            storeys = (storey,) * len(points)
            found.append(_Chunk("floor", None, points, shares, storeys, length, length / paces.pace))
        if door is not None:
            found.append(_Chunk("door", door, place[None], np.ones(1), (storey,), 0.0, seconds))
        last = place
    return tuple(found)


def _sampled(line: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Points along a line but for the first, and how far along each is as a share."""
    points, walked = sampled(line)
    shares = walked[1:] / walked[-1] if walked[-1] > 0.0 else np.ones(len(walked) - 1)
    return points[1:], shares


def _route(chunks: list[_Chunk], storey: str, start: FloatArray) -> Route:
    """String the pieces together: points, clock, and legs with floor pieces made one."""
    points, clock, storeys, legs = [start[None]], [np.zeros(1)], [storey], list[Leg]()
    now, last = 0.0, 0
    for chunk in chunks:
        first = last
        # A leaf that stands open is passed at the last point, one that is opened takes a point more.
        if chunk.kind != "door" or chunk.seconds > 0.0:
            points.append(chunk.points)
            clock.append(now + chunk.shares * chunk.seconds)
            storeys.extend(chunk.storeys)
            last += len(chunk.points)
        now += chunk.seconds
        before = legs[-1] if legs else None
        if chunk.kind == "floor" and before is not None and before.kind == "floor":
            legs[-1] = before._replace(length=before.length + chunk.length, last=last)
        else:
            legs.append(Leg(chunk.kind, chunk.length, chunk.subject, first, last))
    return Route(np.concatenate(points), tuple(storeys), np.concatenate(clock), tuple(legs))
