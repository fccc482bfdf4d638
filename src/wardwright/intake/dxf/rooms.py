"""Rooms: the floor that walls and openings close in, parted by the names written on it where it is open."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.intake.dxf.texts import Text, is_outside, names_in, room_size_in
from wardwright.intake.outlines import largest

LEAST_ROOM_M2 = 0.3
"""A smaller piece of floor is none. [m2] (assumption)"""
LEAST_WIDE_M = 0.4
"""A narrower piece of floor is none. [m] (assumption)"""
SIZE_NEAR_M = 0.9
"""A room's size is written this close to its name. [m] (assumption)"""
AS_WRITTEN = 0.06
"""Sides that differ by a smaller share are as written. [-] (assumption)"""
HAIR_M = 2e-3
REACH_M = 60.0


class Label(NamedTuple):
    """A room's name as written, and its size where that is written by it."""

    name: str
    place: shapely.Point
    size: tuple[float, float] | None
    """[m]"""


class Area(NamedTuple):
    """A piece of floor that is a room."""

    name: str
    outline: shapely.Polygon
    is_parted: bool
    """Whether it was parted from floor that it is open to, which is a guess."""
    size: tuple[float, float] | None
    """As written. [m]"""


class Floor(NamedTuple):
    """The floor of a plan."""

    rooms: list[Area]
    outside: list[str]
    """Names of floor in the open, which is no room."""
    loose: list[str]
    """Names that stand on no floor that is closed in."""


def labels_of(texts: tuple[Text, ...]) -> list[Label]:
    """The rooms' names, each with the size written nearest to it."""
    sizes = [(text.place, size) for text in texts if (size := room_size_in(text.words)) is not None]
    found = []
    for text in names_in(texts):
        near = [(math.dist(place, text.place), size) for place, size in sizes]
        far, size = min(near, key=lambda pair: pair[0], default=(math.inf, None))
        found.append(
            Label(_told(text.words), shapely.Point(text.place), size if far <= SIZE_NEAR_M else None)
        )
    return found


def _told(words: str) -> str:
    """A name in small letters but for its first and for abbreviations with dots."""
    lower = " ".join(word if _is_dotted(word) else word.lower() for word in words.split())
    return lower[:1].upper() + lower[1:]


def _is_dotted(word: str) -> bool:
    """Whether a word is an abbreviation with dots between its letters."""
    return word.count(".") > 1


def floor_of(solid: shapely.Geometry, labels: list[Label]) -> Floor:
    """The rooms that walls with their openings filled close in.

    Parameters
    ----------
    solid : shapely geometry
        All walls, openings filled. [m]
    labels : list of Label
        Names of rooms.

    Returns
    -------
    Floor
        Rooms in the order of their place.
    """
    rings = [
        shapely.Polygon(hole)
        for part in shapely.get_parts(solid)
        if part.geom_type == "Polygon"
        for hole in part.interiors
    ]
    closed = [
        ring.difference(solid) for ring in rings
        if ring.area >= LEAST_ROOM_M2 and not ring.buffer(-LEAST_WIDE_M / 2).is_empty
    ]  # fmt: skip
    rooms: list[Area] = []
    outside: list[str] = []
    placed: set[Label] = set()
    for area in sorted((a for c in closed if (a := largest(c)) is not None), key=_order):
        here = [label for label in labels if area.contains(label.place)]
        placed |= set(here)
        inner = [label for label in here if not is_outside(label.name)]
        if here and not inner:
            outside += [label.name for label in here]
        elif len(inner) < 2:
            name, size = (inner[0].name, inner[0].size) if inner else ("", None)
            rooms.append(Area(name, area, is_parted=False, size=size))
        else:
            rooms += parted(area, inner)
    loose = [label.name for label in labels if label not in placed]
    return Floor(
        rooms, outside + [n for n in loose if is_outside(n)], [n for n in loose if not is_outside(n)]
    )


def _order(area: shapely.Polygon) -> tuple[float, float]:
    return (round(-float(area.centroid.y), 2), round(float(area.centroid.x), 2))


def parted(area: shapely.Polygon, labels: list[Label]) -> list[Area]:
    """Part open floor among the names on it, along the lines of its own walls.

    A piece of floor in a rectangle of the size that is written with a name goes to that name, then each other
    piece to the one that it shares most of its rim with.
    """
    cells = [cell for cell in _cells(area) if cell.area > 1e-4]
    owner: dict[int, int] = {}
    for number, label in enumerate(labels):
        box = _written_box(area, label)
        for k, cell in enumerate(cells):
            within = box is not None and cell.intersection(box).area > 0.9 * cell.area
            if k not in owner and (within or cell.contains(label.place)):
                owner[k] = number
    while len(owner) < len(cells):
        shared = [
            (float(cells[k].intersection(cells[other]).length), -k, number)
            for k in range(len(cells)) if k not in owner
            for other, number in owner.items()
        ]  # fmt: skip
        length, k, number = max(shared, default=(0.0, 0, 0))
        if length <= 0.0:
            break
        owner[-k] = number
    found = []
    for number, label in enumerate(labels):
        pieces = [
            cells[k].buffer(HAIR_M / 2, join_style="mitre") for k, who in owner.items() if who == number
        ]
        outline = (
            largest(shapely.union_all(pieces).buffer(-HAIR_M / 2, join_style="mitre")) if pieces else None
        )
        if outline is not None and outline.area >= LEAST_ROOM_M2:
            found.append(Area(label.name, outline, is_parted=True, size=label.size))
    return found


def _cells(area: shapely.Polygon) -> list[shapely.Polygon]:
    """The pieces that the lines of an area's own walls, drawn on from its inner corners, cut it into."""
    ring = shapely.orient_polygons(area.simplify(0.005))
    cuts = [area.boundary]
    for loop in (ring.exterior, *ring.interiors):
        corners = shapely.get_coordinates(loop)[:-1]
        for k, corner in enumerate(corners):
            before, after = corner - corners[k - 1], corners[(k + 1) % len(corners)] - corner
            if before[0] * after[1] - before[1] * after[0] < -1e-6:  # the floor turns round this corner
                cuts += [_drawn_on(area, corner, before), _drawn_on(area, corner, -after)]
    net = shapely.union_all([c for c in cuts if not c.is_empty], grid_size=1e-4)
    pieces = shapely.get_parts(shapely.polygonize(shapely.get_parts(net)))
    return [piece for piece in pieces if area.contains(piece.representative_point())]


def _drawn_on(area: shapely.Polygon, corner: np.ndarray, way: np.ndarray) -> shapely.Geometry:
    """From a corner on along a way to the other side of an area. [m]"""
    step = way / np.hypot(*way)
    ray = shapely.LineString([corner + step * 1e-3, corner + step * REACH_M]).intersection(area)
    parts = [part for part in shapely.get_parts(ray) if part.geom_type == "LineString" and not part.is_empty]
    start = shapely.Point(corner)
    near = min(parts, key=lambda part: float(part.distance(start)), default=None)
    if near is None or near.distance(start) > 0.01:
        return shapely.LineString()
    far = shapely.get_coordinates(near)[-1]
    return shapely.LineString([corner, far + step * 1e-3])


def _written_box(area: shapely.Polygon, label: Label) -> shapely.Polygon | None:
    """The rectangle of the written size about a name whose sides lie on lines of the area's walls."""
    if label.size is None:
        return None
    points = shapely.get_coordinates(area)
    xs, ys = (np.unique(points[:, k].round(3)) for k in (0, 1))
    best: tuple[float, shapely.Polygon] | None = None
    for wide, deep in (label.size, label.size[::-1]):
        for x0, x1 in _spans(xs, label.place.x, wide):
            for y0, y1 in _spans(ys, label.place.y, deep):
                box = shapely.box(x0, y0, x1, y1)
                off = (
                    abs((x1 - x0) / wide - 1)
                    + abs((y1 - y0) / deep - 1)
                    + box.difference(area).area / box.area
                )
                if best is None or off < best[0]:
                    best = (off, box)
    return best[1] if best is not None and best[0] < 3 * AS_WRITTEN else None


def _spans(lines: np.ndarray, place: float, wanted: float) -> Iterator[tuple[float, float]]:
    """Pairs of lines on both sides of a place that are about as far apart as is wanted. [m]"""
    for low in lines[lines < place]:
        for high in lines[lines > place]:
            if abs((high - low) / wanted - 1.0) < AS_WRITTEN:
                yield float(low), float(high)


def is_as_written(area: Area) -> bool:
    """Whether a room's sides, or those of a rectangle of its area, are as written."""
    if area.size is None:
        return False
    corners = shapely.get_coordinates(area.outline.minimum_rotated_rectangle)
    sides = sorted(float(np.hypot(*(corners[k + 1] - corners[k]))) for k in (0, 1))
    return all(abs(a / b - 1.0) < AS_WRITTEN for a, b in zip(sides, sorted(area.size), strict=True))
