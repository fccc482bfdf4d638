"""A small house drawn as a DXF plan by the tests themselves, in any unit, place and turn.

Outer walls 0.15 m, inner ones 0.1 m. West: a hall (front door in the south wall) and a kitchen above it (window in
the west wall), a door between. East: a living room (sliding glass door) and a garage above it (overhead door), a door
between; a passage with nothing drawn joins hall and living room. South of the hall a porch of single lines. All in
metres before scaling.
"""

from __future__ import annotations

import io
import itertools
import math
from dataclasses import dataclass
from typing import Any, NamedTuple

import ezdxf
import shapely

UNITS_M = {"mm": 0.001, "cm": 0.01, "m": 1.0, "inch": 0.0254, "foot": 0.3048}
INSUNITS = {"": 0, "inch": 1, "foot": 2, "mm": 4, "cm": 5, "m": 6}
FT, IN = 0.3048, 0.0254


class Gap(NamedTuple):
    """An opening: x0, y0, x1, y1 of its rectangle, what is drawn there, and its size as written."""

    box: tuple[float, float, float, float]
    drawn: str
    """`swing`, `slide`, `pane`, `jambs` or nothing."""
    size: str = ""
    hinge: tuple[float, float] = (0.0, 0.0)
    """Of a swing: a corner of the box."""
    tip: tuple[float, float] = (0.0, 0.0)
    """Of a swing: where the leaf's tip is when it stands open, from the hinge, in its width. [-]"""


WALLS = (
    (0.0, 0.0, 9.0, 0.15), (0.0, 5.85, 9.0, 6.0), (0.0, 0.0, 0.15, 6.0), (8.85, 0.0, 9.0, 6.0),
    (4.0, 0.0, 4.1, 6.0), (0.0, 2.5, 4.0, 2.6), (4.1, 3.4, 9.0, 3.5),
)  # fmt: skip
FRONT = Gap((1.0, 0.0, 1.0 + 3 * FT, 0.15), "swing", "3068", (1.0, 0.15), (0.0, 1.0))
GAPS = (
    FRONT,
    Gap((2.5, 2.5, 2.5 + 2.5 * FT, 2.6), "swing", "2668", (2.5 + 2.5 * FT, 2.6), (0.0, 1.0)),
    Gap((6.0, 3.4, 6.0 + 2.5 * FT, 3.5), "swing", "2668", (6.0, 3.4), (0.0, -1.0)),
    Gap((0.0, 3.4, 0.15, 3.4 + 5 * FT), "pane", "5050 XO"),
    Gap((8.85, 0.6, 9.0, 0.6 + 6 * FT), "slide", "6068 S.G.D."),
    Gap((8.85, 3.6, 9.0, 3.6 + 7 * FT), "jambs", "7070 O.H. DOOR"),
    Gap((4.0, 0.8, 4.1, 1.8), ""),
)
NAMES = (
    ("%%uHALL", 2.9, 1.4, "12'7 x 7'8"),
    ("%%uKITCHEN", 2.0, 4.6, "12'7 x 10'8"),
    ("%%uGREAT ROOM", 6.4, 2.0, "15'7 x 10'8"),
    ("%%u1 CAR GARAGE", 6.4, 4.9, "15'7 x 7'8"),
    ("%%uCOVERED", 2.0, -0.7, ""),
    ("%%uPORCH", 2.0, -0.9, ""),
)


@dataclass(frozen=True)
class Wish:
    """What is to differ from the plain drawing."""

    unit: str = "inch"
    header: str = "inch"
    wall_layer: str = "A-WALL"
    opening_layer: str = "A-OPENING"
    turn_deg: float = 0.0
    offset: tuple[float, float] = (0.0, 0.0)
    with_sizes: bool = True
    with_names: bool = True
    in_blocks: bool = False
    """Whether openings are blocks with layer 0 inside."""
    walls: tuple[tuple[float, float, float, float], ...] = WALLS
    gaps: tuple[Gap, ...] = GAPS
    names: tuple[tuple[str, float, float, str], ...] = NAMES
    posts: tuple[tuple[float, float], ...] = ()
    version: str = "R2000"


class _Pen:
    """Draws in metres, writes in the wished unit."""

    def __init__(self, wish: Wish, space: Any) -> None:
        self.wish, self.space = wish, space
        self.layer = ""

    def put(self, x: float, y: float) -> tuple[float, float]:
        turn = math.radians(self.wish.turn_deg)
        turned = (x * math.cos(turn) - y * math.sin(turn), x * math.sin(turn) + y * math.cos(turn))
        scale = UNITS_M[self.wish.unit]
        return ((turned[0] + self.wish.offset[0]) / scale, (turned[1] + self.wish.offset[1]) / scale)

    def line(self, a: tuple[float, float], b: tuple[float, float]) -> None:
        self.space.add_line(self.put(*a), self.put(*b), dxfattribs={"layer": self.layer})

    def arc(self, centre: tuple[float, float], radius: float, *, start_deg: float, end_deg: float) -> None:
        turn = self.wish.turn_deg
        self.space.add_arc(
            self.put(*centre), radius / UNITS_M[self.wish.unit], start_deg + turn, end_deg + turn,
            dxfattribs={"layer": self.layer},
        )  # fmt: skip

    def text(self, words: str, x: float, y: float, *, height: float = 0.13) -> None:
        text = self.space.add_text(
            words,
            height=height / UNITS_M[self.wish.unit],
            rotation=self.wish.turn_deg,
            dxfattribs={"layer": "A-TEXT"},
        )
        text.set_placement(self.put(x, y), align=ezdxf.enums.TextEntityAlignment.MIDDLE_CENTER)


def written(wish: Wish = Wish()) -> bytes:
    """The plan as the bytes of a DXF file."""
    document = ezdxf.new(wish.version)
    document.header["$INSUNITS"] = INSUNITS[wish.header]
    pen = _Pen(wish, document.modelspace())
    _faces(pen)
    for number, gap in enumerate(wish.gaps):
        if wish.in_blocks and gap.drawn:
            block = _Pen(wish, document.blocks.new(f"opening-{number}"))
            block.layer = "0"
            _draw(block, gap)
            pen.space.add_blockref(f"opening-{number}", (0, 0), dxfattribs={"layer": wish.opening_layer})
        else:
            pen.layer = wish.opening_layer
            _draw(pen, gap)
    _write(pen)
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue().encode("utf-8")


def _faces(pen: _Pen) -> None:
    """The faces of the walls, left open at openings; a line of the porch, and posts."""
    boxes = [shapely.box(*gap.box) for gap in pen.wish.gaps]
    solid = shapely.union_all([shapely.box(*wall) for wall in pen.wish.walls])
    pen.layer = pen.wish.wall_layer
    for part in shapely.get_parts(solid.difference(shapely.union_all(boxes))):
        for ring in (part.exterior, *part.interiors):
            for a, b in itertools.pairwise(ring.coords):
                # A jamb is no face: it is drawn, if at all, with its opening.
                if not any(box.exterior.covers(shapely.LineString((a, b))) for box in boxes):
                    pen.line(a, b)
    pen.line((0.3, -1.2), (4.0, -1.2))
    for x, y in pen.wish.posts:
        for dx0, dy0, dx1, dy1 in ((0, 0, 1, 0), (1, 0, 1, 1), (1, 1, 0, 1), (0, 1, 0, 0)):
            pen.line((x + 0.1 * dx0, y + 0.1 * dy0), (x + 0.1 * dx1, y + 0.1 * dy1))


def _write(pen: _Pen) -> None:
    """The sizes and the names."""
    for gap in pen.wish.gaps if pen.wish.with_sizes else ():
        x0, y0, x1, y1 = gap.box
        if gap.size:
            pen.text(gap.size, (x0 + x1) / 2, (y0 + y1) / 2 + 0.25)
    for words, x, y, size in pen.wish.names if pen.wish.with_names else ():
        pen.text(words, x, y, height=0.18)
        if size:
            pen.text(size, x, y - 0.25)


def _draw(pen: _Pen, gap: Gap) -> None:
    if not gap.drawn:
        return
    x0, y0, x1, y1 = gap.box
    is_level = x1 - x0 > y1 - y0
    ends = (
        (((x0, y0), (x0, y1)), ((x1, y0), (x1, y1)))
        if is_level
        else (((x0, y0), (x1, y0)), ((x0, y1), (x1, y1)))
    )
    for a, b in ends:
        pen.line(a, b)
    middle = (y0 + y1) / 2 if is_level else (x0 + x1) / 2
    low, high = (x0, x1) if is_level else (y0, y1)

    def along(start: float, end: float, across: float) -> None:
        pen.line(*(((start, across), (end, across)) if is_level else ((across, start), (across, end))))

    if gap.drawn == "pane":
        along(low, high, middle)
    elif gap.drawn == "slide":
        along(low, (low + high) / 2, middle - 0.01)
        along((low + high) / 2, high, middle + 0.01)
    elif gap.drawn == "swing":
        width = high - low
        hx, hy = gap.hinge
        pen.line(gap.hinge, (hx + gap.tip[0] * width, hy + gap.tip[1] * width))
        opened = math.degrees(math.atan2(gap.tip[1], gap.tip[0]))
        shut_way = (
            (1.0 if hx < (x0 + x1) / 2 else -1.0, 0.0)
            if is_level
            else (0.0, 1.0 if hy < (y0 + y1) / 2 else -1.0)
        )
        shut = math.degrees(math.atan2(shut_way[1], shut_way[0]))
        turn = (shut - opened) % 360.0
        start, end = (opened, shut) if turn < 180.0 else (shut, opened)
        pen.arc(gap.hinge, width, start_deg=start, end_deg=end)
