"""Rooms of a building file that holds no spaces: what its walls close in."""

from __future__ import annotations

import numpy as np
import shapely

from wardwright.errors import IntakeError
from wardwright.intake.ifc.file import IfcHouse
from wardwright.intake.ifc.rings import CUTS_M, rings_at, wall_bodies
from wardwright.intake.ifc.shapes import Solid
from wardwright.intake.ifc.spaces import Room
from wardwright.intake.outlines import ring_of

LEAST_ROOM_WIDTH_M = 0.7
"""What walls close in is a room only if a disc of this width fits. [m] (assumption)"""
USUAL_HEIGHT_M = 2.4
"""Floor to ceiling where nothing says it. [m] (assumption)"""


def rooms_from_rings(house: IfcHouse, premises: str | None) -> list[Room]:
    """One room for each ring of walls on each storey.

    Raises
    ------
    IntakeError
        If the premises are named: without spaces there is nothing to name them by.
    """
    if premises is not None:
        raise IntakeError(
            "it holds no spaces, so premises cannot be picked",
            where=f"{house.where}, premises",
            cure="Export it with its spaces (rooms), or bring in the whole file",
        )
    bodies = wall_bodies(house)
    found: list[Room] = []
    for storey in house.of("IfcBuildingStorey"):
        floor = float(house.frame(storey)[2, 3])
        rings = rings_at(bodies, floor + CUTS_M[0])
        wide = [ring for ring in rings if not ring.buffer(-LEAST_ROOM_WIDTH_M / 2).is_empty]
        for number, ring in enumerate(sorted(wide, key=_place), start=1):
            name = f"{(storey.Name or 'storey').strip()} room {number}"
            solid = _prism(ring, floor, floor + USUAL_HEIGHT_M)
            found.append(Room(solid, name, storey.id(), "ours", is_guessed=True))
    return found


def _place(ring: shapely.Polygon) -> tuple[float, float]:
    """Where a ring is, so that rooms are numbered alike whatever order the file has."""
    return (round(float(ring.centroid.y), 2), round(float(ring.centroid.x), 2))


def _prism(ring: shapely.Polygon, low: float, high: float) -> Solid:
    """The upright sides over an outline: enough for a cut and for heights."""
    corners = np.array(ring_of(ring))
    count = len(corners)
    points = np.concatenate([np.column_stack([corners, np.full(count, height)]) for height in (low, high)])
    this = np.arange(count)
    after = (this + 1) % count
    faces = np.concatenate(
        [np.column_stack([this, after, after + count]), np.column_stack([this, after + count, this + count])]
    )
    return Solid(points, faces)
