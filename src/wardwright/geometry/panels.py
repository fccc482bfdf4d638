"""Upright panels and boxes that stop sight, as plain arrays."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray, IntArray


class Blockers(NamedTuple):
    """What stops sight: upright panels, some of which are the sides of closed convex boxes."""

    panels: FloatArray
    """Each panel: x and y of one end, x and y of the other, lower edge, upper edge; shape (P, 6). [m]"""
    bodies: IntArray
    """Which box a panel is a side of; -1: none, it is a sheet by itself; shape (P,). [-]"""


NOTHING = Blockers(np.empty((0, 6)), np.empty(0, dtype=np.int64))
"""No blockers at all."""


def sheets(rows: Iterable[Sequence[float]]) -> Blockers:
    """Panels that stand by themselves.

    Parameters
    ----------
    rows : iterable of six floats
        For each: x, y, x, y, lower edge, upper edge; those without height or length are left out. [m]

    Returns
    -------
    Blockers
        The panels.

    Examples
    --------
    >>> sheets([(0.0, 0.0, 1.0, 0.0, 0.0, 2.4), (0.0, 0.0, 1.0, 0.0, 2.4, 2.4)]).panels.shape
    (1, 6)
    """
    panels = np.array(list(rows), dtype=np.float64).reshape(-1, 6)
    length = np.hypot(panels[:, 2] - panels[:, 0], panels[:, 3] - panels[:, 1])
    panels = panels[(panels[:, 5] - panels[:, 4] > 1e-6) & (length > 1e-6)]
    return Blockers(panels, np.full(len(panels), -1, dtype=np.int64))


def box(ring: ArrayLike, *, low: float, high: float) -> Blockers:
    """The sides of one convex box, closed above and below.

    Parameters
    ----------
    ring : array_like, shape (V, 2)
        Corners of its outline on the plan, in order, first not repeated. [m]
    low : float
        Its underside. [m]
    high : float
        Its top. [m]

    Returns
    -------
    Blockers
        V panels of one body.
    """
    corners = np.asarray(ring, dtype=np.float64)
    after = np.roll(corners, -1, axis=0)
    levels = np.broadcast_to([low, high], (len(corners), 2))
    return Blockers(np.hstack([corners, after, levels]), np.zeros(len(corners), dtype=np.int64))


def extruded(area: shapely.Geometry, *, low: float, high: float) -> Blockers:
    """The upright faces of an area drawn up between two levels, holes included.

    Its upper and lower faces are left out: they matter only to a line that goes in by one and comes out by the
    other without meeting an upright face, which a wall that stands on the floor does not allow.

    Parameters
    ----------
    area : shapely geometry
        Polygon or polygons. [m]
    low : float
        Lower level. [m]
    high : float
        Upper level. [m]

    Returns
    -------
    Blockers
        One sheet an edge of the area.

    Examples
    --------
    >>> len(extruded(shapely.box(0, 0, 1, 1), low=0.0, high=2.4).panels)
    4
    """
    rows: list[FloatArray] = []
    for polygon in shapely.get_parts(area):
        if polygon.geom_type != "Polygon":
            continue
        for ring in (polygon.exterior, *polygon.interiors):
            corners = shapely.get_coordinates(ring)
            rows.append(np.hstack([corners[:-1], corners[1:]]))
    if not rows:
        return NOTHING
    edges = np.vstack(rows)
    return sheets(np.hstack([edges, np.broadcast_to([low, high], (len(edges), 2))]))


def joined(several: Iterable[Blockers]) -> Blockers:
    """All of several lists of blockers as one; boxes stay apart.

    Parameters
    ----------
    several : iterable of Blockers
        The lists.

    Returns
    -------
    Blockers
        Their panels in turn, box numbers renewed.
    """
    panels: list[FloatArray] = [NOTHING.panels]
    bodies: list[IntArray] = [NOTHING.bodies]
    used = 0
    for part in several:
        panels.append(part.panels)
        bodies.append(np.where(part.bodies >= 0, part.bodies + used, -1))
        used += int(part.bodies.max(initial=-1)) + 1
    return Blockers(np.vstack(panels), np.concatenate(bodies))


def between(blockers: Blockers, *, low: float, high: float) -> Blockers:
    """The blockers that reach into a band of heights.

    Parameters
    ----------
    blockers : Blockers
        What stops sight.
    low : float
        Lower edge of the band. [m]
    high : float
        Upper edge of the band. [m]

    Returns
    -------
    Blockers
        Those not wholly below or above it.
    """
    keep = (blockers.panels[:, 5] > low + 1e-9) & (blockers.panels[:, 4] < high - 1e-9)
    return Blockers(blockers.panels[keep], blockers.bodies[keep])
