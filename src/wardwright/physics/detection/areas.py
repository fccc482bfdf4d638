"""Areas of floor within a detector's reach."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray, Grid, IntArray


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
