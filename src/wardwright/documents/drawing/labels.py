"""Where labels go: the first good place, clear of the others."""

from __future__ import annotations

import math
from typing import NamedTuple

import shapely

from wardwright.model.record import Point2

STEPS = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0), (0.7, 0.7), (-0.7, 0.7), (-0.7, -0.7), (0.7, -0.7))
"""Directions in which a place for a label is looked for."""

RINGS = 7
"""How many times farther out a place is looked for. [-]"""


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

    def place(
        self,
        at: Point2,
        size_mm: tuple[float, float],
        *,
        clear_mm: float,
        toward_deg: float | None = None,
        is_inside: bool = False,
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

        Returns
        -------
        tuple of float
            The label's middle.
        """
        turn = 0.0 if toward_deg is None else math.radians(toward_deg)
        cos, sin = math.cos(turn), math.sin(turn)
        best, least = at, math.inf
        if is_inside:
            least = self.cost(at, size_mm)
        for ring in range(RINGS):
            if least < 0.02:
                break
            for rank, (sx, sy) in enumerate(STEPS):
                dx, dy = sx * cos - sy * sin, sx * sin + sy * cos
                away_x = (size_mm[0] / 2 + clear_mm) * dx + math.copysign(ring * 2.0, dx) * (abs(dx) > 0.1)
                away_y = (size_mm[1] / 2 + clear_mm) * dy + math.copysign(ring * 2.0, dy) * (abs(dy) > 0.1)
                centre = (at[0] + away_x * self._unit, at[1] + away_y * self._unit)
                cost = self.cost(centre, size_mm) + 0.004 * rank + 0.06 * ring
                if cost < least - 1e-9:
                    best, least = centre, cost
        self.take(best, size_mm)
        return best
