"""Places on a room's floor: by two distances, along a side, in a corner, or in the middle."""

from __future__ import annotations

import math

import shapely

from wardwright.intake.notes.clauses import Clauses
from wardwright.intake.notes.faces import corner_of, distance_along, face_toward, way
from wardwright.intake.notes.words import Line
from wardwright.model.fabric import Space
from wardwright.model.record import Point2


def floor_place(line: Line, space: Space, clauses: Clauses, *, off: float = 0.05) -> tuple[Point2, bool]:
    """A place on a room's floor, and whether the line told it.

    Parameters
    ----------
    line : Line
        For the message.
    space : Space
        The room.
    clauses : Clauses
        A side with or without a distance, a corner, two distances, or nothing (the middle).
    off : float
        How far it keeps from the walls. [m]

    Returns
    -------
    point : tuple of float
        [m]
    is_told : bool
    """
    outline = shapely.Polygon(space.outline_m)
    low_x, low_y, high_x, high_y = outline.bounds
    ends = clauses.ends
    if (
        clauses.side is None
        and len(ends) == 2
        and {"west", "east"} & set(ends)
        and {"south", "north"} & set(ends)
    ):
        x = low_x + ends["west"] if "west" in ends else high_x - ends["east"]
        y = low_y + ends["south"] if "south" in ends else high_y - ends["north"]
        if not outline.buffer(1e-6).covers(shapely.Point(x, y)):
            raise line.refuse(f"that place is not in {space.id}", "Correct the two distances")
        return (x, y), True
    if clauses.side in (None, "middle"):
        if ends:
            raise line.refuse(
                "one distance alone does not say where it is",
                "Add the wall, or one distance the other way as well",
            )
        middle = outline.centroid if outline.covers(outline.centroid) else outline.representative_point()
        return (round(middle.x, 3), round(middle.y, 3)), clauses.side == "middle"
    if "-" in clauses.side:
        face, is_start = corner_of(space, clauses.side)
        to = way(clauses.side)
        x, y = face.start if is_start else face.end
        return (x - to[0] * off * math.sqrt(2), y - to[1] * off * math.sqrt(2)), True
    face = face_toward(line, space, clauses.side)
    distance = distance_along(line, face, clauses)
    x, y = face.point(face.length / 2 if distance is None else distance)
    return (x - face.out[0] * off, y - face.out[1] * off), distance is not None
