"""The edges of an area, and the corners that a shortest path can bend at, as arrays."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray

STRAIGHT = 1e-9
"""A corner this near the line between its neighbours is none. [m] (derived here: rounding of coordinates)"""


class Corners(NamedTuple):
    """The boundary of an area."""

    edges: FloatArray
    """Start and end of every edge, the area on its left, shape (E, 2, 2). [m]"""
    points: FloatArray
    """Corners that bulge into the area, shape (N, 2). [m]"""
    ahead: FloatArray
    """Unit vectors from each such corner along the edge that leaves it, shape (N, 2). [-]"""
    turn: FloatArray
    """How much the boundary turns toward its obstacle there, in (0, pi), shape (N,). [rad]"""


def cross(a: FloatArray, b: FloatArray) -> FloatArray:
    """The z part of the vector product of plane vectors.

    Parameters
    ----------
    a : ndarray, shape (..., 2)
        Vectors. [m]
    b : ndarray, shape (..., 2)
        Vectors. [m]

    Returns
    -------
    ndarray, shape (...)
        Positive where `b` points to the left of `a`. [m2]
    """
    return a[..., 0] * b[..., 1] - a[..., 1] * b[..., 0]


def dot(a: FloatArray, b: FloatArray) -> FloatArray:
    """The scalar product of plane vectors.

    Parameters
    ----------
    a : ndarray, shape (..., 2)
        Vectors. [m]
    b : ndarray, shape (..., 2)
        Vectors. [m]

    Returns
    -------
    ndarray, shape (...)
        The products. [m2]
    """
    return a[..., 0] * b[..., 0] + a[..., 1] * b[..., 1]


def corners_of(area: shapely.Geometry) -> Corners:
    """Take an area apart into edges and bulging corners.

    Parameters
    ----------
    area : shapely geometry
        Polygon or polygons, with or without holes. [m]

    Returns
    -------
    Corners
        Its boundary. An empty area gives empty arrays.

    Examples
    --------
    A room with a block in it has the block's four corners to bend at:

    >>> room = shapely.box(0, 0, 4, 4).difference(shapely.box(1, 1, 2, 2))
    >>> len(corners_of(room).points), len(corners_of(room).edges)
    (4, 8)
    """
    starts, ends, backs = [np.empty((0, 2))], [np.empty((0, 2))], [np.empty((0, 2))]
    for part in shapely.get_parts(area):
        if part.geom_type != "Polygon" or part.is_empty:
            continue
        turned = shapely.orient_polygons(part)
        for ring in (turned.exterior, *turned.interiors):
            corners = _distinct(shapely.get_coordinates(ring)[:-1])
            if len(corners) > 2:
                starts.append(corners)
                ends.append(np.roll(corners, -1, axis=0))
                backs.append(np.roll(corners, 1, axis=0))
    start, end, back = np.concatenate(starts), np.concatenate(ends), np.concatenate(backs)
    arriving, leaving = start - back, end - start
    turn = np.arctan2(cross(arriving, leaving), dot(arriving, leaving))
    bulging = turn < 0.0
    ahead = leaving[bulging] / np.linalg.norm(leaving[bulging], axis=1, keepdims=True)
    return Corners(np.stack([start, end], axis=1), start[bulging], ahead, -turn[bulging])


def _distinct(ring: FloatArray) -> FloatArray:
    """A ring less corners that repeat the one before, or lie on the straight between their neighbours."""
    for _ in range(8):
        apart = np.linalg.norm(ring - np.roll(ring, 1, axis=0), axis=1) > 1e-9
        ring = ring[apart]
        if len(ring) < 3:
            return ring
        back, ahead = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
        bends = np.abs(cross(back, ahead)) > STRAIGHT * np.linalg.norm(back + ahead, axis=1)
        # Drop every other straight corner at most, so that no two neighbours go at once.
        drop = ~bends & ~(np.roll(~bends, 1) & (np.arange(len(ring)) % 2 == 1))
        if not drop.any():
            return ring
        ring = ring[~drop]
    return ring
