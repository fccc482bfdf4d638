"""The walks that prove one movement detector: where it is to notice, and where it is to stay quiet.

Taken from what question 11 says that it sees: a walk that goes otherwise on site says that the model is wrong there.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fabric import Space
from wardwright.model.opening import Opening
from wardwright.model.placement import along, direction, sides_of_opening, space_at, standing
from wardwright.model.record import Point2
from wardwright.model.room_shapes import floor_polygon
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.walk_past import PACES, Expected, Pace, WalkTest

NOTICED_WITHIN = "walk-test-notice-most"
"""The limit that a walk is held against."""
FAR, NEAR = 0.75, 0.35
"""Where the two walks across are, as shares of the way to the farthest floor that it sees. [-] (assumption)"""
SHORTEST_M = 0.8
"""Shorter walks prove nothing. [m] (assumption)"""
DOORSTEP_M, INTO_M = 0.3, 2.0
"""A walk in by a door begins and ends so far behind its wall. [m] (assumption)"""
BESIDE_M = 0.7
"""A walk beyond an opening, or past a pane, is so far from its wall. [m] (assumption)"""
MET_M = 0.3
"""A walk meets what a detector sees where so much of it lies in it. [m] (assumption)"""


def walks_by_view(
    site: Site, catalogue: Catalogue, device: Device, *, seen: Answer | None
) -> tuple[WalkTest, ...]:
    """Lay out the walks for one movement detector.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Paces, its sheet, and how soon it is to notice.
    device : Device
        The detector.
    seen : Answer or None
        What question 11 says of it; None: it says nothing.

    Returns
    -------
    tuple of WalkTest
        First where it is to notice, then where it is to stay quiet; empty where what it sees is not known.
    """
    at = standing(site, device)
    space = space_at(site, at.storey, (at.x_m, at.y_m))
    surely, possibly = (_floor(seen, role, at.storey) for role in ("seen", "possibly-seen"))
    if seen is None or surely.is_empty:
        return ()
    lay = _Layer(site, catalogue, device, surely=surely, possibly=possibly.union(surely))
    return (*lay.in_view(), *(lay.at_openings(space) if space is not None else ()))


def _floor(seen: Answer | None, role: str, storey: str) -> shapely.Geometry:
    """The floor of one role on one storey; holes wind the other way."""
    rings = [
        shapely.Polygon(ring)
        for sketch in (() if seen is None else seen.sketches)
        if sketch.role == role and sketch.storey == storey
        for ring in sketch.rings
        if len(ring) > 2
    ]
    solid = shapely.union_all([one.buffer(0) for one in rings if one.exterior.is_ccw])
    holes = shapely.union_all([one.buffer(0) for one in rings if not one.exterior.is_ccw])
    return solid.difference(holes)


class _Layer:
    """Lays out walks past one detector."""

    def __init__(
        self,
        site: Site,
        catalogue: Catalogue,
        device: Device,
        *,
        surely: shapely.Geometry,
        possibly: shapely.Geometry,
    ) -> None:
        self._site, self._catalogue, self._device = site, catalogue, device
        self._surely, self._possibly = surely, possibly
        at = standing(site, device)
        self._storey, self._at = at.storey, (at.x_m, at.y_m)
        movement = catalogue.sheet(device.sheet).movement
        self._sleep_s = 0.0 if movement is None else movement.sleep_s
        self._within_m = catalogue.limit(NOTICED_WITHIN, site.place.rule_pack).value

    def in_view(self) -> Iterator[WalkTest]:
        """Across at its far edge, slow and fast; across nearer by; toward it."""
        corners = shapely.get_coordinates(self._surely)
        x, y = self._at
        # The farthest corner; of equals the first by place, so that no order of rings counts.
        far = max(
            ((float(a), float(b)) for a, b in corners), key=lambda c: (round(math.dist(c, (x, y)), 3), c)
        )
        reach = math.dist(far, (x, y))
        unit = ((far[0] - x) / reach, (far[1] - y) / reach)
        across: tuple[tuple[str, float, tuple[Pace, ...]], ...] = (
            ("across, far", FAR, ("slow", "fast")),
            ("across, near", NEAR, ("usual",)),
        )
        for manner, share, paces in across:
            middle = (x + share * reach * unit[0], y + share * reach * unit[1])
            ends = [(middle[0] - s * reach * unit[1], middle[1] + s * reach * unit[0]) for s in (-1.0, 1.0)]
            piece = _longest(shapely.LineString(ends).intersection(self._surely))
            if piece is None:
                continue
            for pace in paces:
                yield self._walk(manner, piece, pace=pace, expected="notices", is_wanted=True)
        piece = _longest(shapely.LineString([far, self._at]).intersection(self._surely))
        if piece is not None:
            is_turned = math.dist(piece[0], self._at) < math.dist(piece[1], self._at)
            yield self._walk(
                "toward",
                piece[::-1] if is_turned else piece,
                pace="usual",
                expected="notices",
                is_wanted=True,
            )

    def at_openings(self, space: Space) -> Iterator[WalkTest]:
        """In by each door of its room; beyond each of them, and past each pane, where it is to stay quiet."""
        quiet: list[WalkTest] = []
        for opening in sorted(self._site.openings, key=lambda one: one.id):
            sides = sides_of_opening(self._site, opening)
            if space.id not in sides or self._site.wall(opening.wall).storey != self._storey:
                continue
            inward = 1.0 if sides[0] == space.id else -1.0
            other = sides[1] if sides[0] == space.id else sides[0]
            if opening.kind != "window":
                line = self._through(opening, inward, (DOORSTEP_M, INTO_M))
                piece = _longest(shapely.LineString(line).intersection(floor_polygon(space)))
                expected = "stays quiet" if piece is None else self._expected(piece)
                if piece is not None and expected != "stays quiet":
                    yield self._walk(
                        "in by",
                        piece if math.dist(piece[0], line[0]) < math.dist(piece[1], line[0]) else piece[::-1],
                        pace="usual",
                        expected=expected,
                        is_wanted=expected == "notices",
                        subject=opening.id,
                    )
            quiet += self._beyond(opening, -inward, other)
        yield from quiet

    def _beyond(self, opening: Opening, side: float, other: str | None) -> Iterator[WalkTest]:
        """On the other side of an opening, along its wall."""
        wall = self._site.wall(opening.wall)
        left = side * (wall.thickness_m / 2 + BESIDE_M)
        half = opening.width_m / 2 + DOORSTEP_M
        length = direction(wall.line_m)[2]
        ends = [min(max(opening.offset_m + s * half, 0.0), length) for s in (-1.0, 1.0)]
        line = shapely.LineString([along(wall.line_m, end, left_m=left) for end in ends])
        if other is not None:
            line = line.intersection(floor_polygon(self._site.space(other)))
        piece = _longest(line)
        if piece is None:
            return
        # Nobody is outside of the possible view who is behind a wall or a pane: glass stops body heat.
        expected = self._expected(piece)
        yield self._walk(
            "beyond"
            if other is not None
            else "past the pane"
            if opening.kind == "window"
            else "outside the door",
            piece,
            pace="usual",
            expected=expected,
            is_wanted=expected == "stays quiet",
            subject=opening.id if other is None else other,
        )

    def _through(self, opening: Opening, inward: float, depths: tuple[float, float]) -> tuple[Point2, Point2]:
        wall = self._site.wall(opening.wall)
        first, last = (
            along(wall.line_m, opening.offset_m, left_m=inward * (wall.thickness_m / 2 + depth))
            for depth in depths
        )
        return first, last

    def _expected(self, piece: Sequence[Point2]) -> Expected:
        line = shapely.LineString(piece)
        if line.intersection(self._surely).length >= MET_M:
            return "notices"
        return "may notice" if line.intersection(self._possibly).length > 0.0 else "stays quiet"

    def _walk(
        self,
        manner: str,
        piece: Sequence[Point2],
        *,
        pace: Pace,
        expected: Expected,
        is_wanted: bool,
        subject: str = "",
    ) -> WalkTest:
        length = math.dist(piece[0], piece[-1])
        return WalkTest.model_validate(
            {
                "device": self._device.id,
                "manner": manner,
                "subject": subject,
                "pace": pace,
                "pace_m_s": self._catalogue.figure(PACES[pace]).value,
                "storey": self._storey,
                "from_m": piece[0],
                "to_m": piece[-1],
                "length_m": length,
                "expected": expected,
                "is_wanted": is_wanted,
                "within_m": min(self._within_m, length) if expected == "notices" else None,
                "wait_s": self._sleep_s,
            }
        )


def _longest(found: shapely.Geometry) -> tuple[Point2, Point2] | None:
    """The longest straight piece of what is left of a line; None where it is too short to prove anything."""
    pieces = [one for one in shapely.get_parts(found) if isinstance(one, shapely.LineString)]
    some = [one for one in pieces if not one.is_empty]
    best = max(some, key=lambda one: (round(one.length, 6), one.coords[0]), default=None)
    if best is None or best.length < SHORTEST_M:
        return None
    ends = [(float(x), float(y)) for x, y in (best.coords[0], best.coords[-1])]
    return ends[0], ends[1]
