"""What lies ahead of a movement detector: its fan in plain sight, reach left aside, and its zones over a place."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.geometry.sight import Heights, Sight, look, visible_heights
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.fabric import Space
from wardwright.model.floor_cells import FloorCells, floor_cells
from wardwright.model.placement import space_at, standing
from wardwright.model.sightlines import blockers_on
from wardwright.model.site import Site
from wardwright.model.surfaces import Level, clear_of_walls, level_of, levels_by_stairs

CELL_M = 0.1
"""Side of a cell of the floor. [m]"""
BEFORE_M = 0.2
"""The space of a detector is looked for this far before it. [m] (assumption)"""
BODY_UP_M = 1.0
"""A place is in plain sight where somebody's middle is seen, this high above the floor. [m] (assumption)"""
HAIR_RAD = 1e-9


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
        return _in_fan(self.eye, points, heading=self.heading, half=self.half)

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


class InSight(NamedTuple):
    """Places in a detector's fan over which it sees anything, K of them; shared, not to be written to."""

    rows: IntArray
    """Which of the places asked about they are, shape (K,). [-]"""
    eye_m: float
    """Where the detector hangs, above the house's zero. [m]"""
    distance: FloatArray
    """How far off they are on the plan, shape (K,). [m]"""
    heights: Heights
    """What is visible over them. [m]"""

    def lowest_zone(self, depressions: tuple[float, ...], above: FloatArray, *, reach_m: float) -> FloatArray:
        """The lowest zone over each place that is above what stands there and in sight, as `Ahead.lowest_zone`.

        Parameters
        ----------
        depressions : tuple of float
            Of the rows of zones. [rad]
        above : ndarray, shape (K,)
            What is stood on there, above the house's zero. [m]
        reach_m : float
            The reach of the zones. [m]

        Returns
        -------
        ndarray, shape (K,)
            Above the house's zero; inf where no zone passes. [m]
        """
        falls = np.array([[math.tan(min(depression, math.radians(89.0)))] for depression in depressions])
        zones = self.eye_m - self.distance * falls
        passes = (self.distance <= reach_m + 1e-9) & (zones >= above - 1e-9) & self.heights.seen_at(zones)
        lowest: FloatArray = np.where(passes, zones, np.inf).min(axis=0, initial=np.inf)
        return lowest


def in_sight(sight: Sight, points: FloatArray, *, heading: float, half: float) -> InSight:
    """The places in a fan over which anything is seen.

    Parameters
    ----------
    sight : Sight
        What is seen from the detector.
    points : ndarray, shape (N, 2)
        Places of the plan. [m]
    heading : float
        Middle of its fan. [rad]
    half : float
        Half of its fan. [rad]

    Returns
    -------
    InSight
        Whatever the reach.
    """
    x, y, z = sight.eye.tolist()
    rows = np.flatnonzero(_in_fan((x, y, z), points, heading=heading, half=half))
    heights = visible_heights(sight, points[rows])
    is_seen = np.isfinite(heights.lowest())
    rows = rows[is_seen]
    distance = np.hypot(points[rows, 0] - x, points[rows, 1] - y)
    low, high = heights.low[:, is_seen], heights.high[:, is_seen]
    # Most of what is seen is one interval; those that only azimuths without such a place have are left out.
    used = np.isfinite(low).any(axis=1)
    return InSight(rows, z, distance, Heights(low[used], high[used]))


def _in_fan(eye: tuple[float, float, float], points: FloatArray, *, heading: float, half: float) -> BoolArray:
    turn = np.arctan2(points[:, 1] - eye[1], points[:, 0] - eye[0]) - heading
    off = np.abs(turn - 2.0 * math.pi * np.round(turn / (2.0 * math.pi)))
    inside: BoolArray = off <= half + HAIR_RAD
    return inside


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
    at = standing(house, device)
    level = level_of(house, at.storey)
    heading = math.radians(at.heading_deg)
    way = (math.cos(heading), math.sin(heading))
    x, y = clear_of_walls(level, (at.x_m, at.y_m), way)
    eye = (x, y, level.floor_m + at.height_m)
    half = min(math.pi, math.radians(sheet.angle_deg) / 2.0)
    before = (x + BEFORE_M * way[0], y + BEFORE_M * way[1])
    space = space_at(house, at.storey, (x, y)) or space_at(house, at.storey, before)
    sight = sight_from(house, at.storey, eye, heading=heading, half=half)
    rows = tuple(math.radians(row.depression_deg + device.tilt_deg) for row in sheet.rows)
    return Ahead(eye, heading, half, rows, level, sight, space)


@lru_cache(maxsize=512)
def sight_from(
    house: Site, storey: str, eye: tuple[float, float, float], *, heading: float, half: float
) -> Sight:
    """What is in sight from a place, leaves as the house says, as far as the storey goes.

    Remembered by where a detector hangs and how wide it sees: a like sheet tried in its place sees the same.

    Parameters
    ----------
    house : Site
        The bare house.
    storey : str
        Which storey.
    eye : tuple of float
        x, y, z. [m]
    heading : float
        Middle of the fan. [rad]
    half : float
        Half of the fan. [rad]
    """
    level, others = level_of(house, storey), levels_by_stairs(house, storey)
    return look(
        eye,
        blockers_on(level, others),
        heading=heading,
        half_angle=half,
        reach=_extent(level),
        band=(level.floor_m, level.ceiling_m),
    )


@lru_cache(maxsize=64)
def _extent(level: Level) -> float:
    """Longer than any straight view on a storey. [m]"""
    bounds = shapely.total_bounds([shapely.Polygon(space.outline_m) for space in level.parts.spaces])
    if not np.isfinite(bounds).all():
        return 1.0
    return math.hypot(bounds[2] - bounds[0], bounds[3] - bounds[1]) + 1.0
