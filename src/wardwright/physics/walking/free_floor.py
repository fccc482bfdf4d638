"""Where the middle of a walking person can be on one floor; every doubt leaves more room, never less.

What is kept open for the sake of doorways, closets and furniture is worked out from the rooms and the furniture alone
and only then cut by the walls. So a wall more never opens a way.
"""

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
LINK_PAST_M = 0.05
"""How far past a body's radius such a way runs into the rooms beside a doorway. [m] (derived here: to meet them)"""
LINK_REACH_M = 1.0
"""How far it runs through furniture that stands before a doorway, or bars a room. [m] (assumption)"""
LINK_PROBE_M = 0.25
"""How far beyond a wall's faces there must be a way past furniture for its doorway to be clear. [m] (assumption)"""
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


class Rooms(NamedTuple):
    """The floor as rooms and the holes between them, walls not yet taken out."""

    whole: shapely.Geometry
    """All rooms and doorways in one. [m]"""
    spaces: tuple[shapely.Polygon, ...]
    """The rooms one by one. [m]"""
    passages: Passages


def free_floor(
    floor: shapely.Geometry, furniture: shapely.Geometry, rooms: Rooms, *, radius: float
) -> shapely.Geometry:
    """The floor less what a body's width keeps a person from, with every passage kept passable.

    Parameters
    ----------
    floor : shapely geometry
        Between the walls, doorways included, furniture not yet taken out. [m]
    furniture : shapely geometry
        What is walked round. [m]
    rooms : Rooms
        The same floor by its rooms, so that no narrow doorway, no closet and no furnished room is lost.
    radius : float
        Half a person's width. [m]

    Returns
    -------
    shapely geometry
        Where the person's middle can be. [m]

    Examples
    --------
    Two rooms and a doorway of 0.4 m, narrower than the body, still make one floor:

    >>> whole = shapely.union_all([shapely.box(0, 0, 3, 3), shapely.box(3.1, 0, 6, 3), shapely.box(2.9, 1, 3.2, 1.4)])
    >>> doorway = Passages(np.array([[3.05, 1.2]]), np.array([[1.0, 0.0]]), np.array([0.05]), np.array([0.4]))
    >>> free_floor(whole, shapely.Point(), Rooms(whole, (), doorway), radius=0.22).geom_type
    'Polygon'
    """
    barred = grown(furniture, SQUEEZE_M)
    free = shrunk(floor, radius).difference(barred)
    kept = [way for way in _kept_open(rooms, barred, radius=radius) if not free.covers(way)]
    if kept:
        free = shapely.union_all([free, shapely.union_all(kept).intersection(floor)])
    if len(shapely.get_coordinates(free)) > MANY_CORNERS:
        free = without_tiny_corners(free, CUT_BACK_M)
    parts = [part for part in shapely.get_parts(free) if part.geom_type == "Polygon"]
    largest = max((part.area for part in parts), default=0.0)
    return shapely.union_all([part for part in parts if part.area >= min(ISLAND_M2, largest)])


def _kept_open(rooms: Rooms, barred: shapely.Geometry, *, radius: float) -> list[shapely.Geometry]:
    """All that is kept open beside the plain free floor: through doorways, in closets, past furniture."""
    ways = [_doorway(*passage, barred=barred, radius=radius) for passage in zip(*rooms.passages, strict=True)]
    ways += _closets(rooms.spaces, barred, radius=radius)
    free = shapely.union_all([shrunk(rooms.whole, radius).difference(barred), *ways])
    return [*ways, *_past_furniture(free, rooms.whole)]


def _doorway(
    middle: FloatArray, normal: FloatArray, half: float, *size: float, barred: shapely.Geometry, radius: float
) -> shapely.Geometry:
    """A thin way straight through a doorway, longer where furniture stands before it."""
    along = np.array([-normal[1], normal[0]])
    deep, across = normal * (half + LINK_PROBE_M), along * size[0] / 2
    corners = np.array([deep - across, deep + across, -deep + across, -deep - across]) + middle
    ends = (shapely.LineString(corners[:2]), shapely.LineString(corners[2:]))
    past = shapely.get_parts(shapely.Polygon(corners).difference(barred))
    is_clear = any(all(part.distance(end) < 1e-9 for end in ends) for part in past)
    reach = half + (radius + LINK_PAST_M if is_clear else LINK_REACH_M)
    line = shapely.LineString([middle - normal * reach, middle + normal * reach])
    return line.buffer(LINK_HALF_M, cap_style="flat")


def _closets(
    spaces: tuple[shapely.Polygon, ...], barred: shapely.Geometry, *, radius: float
) -> list[shapely.Geometry]:
    """In spaces that have no free floor at all, what there is for a narrower body, furniture or not."""
    found = []
    for space in spaces:
        if shrunk(space, radius).difference(barred).area <= CLOSED_M2:
            tried = (shrunk(space, radius * share) for share in CLOSET_SHARES)
            found.extend(next(([piece] for piece in tried if piece.area > CLOSED_M2), []))
    return found


def _past_furniture(free: shapely.Geometry, whole: shapely.Geometry) -> list[shapely.Geometry]:
    """The shortest ways between pieces of one floor that furniture, or a tight corner, keeps apart."""
    ways = []
    for part in shapely.get_parts(whole):
        inside = shapely.get_parts(free.intersection(part))
        pieces = sorted((p for p in inside if p.area >= ISLAND_M2), key=lambda p: -p.area)
        while len(pieces) > 1:
            rest = shapely.union_all(pieces[:-1])
            line = shapely.shortest_line(pieces[-1], rest)
            is_near = line.length <= LINK_REACH_M and part.covers(line)
            if is_near:
                ways.append(line.buffer(LINK_HALF_M, cap_style="square"))
            # What cannot be joined is left out, so that it joins nothing else.
            pieces.pop()
    return ways
