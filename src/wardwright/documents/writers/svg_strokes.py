"""The verbs of a drawing as elements of SVG, in paper millimetres."""

from __future__ import annotations

import math
from collections.abc import Callable
from html import escape
from typing import NamedTuple

from wardwright.documents.drawing.hatching import hatch_lines
from wardwright.documents.drawing.inks import INKS, PREFIX, box_size_mm
from wardwright.documents.drawing.recording import (
    Arc,
    Box,
    Circle,
    Drawing,
    Hatch,
    Head,
    Layer,
    Line,
    Polygon,
    Polyline,
    Recording,
    Text,
    Tick,
    Verb,
)
from wardwright.model.record import Point2


class Paper(NamedTuple):
    """Places of a drawing in paper millimetres, y downward."""

    drawing: Drawing

    def point(self, at: Point2) -> str:
        """One place, as printed."""
        x, y = self.mm(at)
        return f"{number(x)} {number(y)}"

    def mm(self, at: Point2) -> Point2:
        """One place. [mm]"""
        x0, _, _, y1 = self.drawing.bounds
        unit = self.drawing.mm_per_unit
        return ((at[0] - x0) * unit, (y1 - at[1]) * unit)


def number(value: float) -> str:
    """A length in hundredths, without idle noughts or a negative nought.

    Examples
    --------
    >>> number(1.0), number(-0.001), number(2.345678)
    ('1', '0', '2.35')
    """
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def played(recording: Recording, paper: Paper, layers: tuple[Layer, ...]) -> list[str]:
    """Some layers of a recording as SVG, one `g` element for each that is drawn on."""
    parts: list[str] = []
    for layer in layers:
        strokes = [verb for at, verb in recording.strokes if at == layer]
        if strokes:
            parts.append(f'<g class="layer-{layer}">')
            parts += [PLAYERS[type(verb)](verb, paper) for verb in strokes]
            parts.append("</g>")
    return parts


def _path(points: tuple[Point2, ...], paper: Paper) -> str:
    """A path through points: from the second on, each as the step from the one before, in hundredths."""
    first, *rest = [paper.mm(point) for point in points]
    x, y = round(first[0], 2), round(first[1], 2)
    steps = [f"M{number(x)} {number(y)}"]
    for px, py in rest:
        dx, dy = round(px - x, 2), round(py - y, 2)
        if dx or dy:
            steps.append(f"l{number(dx)} {number(dy)}")
            x, y = round(x + dx, 2), round(y + dy, 2)
    return "".join(steps)


def _line(verb: Line, paper: Paper) -> str:
    return f'<path class="{PREFIX}{verb.style}" d="{_path((verb.start, verb.end), paper)}"/>'


def _polyline(verb: Polyline, paper: Paper) -> str:
    return f'<path class="{PREFIX}{verb.style}" d="{_path(verb.points, paper)}"/>'


def _polygon(verb: Polygon, paper: Paper) -> str:
    outline = "".join(_path(ring, paper) + "z" for ring in verb.rings)
    return f'<path class="{PREFIX}{verb.style}" fill-rule="evenodd" d="{outline}"/>'


def _hatch(verb: Hatch, paper: Paper) -> str:
    unit = paper.drawing.mm_per_unit
    lines = [
        line
        for angle, spacing in INKS[verb.style].hatch
        for line in hatch_lines(verb.rings, angle_deg=angle, spacing=spacing / unit)
    ]
    strokes = "".join(_path(line, paper) for line in lines)
    return f'<path class="{PREFIX}{verb.style}" d="{strokes}"/>' if strokes else ""


def _circle(verb: Circle, paper: Paper) -> str:
    x, y = paper.mm(verb.centre)
    return f'<circle class="{PREFIX}{verb.style}" cx="{number(x)}" cy="{number(y)}" r="{number(verb.radius_mm)}"/>'


def _arc(verb: Arc, paper: Paper) -> str:
    ends = [
        (
            verb.centre[0] + verb.radius * math.cos(math.radians(angle)),
            verb.centre[1] + verb.radius * math.sin(math.radians(angle)),
        )
        for angle in (verb.start_deg, verb.end_deg)
    ]
    radius = number(verb.radius * paper.drawing.mm_per_unit)
    is_large = int((verb.end_deg - verb.start_deg) % 360.0 > 180.0)
    way = f"M{paper.point(ends[0])}A{radius} {radius} 0 {is_large} 0 {paper.point(ends[1])}"
    return f'<path class="{PREFIX}{verb.style}" d="{way}"/>'


def _tick(verb: Tick, paper: Paper) -> str:
    x, y = paper.mm(verb.at)
    turn = math.radians(verb.turn_deg)
    dx, dy = math.cos(turn) * verb.length_mm / 2, -math.sin(turn) * verb.length_mm / 2
    way = f"M{number(x - dx)} {number(y - dy)}L{number(x + dx)} {number(y + dy)}"
    return f'<path class="{PREFIX}{verb.style}" d="{way}"/>'


def _head_mark(verb: Head, paper: Paper) -> str:
    x, y = paper.mm(verb.at)
    corners = [f"{number(x)} {number(y)}"]
    for side in (155.0, 205.0):
        turn = math.radians(verb.turn_deg + side)
        corners.append(
            f"{number(x + math.cos(turn) * verb.length_mm)} {number(y - math.sin(turn) * verb.length_mm)}"
        )
    return f'<path class="{PREFIX}{verb.style}" d="M{"L".join(corners)}z"/>'


def _text(verb: Text, paper: Paper) -> str:
    x, y = paper.mm(verb.at)
    base = y + 0.35 * INKS[verb.style].size_mm
    anchor = "" if verb.anchor == "start" else f' text-anchor="{verb.anchor}"'
    turn = f' transform="rotate({number(-verb.turn_deg)} {number(x)} {number(y)})"' if verb.turn_deg else ""
    words = escape(verb.text)
    return (
        f'<text class="{PREFIX}{verb.style}" x="{number(x)}" y="{number(base)}"{anchor}{turn}>{words}</text>'
    )


def _box(verb: Box, paper: Paper) -> str:
    x, y = paper.mm(verb.centre)
    wide, high = box_size_mm(verb.style, verb.text)
    base = y + 0.36 * INKS[verb.style].size_mm
    return (
        f'<rect class="{PREFIX}{verb.style}" x="{number(x - wide / 2)}" y="{number(y - high / 2)}" '
        f'width="{number(wide)}" height="{number(high)}"/>'
        f'<text class="{PREFIX}{verb.style}-letters" x="{number(x)}" y="{number(base)}" text-anchor="middle">'
        f"{escape(verb.text)}</text>"
    )


PLAYERS: dict[type[Verb], Callable[..., str]] = {
    Line: _line,
    Polyline: _polyline,
    Polygon: _polygon,
    Hatch: _hatch,
    Circle: _circle,
    Arc: _arc,
    Tick: _tick,
    Head: _head_mark,
    Text: _text,
    Box: _box,
}
"""One player a verb."""
