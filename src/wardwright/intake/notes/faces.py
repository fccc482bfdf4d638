"""The faces of a room by side and corner, and the wall behind each: for drawn and for imported rooms alike."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import NamedTuple

import shapely

from wardwright.intake.notes.clauses import Clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.words import Line
from wardwright.model.fabric import Space, Wall
from wardwright.model.placement import along, direction
from wardwright.model.record import Point2

BEHIND_M = 0.3
"""How far from a room's edge the face of its wall may be. [m] (assumption)"""
COMPASS: dict[str, Point2] = {
    "north": (0.0, 1.0),
    "east": (1.0, 0.0),
    "south": (0.0, -1.0),
    "west": (-1.0, 0.0),
}
"""Ways on the plan; `north` is up, whatever true north is."""


class Face(NamedTuple):
    """A straight piece of a room's outline: the room on its left, `out` pointing away from it."""

    start: Point2
    end: Point2
    out: Point2

    @property
    def length(self) -> float:
        """From one end to the other. [m]"""
        return math.dist(self.start, self.end)

    def point(self, distance: float) -> Point2:
        """So far along it. [m]"""
        return along((self.start, self.end), distance)


def way(word: str) -> Point2:
    """The direction of a side or a corner, as a unit vector.

    Examples
    --------
    >>> way("south")
    (0.0, -1.0)
    """
    x = sum(COMPASS[part][0] for part in word.split("-"))
    y = sum(COMPASS[part][1] for part in word.split("-"))
    size = math.hypot(x, y)
    return (x / size, y / size)


def faces(space: Space) -> list[Face]:
    """The faces of a room, anticlockwise; corners that are none are passed over."""
    outline = shapely.Polygon(space.outline_m).simplify(0.01)
    points = list(shapely.geometry.polygon.orient(outline).exterior.coords)
    found = []
    for start, end in pairwise(points):
        _, (lx, ly), _ = direction((start, end))
        found.append(Face(start, end, (-lx, -ly)))
    return found


def _dot(a: Point2, b: Point2) -> float:
    return a[0] * b[0] + a[1] * b[1]


def face_toward(line: Line, space: Space, side: str, *, draft: Draft | None = None) -> Face:
    """The face on a side of a room: the longest that looks that way, of near equals the outermost.

    Parameters
    ----------
    line : Line
        For the message.
    space : Space
        The room.
    side : str
        Which side.
    draft : Draft, optional
        If given, a face with a wall behind its middle goes before those without.

    Returns
    -------
    Face
        The room is on its left.
    """
    to = way(side)
    looking = [face for face in faces(space) if _dot(face.out, to) > 0.7]
    if not looking:
        raise line.refuse(f"{space.id} has no {side} side", "Name another side of it")
    if draft is not None:
        walled = [f for f in looking if wall_behind(draft, space.storey, f.point(f.length / 2), out=f.out)]
        looking = walled or looking
    longest = max(face.length for face in looking)
    return max(
        (f for f in looking if f.length >= 0.8 * longest), key=lambda f: (_dot(f.point(0), to), f.length)
    )


def distance_along(line: Line, face: Face, clauses: Clauses, *, half: float = 0.0) -> float | None:
    """How far along a face a thing's middle is, from `0.5 from south`; None if nothing is said.

    Parameters
    ----------
    line : Line
        For the message.
    face : Face
        Along which.
    clauses : Clauses
        What the line says.
    half : float
        Half the thing's own length, since its near edge is what is measured. [m]

    Returns
    -------
    float or None
        From the face's start. [m]
    """
    if not clauses.ends:
        return None
    run, _, _ = direction((face.start, face.end))
    names = {side: _dot(way(side), run) for side in COMPASS}
    for side, distance in clauses.ends.items():
        if abs(names[side]) < 0.7 or len(clauses.ends) > 1:
            usable = [name for name, share in names.items() if abs(share) >= 0.7]
            raise line.refuse(
                "that does not say where along the wall it is",
                f"Give one distance, from {' or from '.join(usable)}",
            )
        place = distance + half if names[side] < 0 else face.length - distance - half
        if not -1e-6 <= place - half <= place + half <= face.length + 1e-6:
            raise line.refuse(
                f"it would stand beyond the end of that wall, which is {face.length:.2f} m long",
                "Correct the distance or the side",
            )
        return place
    return None


def corner_of(space: Space, corner: str) -> tuple[Face, bool]:
    """The face at a corner to put a device on, and whether the corner is the face's start.

    Of the two faces that meet there it is the one toward the side that is named first.
    """
    to, first = way(corner), way(corner.split("-", maxsplit=1)[0])
    found = faces(space)
    place = max(range(len(found)), key=lambda i: _dot(found[i].start, to))
    before, after = found[place - 1], found[place]
    return (before, False) if _dot(before.out, first) > _dot(after.out, first) else (after, True)


def wall_behind(draft: Draft, storey: str, point: Point2, *, out: Point2) -> tuple[Wall, float, float] | None:
    """The wall behind a point of a room's face.

    Parameters
    ----------
    draft : Draft
        The site so far.
    storey : str
        Which storey.
    point : tuple of float
        On the room's outline. [m]
    out : tuple of float
        Away from the room.

    Returns
    -------
    (Wall, float, float) or None
        The wall; how far along it [m]; 1 if the room is on the left of its line, else -1.
    """
    best: tuple[float, Wall, float, float] | None = None
    for wall in draft.walls:
        if wall.storey != storey:
            continue
        run, left, length = direction(wall.line_m)
        if abs(_dot(run, out)) > 0.26:  # not within 15 degrees of being parallel
            continue
        (ax, ay), (px, py) = wall.line_m[0], point
        offset = (px - ax) * run[0] + (py - ay) * run[1]
        side = -1.0 if _dot(left, out) > 0 else 1.0
        off_face = side * ((px - ax) * left[0] + (py - ay) * left[1]) - wall.thickness_m / 2
        if -0.05 <= offset <= length + 0.05 and abs(off_face) <= BEHIND_M:
            offset = min(max(offset, 0.0), length)
            if best is None or abs(off_face) < best[0]:
                best = (abs(off_face), wall, offset, side)
    return None if best is None else best[1:]
