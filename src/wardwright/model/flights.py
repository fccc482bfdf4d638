"""Flights of stairs, their wells and balusters, as shapes that stop sight or let it through."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np
import shapely

from wardwright.geometry.panels import Blockers, sheets
from wardwright.geometry.raster import FloatArray
from wardwright.model.fabric import Stair, Storey
from wardwright.model.leaves import Leaves
from wardwright.model.record import Point2

RISER_M = 0.2
"""The height of one step. [m] (common practice)"""
BALUSTRADE_M = 0.9
"""How high the guard of a well stands above the floor. [m] (common practice)"""
LANDING_M = 0.05
"""How near the highest riser the guard must come to be left out there. [m] (assumption)"""


@lru_cache(maxsize=256)
def well(stair: Stair) -> tuple[Point2, ...]:
    """The outline of the hole in the upper floor. [m]"""
    if stair.well_m is not None:
        return stair.well_m
    return tuple((float(x), float(y)) for x, y in shapely.get_coordinates(footprint(stair).exterior)[:-1])


@lru_cache(maxsize=256)
def footprint(stair: Stair) -> shapely.Polygon:
    """The walking line at its width. [m]"""
    line = shapely.LineString(stair.line_m)
    return line.buffer(stair.width_m / 2, cap_style="flat", join_style="mitre")


@lru_cache(maxsize=256)
def flight(stair: Stair, storeys: tuple[Storey, Storey], leaves: Leaves = "told") -> Blockers:
    """What of a stair stops sight: its steps, what boxes it in, the guard of its well.

    Parameters
    ----------
    stair : Stair
        The stair.
    storeys : tuple of two Storey
        Where it starts and where it leads.
    leaves : {"told", "shut", "away"}
        Away: open balusters are looked through; otherwise they are opaque. Solid ones always are.

    Returns
    -------
    Blockers
        Panels with heights above the house's zero. [m]
    """
    low, high = storeys[0].elevation_m, storeys[1].elevation_m
    steps = max(1, round((high - low) / RISER_M))
    places, ways = _along(stair, np.arange(steps) / steps)
    left = np.stack([-ways[:, 1], ways[:, 0]], axis=1) * (stair.width_m / 2)
    treads = low + (np.arange(steps) + 1) / steps * (high - low)
    rise = (high - low) / steps
    rows: list[tuple[float, ...]] = []
    for index in range(steps):
        a, b = places[index] - left[index], places[index] + left[index]
        # Two risers deep: a flight is a sloping slab, and lines steeper than it are rare.
        foot = low if stair.is_enclosed else max(low, treads[index] - 2 * rise)
        rows.append((*a, *b, foot, treads[index]))
        if stair.is_enclosed:
            last = index + 1 == steps
            ahead = np.asarray(stair.line_m[-1]) if last else places[index + 1]
            turned = left[index] if last else left[index + 1]
            rows.extend(
                (*(places[index] + s * left[index]), *(ahead + s * turned), low, treads[index])
                for s in (1, -1)
            )
    rows.extend(_guard(stair, level=high, leaves=leaves))
    return sheets(rows)


def _along(stair: Stair, shares: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Places and unit vectors of the walk at shares of the walking line."""
    corners = np.asarray(stair.line_m, dtype=np.float64)
    pieces = np.diff(corners, axis=0)
    lengths = np.hypot(pieces[:, 0], pieces[:, 1])
    walked = np.concatenate([[0.0], np.cumsum(lengths)])
    piece = np.clip(np.searchsorted(walked, shares * walked[-1], side="right") - 1, 0, len(pieces) - 1)
    ways = pieces[piece] / np.maximum(lengths[piece], 1e-9)[:, None]
    return corners[piece] + (shares * walked[-1] - walked[piece])[:, None] * ways, ways


def _guard(stair: Stair, *, level: float, leaves: Leaves) -> list[tuple[float, ...]]:
    """Panels round the well, but where the flight arrives."""
    if stair.balusters == "none" or (stair.balusters == "open" and leaves == "away"):
        return []
    ring = well(stair)
    arrival = shapely.Point(stair.line_m[-1])
    edges = zip(ring, (*ring[1:], ring[0]), strict=True)
    reach = [(shapely.LineString(edge).distance(arrival), edge) for edge in edges]
    nearest = min(distance for distance, _ in reach)
    return [
        (*start, *end, level, level + BALUSTRADE_M)
        for distance, (start, end) in reach
        if distance > nearest + LANDING_M and math.dist(start, end) > 1e-6
    ]


def height_on(stair: Stair, storeys: tuple[Storey, Storey], places: FloatArray) -> FloatArray:
    """How high one stands on a flight.

    Parameters
    ----------
    stair : Stair
        The flight.
    storeys : tuple of two Storey
        Where it starts and where it leads.
    places : ndarray, shape (N, 2)
        Places on the plan. [m]

    Returns
    -------
    ndarray, shape (N,)
        Above the house's zero; nan off the flight. [m]
    """
    low, high = storeys[0].elevation_m, storeys[1].elevation_m
    line = shapely.LineString(stair.line_m)
    more = stair.width_m / 2 + 1e-6
    ends = np.asarray(line.bounds)
    beside = ((places >= ends[:2] - more) & (places <= ends[2:] + more)).all(axis=1)
    heights = np.full(len(places), np.nan)
    points = shapely.points(places[beside])
    share = shapely.line_locate_point(line, points, normalized=True)
    # Beyond its ends one is beside the flight, not on it.
    near = (shapely.distance(line, points) <= stair.width_m / 2) & (
        shapely.distance(footprint(stair), points) <= 1e-6
    )
    heights[beside] = np.where(near, low + share * (high - low), np.nan)
    return heights
