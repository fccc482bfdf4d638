"""Where a movement detector hangs, how wide it looks, and what it has in sight there, reach left aside."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.geometry.sight import Heights, Sight, heights_toward, look, visible_heights
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.placement import standing
from wardwright.model.sightlines import blockers_on
from wardwright.model.site import Site
from wardwright.model.surfaces import Level, clear_of_walls, level_of, levels_by_stairs

HAIR_RAD = 1e-9


class Hung(NamedTuple):
    """Where a detector hangs, and how wide it looks."""

    storey: str
    eye: tuple[float, float, float]
    """x, y, z. [m]"""
    heading: float
    """[rad]"""
    half: float
    """Half of its fan. [rad]"""


@lru_cache(maxsize=1024)
def hung_of(house: Site, device: Device, sheet: MovementSheet) -> Hung:
    """Where a detector hangs, out of any wall that is drawn thicker than told.

    Parameters
    ----------
    house : Site
        The bare house.
    device : Device
        The detector.
    sheet : MovementSheet
        Its sheet.
    """
    at = standing(house, device)
    level = level_of(house, at.storey)
    heading = math.radians(at.heading_deg)
    x, y = clear_of_walls(level, (at.x_m, at.y_m), (math.cos(heading), math.sin(heading)))
    half = min(math.pi, math.radians(sheet.angle_deg) / 2.0)
    return Hung(at.storey, (x, y, level.floor_m + at.height_m), heading, half)


def depressions_of(device: Device, sheet: MovementSheet) -> tuple[float, ...]:
    """How far its rows of zones look down, its tilt included. [rad]"""
    return tuple(math.radians(row.depression_deg + device.tilt_deg) for row in sheet.rows)


@lru_cache(maxsize=512)
def sight_from(house: Site, hung: Hung) -> Sight:
    """What a detector has in sight, leaves as the house says, as far as the storey goes.

    Remembered by where it hangs and how wide it sees: a like sheet tried in its place sees the same.

    Parameters
    ----------
    house : Site
        The bare house.
    hung : Hung
        The detector.
    """
    level = level_of(house, hung.storey)
    return look(
        hung.eye,
        blockers_on(level, levels_by_stairs(house, hung.storey)),
        heading=hung.heading,
        half_angle=hung.half,
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
    rows = np.flatnonzero(in_fan((x, y, z), points, heading=heading, half=half))
    return _seen((x, y, z), points, rows, heights=visible_heights(sight, points[rows]))


def in_sight_there(house: Site, hung: Hung, points: FloatArray) -> InSight:
    """As `in_sight` of what `sight_from` sees, sooner where only a few places are asked about.

    Parameters
    ----------
    house : Site
        The bare house.
    hung : Hung
        The detector.
    points : ndarray, shape (N, 2)
        Places of the plan. [m]
    """
    rows = np.flatnonzero(in_fan(hung.eye, points, heading=hung.heading, half=hung.half))
    level = level_of(house, hung.storey)
    heights = heights_toward(
        hung.eye,
        blockers_on(level, levels_by_stairs(house, hung.storey)),
        points[rows],
        heading=hung.heading,
        half_angle=hung.half,
        reach=_extent(level),
        band=(level.floor_m, level.ceiling_m),
    )
    return _seen(hung.eye, points, rows, heights=heights)


def _seen(
    eye: tuple[float, float, float], points: FloatArray, rows: IntArray, *, heights: Heights
) -> InSight:
    """Of places in a fan those over which anything is seen."""
    is_seen = np.isfinite(heights.lowest())
    rows = rows[is_seen]
    distance = np.hypot(points[rows, 0] - eye[0], points[rows, 1] - eye[1])
    low, high = heights.low[:, is_seen], heights.high[:, is_seen]
    # Most of what is seen is one interval; those that only azimuths without such a place have are left out.
    used = np.isfinite(low).any(axis=1)
    return InSight(rows, eye[2], distance, Heights(low[used], high[used]))


def in_fan(eye: tuple[float, float, float], points: FloatArray, *, heading: float, half: float) -> BoolArray:
    """Which places a fan covers.

    Parameters
    ----------
    eye : tuple of float
        x, y, z. [m]
    points : ndarray, shape (N, 2)
        Places of the plan. [m]
    heading : float
        Middle of the fan. [rad]
    half : float
        Half of the fan. [rad]

    Returns
    -------
    ndarray of bool, shape (N,)
        Whatever the reach.
    """
    turn = np.arctan2(points[:, 1] - eye[1], points[:, 0] - eye[0]) - heading
    off = np.abs(turn - 2.0 * math.pi * np.round(turn / (2.0 * math.pi)))
    inside: BoolArray = off <= half + HAIR_RAD
    return inside
