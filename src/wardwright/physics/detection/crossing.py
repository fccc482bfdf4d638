"""How a walk meets a detector's view, and where along it something starts."""

from __future__ import annotations

import math

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray, Grid


def steps_of(places: FloatArray) -> FloatArray:
    """Which way a walk goes at each of its points.

    Parameters
    ----------
    places : ndarray, shape (N, 2)
        The walk on the plan. [m]

    Returns
    -------
    ndarray, shape (N, 2)
        Half of what lies between the points before and after; 0 where the walk stands still. [m]
    """
    steps = np.zeros(places.shape)
    if len(places) > 1:
        # As numpy's own gradient has it, which takes several times as long over so few places.
        steps[1:-1] = (places[2:] - places[:-2]) / 2.0
        steps[0], steps[-1] = places[1] - places[0], places[-1] - places[-2]
    return steps


def angles_to(places: FloatArray, eye: tuple[float, float], *, steps: FloatArray) -> FloatArray:
    """Angle between a walk and the line to one point, all along it.

    Parameters
    ----------
    places : ndarray, shape (N, 2)
        The walk on the plan. [m]
    eye : tuple of float
        The point. [m]
    steps : ndarray, shape (N, 2)
        Which way it goes at each place, of any length. [m]

    Returns
    -------
    ndarray, shape (N,)
        90 straight across, 0 straight toward or away; nan where the walk stands still or is at the point. [deg]

    Examples
    --------
    >>> walk = np.array([[1.0, -1.0], [1.0, 0.0], [1.0, 1.0]])
    >>> angles_to(walk, (0.0, 0.0), steps=steps_of(walk)).round(1).tolist()
    [45.0, 90.0, 45.0]
    """
    toward = np.asarray(eye) - places
    lengths = np.hypot(steps[:, 0], steps[:, 1]) * np.hypot(toward[:, 0], toward[:, 1])
    moves = lengths > 1e-12
    cosine = np.abs((steps * toward).sum(axis=1)) / np.where(moves, lengths, 1.0)
    return np.where(moves, np.degrees(np.arccos(np.clip(cosine, 0.0, 1.0))), np.nan)


def mask_at(grid: Grid, mask: BoolArray, places: FloatArray) -> BoolArray:
    """The values of masks at places of the plan.

    Parameters
    ----------
    grid : Grid
        The cells.
    mask : ndarray of bool, shape (..., ny, nx)
        Their values, in one mask or several.
    places : ndarray, shape (N, 2)
        Places on the plan. [m]

    Returns
    -------
    ndarray of bool, shape (..., N)
        False off the grid.
    """
    rows, columns = grid.cells_of(places)
    low = np.array([grid.x0, grid.y0])
    inside = ((places >= low) & (places <= low + np.array([grid.nx, grid.ny]) * grid.cell)).all(axis=1)
    values: BoolArray = mask[..., rows, columns] & inside
    return values


def walked_along(places: FloatArray) -> FloatArray:
    """Distance walked to each point.

    Parameters
    ----------
    places : ndarray, shape (N, 2)
        The walk on the plan. [m]

    Returns
    -------
    ndarray, shape (N,)
        On the plan, 0 at the first. [m]
    """
    steps = np.diff(places, axis=0)
    return np.concatenate([[0.0], np.cumsum(np.hypot(steps[:, 0], steps[:, 1]))])[: len(places)]


def first_walked(walked: FloatArray, mask: BoolArray) -> float:
    """Distance walked to the first point that is True.

    Parameters
    ----------
    walked : ndarray, shape (N,)
        Distance walked to each point. [m]
    mask : ndarray of bool, shape (N,)
        The points.

    Returns
    -------
    float
        inf where none is. [m]
    """
    return float(walked[int(mask.argmax())]) if mask.any() else math.inf
