"""Places on the ceiling of a room where a device could go."""

from __future__ import annotations

import math

import numpy as np
import shapely

from wardwright.model.device import Device
from wardwright.model.fabric import Space
from wardwright.model.record import Point2
from wardwright.rules.finding import Mend

CEILING_STEP_M = 0.25
"""Between ceiling places that are tried. [m] (assumption)"""
OFF_WALLS_M = 0.3
"""Of ceiling places from the walls. [m] (assumption)"""


def ceiling_spots(space: Space, *, nearest_to: Point2) -> tuple[Point2, ...]:
    """Places on the ceiling of one space, off its walls.

    Parameters
    ----------
    space : Space
        The room.
    nearest_to : (float, float)
        A place of the plan. [m]

    Returns
    -------
    tuple of (float, float)
        Nearest to that place first; empty in a room too narrow. [m]
    """
    inner = shapely.Polygon(space.outline_m).buffer(-OFF_WALLS_M)
    if inner.is_empty:
        return ()
    points = grid_within(inner, step=CEILING_STEP_M)
    return tuple(sorted(points, key=lambda point: (math.dist(point, nearest_to), point)))


def grid_within(area: shapely.Geometry, *, step: float) -> tuple[Point2, ...]:
    """Places of a square grid that lie in an area, column by column. [m]"""
    if area.is_empty:
        return ()
    x_low, y_low, x_high, y_high = area.bounds
    xs, ys = np.arange(x_low, x_high + step / 2, step), np.arange(y_low, y_high + step / 2, step)
    x, y = (axis.ravel() for axis in np.meshgrid(xs, ys, indexing="ij"))
    inside = shapely.covers(area, shapely.points(x, y))
    return tuple(zip(x[inside].tolist(), y[inside].tolist(), strict=True))


def moved_on_ceiling(device: Device, storey: str, point: Point2) -> Mend:
    """The mend that moves a device to a place on a ceiling."""
    values = (("on", "ceiling"), ("storey", storey), ("x_m", point[0]), ("y_m", point[1]))
    return Mend(action="move-device", subject=device.id, values=values)
