"""A quickest way told point by point: places, clock, and legs of floor, doors and stairs."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Literal, NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.geometry.taut import crossed
from wardwright.physics.walking.clock import sampled
from wardwright.physics.walking.network import Costs, Reach, way_to
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


def route_to(network: Network, reach: Reach, place: tuple[int, FloatArray], *, paces: Paces) -> Route | None:
    """Tell the quickest way to a point.

    Parameters
    ----------
    network : Network
        The premises.
    reach : Reach
        Times from the start, worked out with the same paces.
    place : tuple of int and ndarray, shape (2,)
        Where to: the floor [-] and the point inside its free area. [m]
    paces : Paces
        How fast.

    Returns
    -------
    Route or None
        The walk; None where there is no way.
    """
    found = way_to(network.web, reach, place, costs=costs_of(paces))
    if found is None:
        return None
    chunks = list(_chunks(network, reach, (found[1], *place), paces=paces))
    return _route(chunks, network.storeys[reach.floor], reach.point)


class _Chunk(NamedTuple):
    """A piece of a walk with one kind and an even clock."""

    kind: Literal["floor", "door", "stairs-up", "stairs-down"]
    subject: str | None
    line: FloatArray
    length: float
    seconds: float
    storeys: tuple[str, str]


def _chunks(
    network: Network, reach: Reach, way: tuple[list[int], int, FloatArray], *, paces: Paces
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
            yield _Chunk(kind, flight.stair, line, flight.length, seconds, storeys)
            continue
        yield from _floor_chunks(network, floor, np.stack([a, b]), paces=paces)


def _floor_chunks(network: Network, floor: int, way: FloatArray, *, paces: Paces) -> Iterator[_Chunk]:
    """One straight piece of floor, cut where it passes doors."""
    storey, doors, net = network.storeys[floor], network.doors[floor], network.web.nets[floor]
    timed = crossed(way[None], net.crossing_lines)[0]
    met = [
        (float(share), doors.timed[net.line_numbers[i]], paces.pass_door)
        for i, share in enumerate(timed)
        if np.isfinite(share)
    ]
    untimed = crossed(way[None], doors.open_lines)[0]
    met += [(float(s), doors.left_open[i], 0.0) for i, s in enumerate(untimed) if np.isfinite(s)]
    last = way[0]
    for share, door, seconds in [*sorted(met), (1.0, None, 0.0)]:
        place = way[0] + share * (way[1] - way[0])
        length = float(np.linalg.norm(place - last))
        if length > 0.0:
            yield _Chunk(
                "floor", None, np.stack([last, place]), length, length / paces.pace, (storey, storey)
            )
        if door is not None:
            yield _Chunk("door", door, place[None], 0.0, seconds, (storey, storey))
        last = place


def _route(chunks: list[_Chunk], storey: str, start: FloatArray) -> Route:
    """String the pieces together: points, clock, and legs with floor pieces made one."""
    points, clock, storeys, legs = [start[None]], [np.zeros(1)], [storey], list[Leg]()
    now, last = 0.0, 0
    for chunk in chunks:
        first = last
        if chunk.kind == "door":
            if chunk.seconds > 0.0:
                points.append(chunk.line)
                clock.append(np.array([now + chunk.seconds]))
                storeys.append(chunk.storeys[0])
                last += 1
        else:
            line, walked = sampled(chunk.line)
            share = walked[1:] / walked[-1] if walked[-1] > 0.0 else np.ones(len(walked) - 1)
            points.append(line[1:])
            clock.append(now + share * chunk.seconds)
            storeys.extend(chunk.storeys[0] if s < 0.5 else chunk.storeys[1] for s in share)
            last += len(share)
        now += chunk.seconds
        before = legs[-1] if legs else None
        if chunk.kind == "floor" and before is not None and before.kind == "floor":
            legs[-1] = before._replace(length=before.length + chunk.length, last=last)
        else:
            legs.append(Leg(chunk.kind, chunk.length, chunk.subject, first, last))
    return Route(np.concatenate(points), tuple(storeys), np.concatenate(clock), tuple(legs))
