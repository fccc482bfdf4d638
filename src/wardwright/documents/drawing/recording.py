"""A drawing as ten recorded verbs: what is drawn is decided here, the ink is put down by a writer.

Places are in the drawing's own unit (metres for a plan, millimetres for a strip of time), y upward. What
keeps its size on paper whatever the scale (a tick, an arrow head, a letter) is given in millimetres.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal, NamedTuple, get_args

from wardwright.model.record import Point2, Ring

Layer = Literal["under", "house", "names", "devices", "over"]
"""What lies on what: `under` the house hatching, then the house, names, devices, and last the answer."""
LAYERS: tuple[Layer, ...] = get_args(Layer)

Anchor = Literal["start", "middle", "end"]


class Line(NamedTuple):
    """A straight stroke."""

    style: str
    start: Point2
    end: Point2


class Polyline(NamedTuple):
    """An open stroke through points."""

    style: str
    points: tuple[Point2, ...]


class Polygon(NamedTuple):
    """A closed area; rings inside rings are holes."""

    style: str
    rings: tuple[Ring, ...]


class Hatch(NamedTuple):
    """An area told by its hatching; the writer draws it as lines."""

    style: str
    rings: tuple[Ring, ...]


class Circle(NamedTuple):
    """A circle of a fixed size on paper."""

    style: str
    centre: Point2
    radius_mm: float


class Arc(NamedTuple):
    """Part of a circle, anticlockwise, to scale."""

    style: str
    centre: Point2
    radius: float
    start_deg: float
    end_deg: float


class Tick(NamedTuple):
    """A short stroke of a fixed length on paper, its middle on the place."""

    style: str
    at: Point2
    turn_deg: float
    length_mm: float


class Head(NamedTuple):
    """An arrow head of a fixed size on paper, its tip on the place."""

    style: str
    at: Point2
    turn_deg: float
    length_mm: float


class Text(NamedTuple):
    """Letters: they stay text. The place is on their middle line."""

    style: str
    at: Point2
    text: str
    anchor: Anchor
    turn_deg: float = 0.0
    """Of the letters, anticlockwise about their place."""


class Box(NamedTuple):
    """A few letters in a frame of a fixed size on paper."""

    style: str
    centre: Point2
    text: str


Verb = Line | Polyline | Polygon | Hatch | Circle | Arc | Tick | Head | Text | Box


class Recording(NamedTuple):
    """What was recorded, in order, each verb with its layer."""

    strokes: tuple[tuple[Layer, Verb], ...] = ()

    def of(self, layers: Iterable[Layer]) -> Recording:
        """Keep only some layers."""
        kept = frozenset(layers)
        return Recording(tuple(stroke for stroke in self.strokes if stroke[0] in kept))

    def with_(self, other: Recording) -> Recording:
        """Play another recording after this one, layer by layer."""
        return Recording(self.strokes + other.strokes)


class Recorder:
    """Takes verbs down, one layer at a time."""

    def __init__(self) -> None:
        self._strokes: list[tuple[Layer, Verb]] = []
        self.layer: Layer = "house"

    def recording(self) -> Recording:
        """What has been recorded so far."""
        return Recording(tuple(self._strokes))

    def _take(self, verb: Verb) -> None:
        self._strokes.append((self.layer, verb))

    def line(self, style: str, start: Point2, end: Point2) -> None:
        """Record a straight stroke."""
        self._take(Line(style, start, end))

    def polyline(self, style: str, points: Iterable[Point2]) -> None:
        """Record an open stroke through points."""
        self._take(Polyline(style, tuple(points)))

    def polygon(self, style: str, rings: Iterable[Ring]) -> None:
        """Record a closed area."""
        self._take(Polygon(style, tuple(rings)))

    def hatch(self, style: str, rings: Iterable[Ring]) -> None:
        """Record a hatched area."""
        self._take(Hatch(style, tuple(rings)))

    def circle(self, style: str, centre: Point2, *, radius_mm: float) -> None:
        """Record a circle of a fixed size on paper."""
        self._take(Circle(style, centre, radius_mm))

    def arc(self, style: str, centre: Point2, *, radius: float, start_deg: float, end_deg: float) -> None:
        """Record part of a circle, anticlockwise from start to end."""
        self._take(Arc(style, centre, radius, start_deg, end_deg))

    def tick(self, style: str, at: Point2, *, turn_deg: float, length_mm: float) -> None:
        """Record a short stroke across a place."""
        self._take(Tick(style, at, turn_deg, length_mm))

    def head(self, style: str, at: Point2, *, turn_deg: float, length_mm: float = 2.0) -> None:
        """Record an arrow head."""
        self._take(Head(style, at, turn_deg, length_mm))

    def text(
        self, style: str, at: Point2, text: str, *, anchor: Anchor = "middle", turn_deg: float = 0.0
    ) -> None:
        """Record letters."""
        self._take(Text(style, at, text, anchor, turn_deg))

    def box(self, style: str, centre: Point2, text: str) -> None:
        """Record letters in a frame."""
        self._take(Box(style, centre, text))


class Drawing(NamedTuple):
    """A recording with the sheet it is drawn on."""

    key: str
    """Unique on a page; small letters, digits and hyphens."""
    title: str
    description: str
    """For who cannot see it: what is drawn."""
    bounds: tuple[float, float, float, float]
    """Lowest x, lowest y, highest x, highest y, in the drawing's unit."""
    mm_per_unit: float
    """Paper millimetres for one unit: 20 for a plan in metres at 1:50."""
    base: Recording = Recording()
    """What several drawings share: drawn once on a page, then used again."""
    own: Recording = Recording()
    """What is this drawing's alone."""
    base_key: str | None = None
    """The key of the drawing that holds the same base."""
    styles_used: tuple[str, ...] = ()
    """Styles that the key of signs explains."""

    @property
    def scale(self) -> int:
        """The 50 of 1:50, for a drawing in metres."""
        return round(1000.0 / self.mm_per_unit)

    @property
    def width_mm(self) -> float:
        """Width on paper. [mm]"""
        return (self.bounds[2] - self.bounds[0]) * self.mm_per_unit

    @property
    def height_mm(self) -> float:
        """Height on paper. [mm]"""
        return (self.bounds[3] - self.bounds[1]) * self.mm_per_unit
