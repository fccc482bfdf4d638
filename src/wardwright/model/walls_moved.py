"""A wall moved sideways, with all that hangs on it: rooms on both sides, walls that end at it, furniture against it.

What is fixed to the wall (devices, doors, windows) goes with it by itself; what is fixed to a wall that grows or
shrinks stays where it is. Other storeys are left as they are.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any, NamedTuple

from wardwright.model.device import WallMount
from wardwright.model.fabric import Space, Wall
from wardwright.model.placement import direction, fixture_outline
from wardwright.model.record import Line2, Point2, Ring
from wardwright.model.site import Site

TOUCHES_M = 0.06
"""What is this near to a wall's face touches it. [m] (assumption)"""
PARALLEL = 0.02
"""Edges that turn from a wall by less than this are its faces. [-] (sine)"""


class _Move(NamedTuple):
    wall: Wall
    along: Point2
    normal: Point2
    length: float
    by: float

    @property
    def shift(self) -> Point2:
        return (self.normal[0] * self.by, self.normal[1] * self.by)

    def off(self, point: Point2) -> float:
        """How far a point is to the left of the wall's line. [m]"""
        (ax, ay), _ = self.wall.line_m
        return (point[0] - ax) * self.normal[0] + (point[1] - ay) * self.normal[1]

    def beside(self, point: Point2) -> bool:
        """Whether a point lies alongside the wall and touches it."""
        (ax, ay), _ = self.wall.line_m
        run = (point[0] - ax) * self.along[0] + (point[1] - ay) * self.along[1]
        slack = self.wall.thickness_m / 2 + TOUCHES_M
        return -slack <= run <= self.length + slack and abs(self.off(point)) <= slack


def with_wall_moved(site: Site, wall: Wall, *, by_m: float) -> Site:
    """A site with one wall moved.

    Parameters
    ----------
    site : Site
        The site.
    wall : Wall
        One of its walls.
    by_m : float
        To the left of the wall's line, looking along it; negative: to its right. [m]

    Returns
    -------
    Site
        A new site; whether it still holds together is for `validation.problems` to say.
    """
    along, normal, length = direction(wall.line_m)
    move = _Move(wall, along, normal, length, by_m)
    walls, grown = _walls(site, move)
    return site.model_copy(
        update={
            "walls": walls,
            "openings": tuple(_kept_in_place(one, grown) for one in site.openings),
            "devices": tuple(_device_kept(one, grown) for one in site.devices),
            "spaces": tuple(_room(one, move) for one in site.spaces),
            "open_edges": tuple(
                _slid(one, move) if site.space(one.spaces[0]).storey == wall.storey else one
                for one in site.open_edges
            ),
            "fixtures": tuple(_furniture(one, move) for one in site.fixtures),
            "outlets": tuple(
                one.model_copy(update={"at_m": _plus(one.at_m, move.shift)})
                if one.storey == wall.storey and move.beside(one.at_m)
                else one
                for one in site.outlets
            ),
        }
    )


def _walls(site: Site, move: _Move) -> tuple[tuple[Wall, ...], dict[str, float]]:
    """All walls, and how far the first end of each that ends at the moved one went back along its own line. [m]"""
    found: list[Wall] = []
    grown: dict[str, float] = {}
    for wall in site.walls:
        if wall.id == move.wall.id:
            update: dict[str, Any] = {"line_m": tuple(_plus(p, move.shift) for p in wall.line_m)}
            if wall.footprint_m is not None:
                update["footprint_m"] = tuple(_plus(p, move.shift) for p in wall.footprint_m)
            found.append(wall.model_copy(update=update))
            continue
        slant = _slant(wall.line_m, move)
        ends = [move.beside(point) and abs(slant) > PARALLEL for point in wall.line_m]
        if wall.storey != move.wall.storey or not any(ends):
            found.append(wall)
            continue
        unit, _, _ = direction(wall.line_m)
        step = move.by / slant
        line = tuple(
            (p[0] + unit[0] * step, p[1] + unit[1] * step) if is_end else p
            for p, is_end in zip(wall.line_m, ends, strict=True)
        )
        update = {"line_m": line}
        if wall.footprint_m is not None:
            update["footprint_m"] = tuple(
                (p[0] + unit[0] * step, p[1] + unit[1] * step) if move.beside(p) else p
                for p in wall.footprint_m
            )
        if ends[0]:
            grown[wall.id] = -step
        found.append(wall.model_copy(update=update))
    return tuple(found), grown


def _slant(line: Line2, move: _Move) -> float:
    """How much a line goes toward the moved wall's left for each metre of its own."""
    unit, _, _ = direction(line)
    return unit[0] * move.normal[0] + unit[1] * move.normal[1]


def _kept_in_place(opening: Any, grown: dict[str, float]) -> Any:  # noqa: ANN401 - a record with an offset
    by = grown.get(opening.wall)
    return opening if by is None else opening.model_copy(update={"offset_m": opening.offset_m + by})


def _device_kept(device: Any, grown: dict[str, float]) -> Any:  # noqa: ANN401 - a device
    if not isinstance(device.mount, WallMount) or device.mount.wall not in grown:
        return device
    return device.model_copy(update={"mount": _kept_in_place(device.mount, grown)})


def _room(space: Space, move: _Move) -> Space:
    if space.storey != move.wall.storey:
        return space
    ring = _moved_ring(space.outline_m, move)
    return space if ring is None else space.model_copy(update={"outline_m": ring})


def _moved_ring(ring: Ring, move: _Move) -> Ring | None:
    """An outline with the edges that are faces of the wall moved; None if none is."""
    count = len(ring)
    is_face = [_is_face(ring[i], ring[(i + 1) % count], move) for i in range(count)]
    if not any(is_face):
        return None
    found: list[Point2] = []
    for i in range(count):
        before, after = is_face[i - 1], is_face[i]
        if before and after:
            found.append(_plus(ring[i], move.shift))
        elif before or after:
            other = ring[(i + 1) % count] if before else ring[i - 1]
            found.append(_along_edge(ring[i], other, move))
        else:
            found.append(ring[i])
    return tuple(found)


def _is_face(start: Point2, end: Point2, move: _Move) -> bool:
    if math.dist(start, end) == 0.0 or abs(_slant((start, end), move)) > PARALLEL:
        return False
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    return move.beside(middle) or (move.beside(start) and move.beside(end))


def _along_edge(corner: Point2, other: Point2, move: _Move) -> Point2:
    """A corner slid along the edge to its other neighbour, as far as the wall moved."""
    slant = _slant((corner, other), move)
    if math.dist(corner, other) == 0.0 or abs(slant) <= PARALLEL:
        return _plus(corner, move.shift)
    unit, _, _ = direction((corner, other))
    return (corner[0] + unit[0] * move.by / slant, corner[1] + unit[1] * move.by / slant)


def _slid(edge: Any, move: _Move) -> Any:  # noqa: ANN401 - an open edge
    ends: Sequence[Point2] = edge.line_m
    if not any(move.beside(point) for point in ends):
        return edge
    moved = tuple(
        _along_edge(point, other, move) if move.beside(point) else point
        for point, other in zip(ends, reversed(ends), strict=True)
    )
    return edge.model_copy(update={"line_m": moved})


def _furniture(fixture: Any, move: _Move) -> Any:  # noqa: ANN401 - a fixture
    if fixture.storey != move.wall.storey:
        return fixture
    if not any(move.beside(corner) for corner in fixture_outline(fixture)):
        return fixture
    return fixture.model_copy(update={"centre_m": _plus(fixture.centre_m, move.shift)})


def _plus(point: Point2, shift: Point2) -> Point2:
    return (point[0] + shift[0], point[1] + shift[1])
