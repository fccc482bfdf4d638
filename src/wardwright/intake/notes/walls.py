"""The walls that a storey's rooms leave between and about themselves.

Rooms are outlines with sides along x and y. Where two of them face each other across a gap that a wall can
fill, that is a wall between; what is left of their sides is an outside or a party wall.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

import shapely

from wardwright.model.fabric import Space
from wardwright.model.record import Line2

WIDEST_WALL_M = 0.6
"""Rooms farther apart than this have no common wall. [m] (assumption)"""
THINNEST_M = 0.02
"""A thinner wall is taken for a slip of the pen. [m] (assumption)"""
TOUCHING_M = 0.005
"""Rooms nearer than this have nothing between them. [m] (assumption)"""
SHORTEST_M = 0.001
"""A shorter piece of wall is left out. [m] (assumption)"""


class Stretch(NamedTuple):
    """A straight piece of a room's side with one wall behind it."""

    room: str
    other: str | None
    """The room beyond; None: outside, or a neighbour's house."""
    side: str
    """Which side of the room it is."""
    wall: str
    line: Line2
    """On the wall's centre line, from west to east or from south to north. [m]"""


class Edge(NamedTuple):
    """One side of a room: along x or y, where, from and to, and which way is out."""

    room: str
    side: str
    at: float
    low: float
    high: float

    @property
    def sign(self) -> float:
        """1 if out is toward larger x or y."""
        return 1.0 if self.side in ("north", "east") else -1.0

    @property
    def is_level(self) -> bool:
        """Whether it runs along x."""
        return self.side in ("north", "south")


class Make(NamedTuple):
    """What an outside stretch is made of."""

    thickness: float
    construction: str
    is_party: bool
    is_guessed: bool


@dataclass(frozen=True)
class Piece:
    """A straight wall along x or y, before it becomes a record."""

    is_level: bool
    at: float
    low: float
    high: float
    make: Make
    rooms: tuple[str, str | None]
    side: str
    """Which side of the first room it stands on."""

    def box(self, *, before: float = 0.0, after: float = 0.0) -> shapely.Geometry:
        """Its footprint, longer at either end if asked. [m]"""
        half = self.make.thickness / 2
        low, high = self.low - before, self.high + after
        if self.is_level:
            return shapely.box(low, self.at - half, high, self.at + half)
        return shapely.box(self.at - half, low, self.at + half, high)

    def line(self, low: float, high: float) -> Line2:
        """A stretch of its centre line. [m]"""
        at, low, high = round(self.at, 6), round(low, 6), round(high, 6)
        return ((low, at), (high, at)) if self.is_level else ((at, low), (at, high))


def edges_of(space: Space) -> list[Edge]:
    """The sides of a room whose outline runs along x and y, anticlockwise."""
    ring = shapely.Polygon(space.outline_m).exterior
    points = list((ring if ring.is_ccw else ring.reverse()).coords)
    found = []
    for (ax, ay), (bx, by) in pairwise(points):
        if abs(ay - by) < abs(ax - bx):
            found.append(Edge(space.id, "south" if bx > ax else "north", ay, min(ax, bx), max(ax, bx)))
        else:
            found.append(Edge(space.id, "east" if by > ay else "west", ax, min(ay, by), max(ay, by)))
    return found


def facing(edges: Sequence[Edge]) -> list[tuple[Edge, Edge, float, float]]:
    """Pairs of sides that look at each other across no more than a wall: the lower first, and from where to where."""
    pairs = []
    for lower in (edge for edge in edges if edge.sign > 0):
        for upper in (edge for edge in edges if edge.sign < 0 and edge.is_level == lower.is_level):
            gap = upper.at - lower.at
            low, high = max(lower.low, upper.low), min(lower.high, upper.high)
            if (
                lower.room != upper.room
                and -TOUCHING_M < gap <= WIDEST_WALL_M + 1e-9
                and high - low > SHORTEST_M
            ):
                pairs.append((lower, upper, low, high))
    return pairs


def left_over(
    edge: Edge, taken: Sequence[tuple[float, float]], room: shapely.Polygon
) -> list[tuple[float, float]]:
    """What of a side is not taken by walls to other rooms.

    A short piece that is closed in at both ends, by such a wall or by an inward corner of its own room, is
    the end of a wall that stands across: it is left out.
    """
    pieces, low = [], edge.low
    for start, stop in [*sorted(taken), (edge.high, edge.high)]:
        if start - low > SHORTEST_M:
            pieces.append((low, start))
        low = max(low, stop)
    bounds = {round(place, 6) for pair in taken for place in pair}

    def is_closed(place: float, beyond: float) -> bool:
        point = (beyond, edge.at) if edge.is_level else (edge.at, beyond)
        return round(place, 6) in bounds or bool(room.contains(shapely.Point(point)))

    def is_end(piece: tuple[float, float]) -> bool:
        low, high = piece
        is_short = high - low <= WIDEST_WALL_M
        return is_short and is_closed(low, low - SHORTEST_M) and is_closed(high, high + SHORTEST_M)

    return [piece for piece in pieces if not is_end(piece)]


def pieces_of(
    spaces: Sequence[Space],
    *,
    inside: Mapping[frozenset[str], Make],
    inside_usual: Make,
    outside: Mapping[tuple[str, str], Make],
    outside_usual: Make,
) -> list[Piece]:
    """Every piece of wall of a storey, not yet joined up.

    Parameters
    ----------
    spaces : sequence of Space
        The rooms of the storey.
    inside, outside : mapping
        What single walls are made of, by their two rooms, and by room and side.
    inside_usual, outside_usual : Make
        What the others are made of.

    Returns
    -------
    list of Piece
        Walls between rooms first.
    """
    edges = [edge for space in spaces for edge in edges_of(space)]
    outlines = {space.id: shapely.Polygon(space.outline_m) for space in spaces}
    taken: dict[Edge, list[tuple[float, float]]] = {edge: [] for edge in edges}
    pieces: list[Piece] = []
    for lower, upper, low, high in facing(edges):
        taken[lower].append((low, high))
        taken[upper].append((low, high))
        gap = upper.at - lower.at
        if gap > TOUCHING_M:
            make = inside.get(frozenset((lower.room, upper.room)), inside_usual)
            pieces.append(
                Piece(
                    lower.is_level,
                    (lower.at + upper.at) / 2,
                    low,
                    high,
                    make._replace(thickness=round(gap, 6)),
                    (lower.room, upper.room),
                    lower.side,
                )
            )
    for edge in edges:
        make = outside.get((edge.room, edge.side), outside_usual)
        pieces.extend(
            Piece(
                edge.is_level,
                edge.at + edge.sign * make.thickness / 2,
                low,
                high,
                make,
                (edge.room, None),
                edge.side,
            )
            for low, high in left_over(edge, taken[edge], outlines[edge.room])
        )
    return pieces
