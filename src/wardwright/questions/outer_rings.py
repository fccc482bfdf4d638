"""Outlines of what is climbed or stood on, for drawing."""

from __future__ import annotations

import shapely

from wardwright.model.record import Ring


def outer_rings(area: shapely.Geometry) -> tuple[Ring, ...]:
    """The outer outline of each piece of an area, holes left aside; none of a line. [m]"""
    return tuple(
        tuple((float(x), float(y)) for x, y in part.exterior.coords[:-1])
        for part in shapely.get_parts(area)
        if isinstance(part, shapely.Polygon) and not part.is_empty
    )
