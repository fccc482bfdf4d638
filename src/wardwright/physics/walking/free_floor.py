"""Where the middle of a walking person can be on one floor; every doubt leaves more room, never less."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.clearance import grown, shrunk, without_tiny_corners
from wardwright.geometry.raster import FloatArray

SQUEEZE_M = 0.1
"""How near to furniture a person's middle passes, turned sideways. [m] (assumption)"""
LINK_HALF_M = 0.02
"""Half the width of the way kept open where a body's width would close it. [m] (derived here: any way will do)"""
LINK_REACH_M = 1.0
"""How far such a way is drawn from a doorway to the floor beside it. [m] (assumption)"""
LINK_PROBE_M = 0.25
"""How far beyond a wall's faces free floor must run for its doorway to count as open. [m] (assumption)"""
ISLAND_M2 = 0.3
"""Pieces of floor that are smaller and cut off are left out. [m2] (assumption)"""
MANY_CORNERS = 400
"""From so many corners on, finely stepped bulges are cut back. [-] (assumption: keeps a floor under 0.3 s)"""
CLOSET_SHARES = (0.5, 0.25, 0.1)
"""In a space too small to stand in, the shares of the body's radius to try, turned sideways. [-] (assumption)"""
CLOSED_M2 = 1e-3
"""A space with less free floor than this has none. [m2] (derived here: clear of rounding)"""
CUT_BACK_M = 0.01
"""How far they are cut back. [m] (assumption)"""


class Passages(NamedTuple):
    """Doorways through walls."""

    middles: FloatArray
    """Shape (M, 2). [m]"""
    normals: FloatArray
    """Unit vectors across the wall, shape (M, 2). [-]"""
    halves: FloatArray
    """Half the wall's thickness, shape (M,). [m]"""
    widths: FloatArray
    """Jamb to jamb, shape (M,). [m]"""


def free_floor(
    floor: shapely.Geometry,
    furniture: shapely.Geometry,
    passages: Passages,
    *,
    radius: float,
    spaces: tuple[shapely.Polygon, ...] = (),
) -> shapely.Geometry:
    """The floor less what a body's width keeps a person from, with every passage kept passable.

    Parameters
    ----------
    floor : shapely geometry
        Between the walls, doorways included, furniture not yet taken out. [m]
    furniture : shapely geometry
        What is walked round. [m]
    passages : Passages
        Doorways, so that a narrow one stays passable.
    radius : float
        Half a person's width. [m]
    spaces : tuple of shapely polygon, default ()
        Rooms, so that a closet too small to stand in can still be reached into. [m]

    Returns
    -------
    shapely geometry
        Where the person's middle can be. [m]

    Examples
    --------
    Two rooms and a doorway of 0.4 m, narrower than the body, still make one floor:

    >>> rooms = shapely.union_all([shapely.box(0, 0, 3, 3), shapely.box(3.1, 0, 6, 3), shapely.box(2.9, 1, 3.2, 1.4)])
    >>> doorway = Passages(np.array([[3.05, 1.2]]), np.array([[1.0, 0.0]]), np.array([0.05]), np.array([0.4]))
    >>> free_floor(rooms, shapely.Point(), doorway, radius=0.22).geom_type
    'Polygon'
    """
    free = shrunk(floor, radius)
    if not furniture.is_empty:
        free = free.difference(grown(furniture, SQUEEZE_M))
    free = _with_closets(free, floor, spaces, radius=radius)
    free = _with_doorways(free, floor, passages)
    free = _joined_within(free, floor)
    if len(shapely.get_coordinates(free)) > MANY_CORNERS:
        free = without_tiny_corners(free, CUT_BACK_M)
    parts = [part for part in shapely.get_parts(free) if part.geom_type == "Polygon"]
    largest = max((part.area for part in parts), default=0.0)
    return shapely.union_all([part for part in parts if part.area >= min(ISLAND_M2, largest)])


def _with_closets(
    free: shapely.Geometry, floor: shapely.Geometry, spaces: tuple[shapely.Polygon, ...], *, radius: float
) -> shapely.Geometry:
    """Give spaces that have no free floor at all what there is for a narrower body."""
    shapely.prepare(free)
    found = [free]
    for space in spaces:
        if shapely.intersection(free, space).area > CLOSED_M2:
            continue
        own = shapely.intersection(floor, space)
        tried = (shrunk(own, radius * share) for share in CLOSET_SHARES)
        found.extend(next(([piece] for piece in tried if piece.area > CLOSED_M2), []))
    return shapely.union_all(found) if len(found) > 1 else free


def _with_doorways(free: shapely.Geometry, floor: shapely.Geometry, passages: Passages) -> shapely.Geometry:
    """Keep a thin way through each doorway that the body's width, or furniture before it, has closed."""
    links = []
    shapely.prepare(free)
    for middle, normal, half, width in zip(*passages, strict=True):
        if _is_open(free, middle, normal, size=(half + LINK_PROBE_M, width)):
            continue
        legs = [_leg(free, middle, normal * side, size=(half, width)) for side in (1.0, -1.0)]
        if all(leg is not None for leg in legs):
            links.extend(legs)
    if not links:
        return free
    ways = shapely.union_all(shapely.buffer(links, LINK_HALF_M, cap_style="square", join_style="mitre"))
    return shapely.union_all([free, ways.intersection(floor)])


def _is_open(
    free: shapely.Geometry, middle: FloatArray, normal: FloatArray, *, size: tuple[float, float]
) -> bool:
    """Whether free floor runs through a doorway from a little before it to a little beyond."""
    deep, across = normal * size[0], np.array([-normal[1], normal[0]]) * size[1] / 2
    corners = np.array([deep - across, deep + across, -deep + across, -deep - across]) + middle
    before, beyond = shapely.LineString(corners[:2]), shapely.LineString(corners[2:])
    through = shapely.get_parts(free.intersection(shapely.Polygon(corners)))
    return any(p.distance(before) < 1e-9 and p.distance(beyond) < 1e-9 for p in through if p.area > 0.0)


def _leg(
    free: shapely.Geometry, middle: FloatArray, outward: FloatArray, *, size: tuple[float, float]
) -> shapely.LineString | None:
    """From the middle of a doorway over the wall's face to the nearest free floor on one side."""
    half, width = size
    face = middle + outward * half
    across = np.array([-outward[1], outward[0]]) * (width / 2 + LINK_REACH_M)
    deep = outward * LINK_REACH_M
    side = shapely.Polygon([face - across, face + across, face + across + deep, face - across + deep])
    near = free.intersection(side)
    if near.is_empty or near.area == 0.0:
        return None
    to = shapely.get_coordinates(shapely.shortest_line(shapely.Point(face), near))[-1]
    return shapely.LineString([middle, face, to])


def _joined_within(free: shapely.Geometry, floor: shapely.Geometry) -> shapely.Geometry:
    """Join pieces of one floor that only furniture or a tight corner keeps apart, by the shortest way between."""
    for part in shapely.get_parts(floor):
        inside = free.intersection(part)
        pieces = [p for p in shapely.get_parts(inside) if p.geom_type == "Polygon" and p.area >= ISLAND_M2]
        pieces.sort(key=lambda p: -p.area)
        for piece in pieces[1:]:
            now = [p for p in shapely.get_parts(free) if p.area >= ISLAND_M2 and p.intersects(part)]
            place = piece.representative_point()
            held = next((p for p in now if p.covers(place)), None)
            rest = [p for p in now if p is not held]
            if held is None or not rest:
                continue
            line = shapely.shortest_line(held, shapely.union_all(rest))
            if line.length <= LINK_REACH_M and part.covers(line):
                way = line.buffer(LINK_HALF_M, cap_style="square").intersection(part)
                free = shapely.union_all([free, way])
    return free
