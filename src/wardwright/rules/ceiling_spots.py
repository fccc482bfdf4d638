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
    x_low, y_low, x_high, y_high = inner.bounds
    xs = np.arange(x_low, x_high + CEILING_STEP_M / 2, CEILING_STEP_M)
    ys = np.arange(y_low, y_high + CEILING_STEP_M / 2, CEILING_STEP_M)
    points = [
        (float(x), float(y))
        for x in xs
        for y in ys
        if shapely.covers(inner, shapely.Point(float(x), float(y)))
    ]
    return tuple(sorted(points, key=lambda point: (math.dist(point, nearest_to), point)))


def moved_on_ceiling(device: Device, storey: str, point: Point2) -> Mend:
    """The mend that moves a device to a place on a ceiling."""
    values = (("on", "ceiling"), ("storey", storey), ("x_m", point[0]), ("y_m", point[1]))
    return Mend(action="move-device", subject=device.id, values=values)
