"""Where labels go: the first good place, clear of the others."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

import shapely

from wardwright.model.record import Point2

STEPS = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0), (0.7, 0.7), (-0.7, 0.7), (-0.7, -0.7), (0.7, -0.7))
"""Directions in which a place for a label is looked for."""

RINGS = 7
"""How many times farther out a place is looked for. [-]"""
STEP_MM = 2.0
"""From one ring of places to the next. [mm]"""
APART_MM = 0.3
"""Kept free between a label that must lie on no other and what is beside it. [mm]"""
CROSSED = 0.3
"""What it costs that the line to a label crosses another label or a sign. [-]"""
START_MM = 2.5
"""What is so near to its start is not crossed by it. [mm]"""
WALLED = 0.6
"""What it costs that it goes through a wall. [-]"""


class Taken(NamedTuple):
    """A rectangle that a label or a sign has: lowest x, lowest y, highest x, highest y."""

    x0: float
    y0: float
    x1: float
    y1: float

    def shared(self, other: Taken) -> float:
        """Area that two rectangles share."""
        width = min(self.x1, other.x1) - max(self.x0, other.x0)
        height = min(self.y1, other.y1) - max(self.y0, other.y0)
        return width * height if width > 0.0 and height > 0.0 else 0.0


class Board:
    """The places that are taken on one sheet."""

    def __init__(
        self,
        bounds: tuple[float, float, float, float],
        *,
        mm_per_unit: float,
        solid: shapely.Geometry,
        soft: shapely.Geometry,
        clear: shapely.Geometry | None = None,
    ) -> None:
        self.taken: list[Taken] = []
        self._bounds = bounds
        self._unit = 1.0 / mm_per_unit
        self._solid = solid
        self._soft = soft
        self._clear = shapely.Polygon() if clear is None else clear
        shapely.prepare(self._clear)
        shapely.prepare(self._solid)
        shapely.prepare(self._soft)

    def copy(self) -> Board:
        """A board with the same places taken, to go on from."""
        other = Board(
            self._bounds, mm_per_unit=1.0 / self._unit, solid=self._solid, soft=self._soft, clear=self._clear
        )
        other.taken = list(self.taken)
        return other

    def rectangle(self, centre: Point2, size_mm: tuple[float, float]) -> Taken:
        """The rectangle of a paper size about a place."""
        half_x, half_y = size_mm[0] / 2 * self._unit, size_mm[1] / 2 * self._unit
        return Taken(centre[0] - half_x, centre[1] - half_y, centre[0] + half_x, centre[1] + half_y)

    def take(self, centre: Point2, size_mm: tuple[float, float]) -> None:
        """Note that a place is taken."""
        self.taken.append(self.rectangle(centre, size_mm))

    def cost(self, centre: Point2, size_mm: tuple[float, float]) -> float:
        """How badly a label would lie: what of it lies on others, walls, doorways, ways, off the sheet."""
        box = self.rectangle(centre, size_mm)
        area = (box.x1 - box.x0) * (box.y1 - box.y0)
        shared = sum(box.shared(other) for other in self.taken)
        shape = shapely.box(*box)
        on_things = (
            weight * float(part.intersection(shape).area) if part.intersects(shape) else 0.0
            for part, weight in ((self._solid, 2.0), (self._soft, 0.3), (self._clear, 1.2))
        )
        inside = box.shared(Taken(*self._bounds))
        return (4.0 * shared + sum(on_things) + 8.0 * (area - inside)) / area

    def is_free(self, centre: Point2, size_mm: tuple[float, float]) -> bool:
        """Whether a label would lie on the sheet, and on and against no other label and no sign."""
        box = self.rectangle(centre, size_mm)
        apart = APART_MM * self._unit
        x0, y0, x1, y1 = self._bounds
        if box.x0 < x0 or box.y0 < y0 or box.x1 > x1 or box.y1 > y1:
            return False
        wide = Taken(box.x0 - apart, box.y0 - apart, box.x1 + apart, box.y1 + apart)
        return all(wide.shared(other) == 0.0 for other in self.taken)

    def crossed(self, at: Point2, centre: Point2) -> int:
        """How many labels and signs the line from a point to its label runs over, those at its start apart."""
        way = shapely.LineString([at, centre])
        around = Taken(*way.buffer(APART_MM * self._unit).bounds)
        return sum(
            bool(way.intersects(shapely.box(*box)))
            for box in self.taken
            if around.shared(box) > 0.0
            and math.dist(at, ((box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2)) > START_MM * self._unit
        )

    def place(
        self,
        at: Point2,
        size_mm: tuple[float, float],
        *,
        clear_mm: float,
        toward_deg: float | None = None,
        is_inside: bool = False,
        is_apart: bool = False,
    ) -> Point2:
        """Find a place for a label near a point and take it.

        Parameters
        ----------
        at : tuple of float
            The point it belongs to.
        size_mm : tuple of float
            Its width and height on paper.
        clear_mm : float
            How far its edge is kept from the point.
        toward_deg : float, optional
            The direction that is tried first.
        is_inside : bool, default False
            Whether the label may lie on the point itself.
        is_apart : bool, default False
            Whether it must lie on no other label and no sign: a label with a line to its point, which may go
            farther off. Where the whole sheet has no free place, it lies where it is least in the way.

        Returns
        -------
        tuple of float
            The label's middle.
        """
        best, least = at, (True, math.inf)
        if is_inside:
            least = (is_apart and not self.is_free(at, size_mm), self.cost(at, size_mm))
        for ring in range(RINGS):
            if least < (False, 0.02):
                break
            about = self._about(at, size_mm, clear_mm=clear_mm, ring=ring, toward_deg=toward_deg or 0.0)
            for rank, centre in enumerate(about):
                is_taken = is_apart and not self.is_free(centre, size_mm)
                if (is_taken, 0.0) >= least:
                    continue
                cost = self.cost(centre, size_mm) + 0.004 * rank + 0.06 * ring
                if is_apart:
                    way = shapely.LineString([at, centre])
                    cost += CROSSED * self.crossed(at, centre) + WALLED * bool(self._solid.crosses(way))
                if (is_taken, cost + 1e-9) < least:
                    best, least = centre, (is_taken, cost)
        if least[0] and is_apart:
            best = self._nearest_free(at, size_mm) or best
        self.take(best, size_mm)
        return best

    def _nearest_free(self, at: Point2, size_mm: tuple[float, float]) -> Point2 | None:
        """The free place of the whole sheet that is nearest to a point, looked for on a lattice."""
        step = STEP_MM / 2 * self._unit
        half_x, half_y = (side / 2 * self._unit for side in size_mm)
        x0, y0, x1, y1 = self._bounds
        across = range(math.floor((x1 - x0 - 2 * half_x) / step) + 1)
        along = range(math.floor((y1 - y0 - 2 * half_y) / step) + 1)
        lattice = [(x0 + half_x + i * step, y0 + half_y + j * step) for i in across for j in along]
        lattice.sort(key=lambda place: math.dist(place, at))
        return next((place for place in lattice if self.is_free(place, size_mm)), None)

    def _about(
        self, at: Point2, size_mm: tuple[float, float], *, clear_mm: float, ring: int, toward_deg: float
    ) -> Iterator[Point2]:
        """The places of one ring about a point, the direction that is liked best first."""
        turn = math.radians(toward_deg)
        cos, sin = math.cos(turn), math.sin(turn)
        out = ring * STEP_MM
        for sx, sy in STEPS:
            dx, dy = sx * cos - sy * sin, sx * sin + sy * cos
            away_x = (size_mm[0] / 2 + clear_mm) * dx + math.copysign(out, dx) * (abs(dx) > 0.1)
            away_y = (size_mm[1] / 2 + clear_mm) * dy + math.copysign(out, dy) * (abs(dy) > 0.1)
            yield (at[0] + away_x * self._unit, at[1] + away_y * self._unit)
