"""Hatching as lines: what any writer can draw."""

from __future__ import annotations

import math

import shapely
import shapely.affinity

from wardwright.model.record import Line2, Ring


def area_of(rings: tuple[Ring, ...]) -> shapely.Geometry:
    """The area of rings where a ring inside another is a hole.

    Parameters
    ----------
    rings : tuple of rings
        Outlines, first corner not repeated.

    Returns
    -------
    shapely geometry
        Polygon or polygons; empty where no ring has an area.

    Examples
    --------
    >>> outer = ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0))
    >>> hole = ((0.5, 0.5), (0.5, 1.5), (1.5, 1.5), (1.5, 0.5))
    >>> area_of((outer, hole)).area
    3.0
    """
    area = shapely.Polygon()
    for ring in rings:
        if len(ring) >= 3:
            area = area.symmetric_difference(shapely.make_valid(shapely.Polygon(ring)))
    return area


def rings_of(area: shapely.Geometry) -> tuple[Ring, ...]:
    """The outlines of an area, outer rings anticlockwise, holes clockwise."""
    rings: list[Ring] = []
    for part in shapely.get_parts(area):
        if part.geom_type != "Polygon" or part.is_empty:
            continue
        turned = shapely.orient_polygons(part)
        rings.extend(
            tuple((float(x), float(y)) for x, y in ring.coords[:-1])
            for ring in (turned.exterior, *turned.interiors)
        )
    return tuple(rings)


def hatch_lines(rings: tuple[Ring, ...], *, angle_deg: float, spacing: float) -> tuple[Line2, ...]:
    """Parallel lines that fill an area.

    The lines lie on one lattice for the whole sheet, so that areas side by side run on.

    Parameters
    ----------
    rings : tuple of rings
        Outlines; a ring inside another is a hole.
    angle_deg : float
        Of the lines, anticlockwise from the x axis.
    spacing : float
        Between lines, in the rings' unit.

    Returns
    -------
    tuple of lines
        Each from its start to its end, in order across the area.

    Examples
    --------
    >>> square = ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0))
    >>> len(hatch_lines((square,), angle_deg=0.0, spacing=0.8))
    2
    """
    area = area_of(rings)
    if area.is_empty:
        return ()
    level = shapely.affinity.rotate(area, -angle_deg, origin=(0.0, 0.0))
    x0, y0, x1, y1 = level.bounds
    # Half a step off the lattice: a line along an edge would be in or out by rounding.
    first = math.floor(y0 / spacing) - 1
    rows = [(i + 0.5) * spacing for i in range(first, math.ceil(y1 / spacing) + 1)]
    rows = [y for y in rows if y0 < y < y1]
    if not rows:  # thinner than the spacing, and between two lines
        return ()
    lines = shapely.linestrings([[(x0 - 1.0, y), (x1 + 1.0, y)] for y in rows])
    cut = shapely.intersection(level, lines)
    cos, sin = math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg))
    found: list[Line2] = []
    for piece in shapely.get_parts(cut):
        if piece.geom_type != "LineString" or piece.is_empty:
            continue
        (ax, ay), (bx, by) = sorted((piece.coords[0], piece.coords[-1]))
        found.append(((ax * cos - ay * sin, ax * sin + ay * cos), (bx * cos - by * sin, bx * sin + by * cos)))
    return tuple(found)
