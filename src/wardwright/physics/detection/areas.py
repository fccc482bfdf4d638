"""Areas of floor within a detector's reach."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray, Grid, IntArray
from wardwright.physics.detection.noticed import SeenFacts
from wardwright.physics.detection.shapes import Sensed
from wardwright.physics.detection.walkers import BODY_RADIUS_M


class Owned(NamedTuple):
    """Free floor by whose it is."""

    owner: IntArray
    """Index of each free cell's owner, -1: none, shape (N,). [-]"""
    own: int
    """The owner of the floor that the detector stands over; -1: nobody. [-]"""
    names: tuple[str, ...]
    """The owners."""
    cell: float
    """Side of a cell. [m]"""


def areas_within(
    places: BoolArray, distance: FloatArray, *, reaches: Sequence[float], cell: float
) -> tuple[float, ...]:
    """Floor that is marked and within each reach.

    Parameters
    ----------
    places : ndarray of bool, shape (N,)
        Which cells are marked.
    distance : ndarray, shape (N,)
        How far off each is. [m]
    reaches : sequence of float, length L
        The reaches. [m]
    cell : float
        Side of a cell. [m]

    Returns
    -------
    tuple of float, length L
        Their areas. [m2]
    """
    marked = distance[places]
    return tuple(round(cell * cell * int(np.count_nonzero(marked <= reach + 1e-9)), 6) for reach in reaches)


def shares_missing(
    places: BoolArray, distance: FloatArray, *, whole: BoolArray, reaches: Sequence[float]
) -> tuple[float, ...]:
    """The share of some floor that is not marked, or not within each reach.

    Parameters
    ----------
    places : ndarray of bool, shape (N,)
        Which cells are marked.
    distance : ndarray, shape (N,)
        How far off each is. [m]
    whole : ndarray of bool, shape (N,)
        The floor in question.
    reaches : sequence of float, length L
        The reaches. [m]

    Returns
    -------
    tuple of float, length L
        Between 0 and 1; nan where there is no such floor. [-]
    """
    number = int(np.count_nonzero(whole))
    if number == 0:
        return tuple(math.nan for _ in reaches)
    marked = distance[places & whole]
    return tuple(1.0 - int(np.count_nonzero(marked <= reach + 1e-9)) / number for reach in reaches)


def areas_by_owner(
    places: BoolArray, owner: IntArray, *, names: Sequence[str], cell: float
) -> tuple[tuple[str, float], ...]:
    """Marked floor by whose it is.

    Parameters
    ----------
    places : ndarray of bool, shape (N,)
        Which cells are marked.
    owner : ndarray of int, shape (N,)
        Index of each cell's owner, -1: none. [-]
    names : sequence of str
        The owners.
    cell : float
        Side of a cell. [m]

    Returns
    -------
    tuple of (str, float)
        Owner and area, largest first, none without any. [m2]
    """
    number = np.bincount(owner[places & (owner >= 0)], minlength=len(names))
    found = [(name, round(cell * cell * int(n), 6)) for name, n in zip(names, number, strict=True) if n > 0]
    return tuple(sorted(found, key=lambda one: (-one[1], one[0])))


def owner_before(grid: Grid, owners: IntArray, place: tuple[float, float], *, heading: float) -> int:
    """Whose floor a detector stands over: that of its own cell, or of one just before it.

    Parameters
    ----------
    grid : Grid
        The cells.
    owners : ndarray of int, shape (ny, nx)
        Index of each cell's owner, -1: none. [-]
    place : tuple of float
        The detector on the plan. [m]
    heading : float
        Where it looks, anticlockwise from x. [rad]

    Returns
    -------
    int
        The owner's index, -1: none.
    """
    ahead = np.array([math.cos(heading), math.sin(heading)]) * grid.cell
    for step in (0.0, 1.0, 2.0):
        row, column = grid.cells_of(np.asarray(place) + step * ahead)
        if owners[row, column] >= 0:
            return int(owners[row, column])
    return -1


def facts_of(
    sensed: Sensed,
    owned: Owned,
    *,
    points_seen: tuple[BoolArray, BoolArray],
    reach: float,
    reach_shares: Sequence[float],
) -> SeenFacts:
    """What a detector really sees, at several shares of its reach.

    Parameters
    ----------
    sensed : Sensed
        Where a person upright is sensed, over N free cells.
    owned : Owned
        Whose they are.
    points_seen : tuple of two ndarray of bool, shape (N,) each
        Whether a point 0.3 m high, and one 1.0 m high, is in sight over each.
    reach : float
        The sheet's reach. [m]
    reach_shares : sequence of float, length L
        Shares of it. [-]

    Returns
    -------
    SeenFacts
        Detector and storey left blank.
    """
    owner, own = owned.owner, owned.own
    reaches = [share * reach for share in reach_shares]
    outside = sensed.high & (owner != own) & (owner >= 0)

    def areas(places: BoolArray, more: float = 0.0) -> tuple[float, ...]:
        return areas_within(places, sensed.distance, reaches=[r + more for r in reaches], cell=owned.cell)

    return SeenFacts(
        device="",
        storey="",
        space=owned.names[own] if own >= 0 else None,
        reach_shares=tuple(reach_shares),
        seen_at_03_m2=areas(points_seen[0]),
        seen_at_10_m2=areas(points_seen[1]),
        blind_share=shares_missing(
            sensed.seen, sensed.distance, whole=(owner == own) & (own >= 0), reaches=reaches
        ),
        leak_m2=areas(outside, more=BODY_RADIUS_M),
        leak_spaces=areas_by_owner(
            outside & (sensed.distance <= reach + BODY_RADIUS_M), owner, names=owned.names, cell=owned.cell
        ),
        low_m2=areas(sensed.low),
        high_m2=areas(sensed.high, more=BODY_RADIUS_M),
    )
