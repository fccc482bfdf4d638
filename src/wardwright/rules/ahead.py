"""What lies ahead of a movement detector: its fan in plain sight, reach left aside, and its zones over a place."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.geometry.sight import Heights, Sight, visible_heights
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.fabric import Space
from wardwright.model.floor_cells import FloorCells, floor_cells
from wardwright.model.placement import space_at
from wardwright.model.site import Site
from wardwright.model.surfaces import Level, level_of
from wardwright.rules.hung import depressions_of, hung_of, in_fan, in_sight, sight_from

CELL_M = 0.1
"""Side of a cell of the floor. [m]"""
BEFORE_M = 0.2
"""The space of a detector is looked for this far before it. [m] (assumption)"""
BODY_UP_M = 1.0
"""A place is in plain sight where somebody's middle is seen, this high above the floor. [m] (assumption)"""


class Ahead(NamedTuple):
    """A detector in its place, with all that is in its sight."""

    eye: tuple[float, float, float]
    """x, y, z. [m]"""
    heading: float
    """[rad]"""
    half: float
    """Half of its fan. [rad]"""
    depressions: tuple[float, ...]
    """Of its rows of zones, tilt included. [rad]"""
    level: Level
    """Its storey."""
    sight: Sight
    space: Space | None
    """The space that it watches."""

    def distance(self, points: FloatArray) -> FloatArray:
        """How far points of the plan, shape (N, 2), are from it. [m]"""
        return np.hypot(points[:, 0] - self.eye[0], points[:, 1] - self.eye[1])

    def in_fan(self, points: FloatArray) -> BoolArray:
        """Which points of the plan, shape (N, 2) [m], its fan covers."""
        return in_fan(self.eye, points, heading=self.heading, half=self.half)

    def heights(self, points: FloatArray) -> Heights:
        """What is visible over points of the plan, shape (N, 2). [m]"""
        return visible_heights(self.sight, points)

    @property
    def cells(self) -> FloorCells:
        """The floor of its storey."""
        return floor_cells(self.level, CELL_M)

    def own_floor(self) -> FloatArray:
        """The free floor of its own space that lies in its fan and in plain sight, shape (N, 2). [m]"""
        points, owner = self.cells.points(), self.cells.spaces[self.cells.free]
        names = [space.id for space in self.level.parts.spaces]
        if self.space is None or self.space.id not in names:
            return np.zeros((0, 2))
        own = points[(owner == names.index(self.space.id)) & self.in_fan(points)]
        seen: FloatArray = own[self.heights(own).seen_at(self.level.floor_m + BODY_UP_M)]
        return seen

    def lowest_zone(self, points: FloatArray, above: FloatArray, *, reach_m: float) -> FloatArray:
        """The lowest zone over places that is above what stands there and in sight.

        Parameters
        ----------
        points : ndarray, shape (N, 2)
            Places of the plan. [m]
        above : ndarray, shape (N,)
            What is stood on there, above the house's zero. [m]
        reach_m : float
            The reach of its zones. [m]

        Returns
        -------
        ndarray, shape (N,)
            Above the house's zero; inf where no zone passes. [m]
        """
        lowest = np.full(len(points), np.inf)
        if len(points) > 0:
            seen = in_sight(self.sight, points, heading=self.heading, half=self.half)
            lowest[seen.rows] = seen.lowest_zone(self.depressions, above[seen.rows], reach_m=reach_m)
        return lowest


def ahead_of(site: Site, device: Device, sheet: MovementSheet) -> Ahead:
    """What lies ahead of a movement detector.

    Parameters
    ----------
    site : Site
        The house, leaves as it says.
    device : Device
        The detector.
    sheet : MovementSheet
        Its sheet.

    Returns
    -------
    Ahead
        Its fan and its sight as far as the storey goes, whatever its reach.
    """
    return _ahead(site.bare, device, sheet)


@lru_cache(maxsize=512)
def _ahead(house: Site, device: Device, sheet: MovementSheet) -> Ahead:
    hung = hung_of(house, device, sheet)
    x, y, _ = hung.eye
    way = (math.cos(hung.heading), math.sin(hung.heading))
    before = (x + BEFORE_M * way[0], y + BEFORE_M * way[1])
    space = space_at(house, hung.storey, (x, y)) or space_at(house, hung.storey, before)
    level, rows = level_of(house, hung.storey), depressions_of(device, sheet)
    return Ahead(hung.eye, hung.heading, hung.half, rows, level, sight_from(house, hung), space)
