"""A calendar of the sun: the day of the year across, the hour by the clock up."""

from __future__ import annotations

from typing import Literal, NamedTuple

import shapely

from wardwright.documents.drawing.hatching import rings_of
from wardwright.documents.drawing.recording import Drawing, Recorder
from wardwright.documents.drawing.strip import WIDTH_MM
from wardwright.model.record import Ring

LEFT_MM, EDGE_MM, FOOT_MM, ROW_MM, HOUR_MM = 9.0, 2.0, 5.0, 4.6, 2.0
MONTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
LETTERS = "JFMAMJJASOND"
SPECK_MM2 = 1e-4
"""Smaller pieces are not drawn. [mm2]"""

Kind = Literal["lens", "view", "covered"]
STYLES: dict[Kind, str] = {"lens": "sun-lens", "view": "sunlit", "covered": "sun-covered"}
WORDS: dict[Kind, str] = {
    "lens": "straight on its lens",
    "view": "on floor in its view",
    "covered": "only with a curtain or blind left open",
}


class Stretch(NamedTuple):
    """One stretch of sun on one day."""

    kind: Kind
    day: int
    """From 0, 1 January."""
    start_min: float
    """By the clock, after midnight. [min]"""
    end_min: float


def calendar_of_sun(stretches: tuple[Stretch, ...], *, key: str, title: str, description: str) -> Drawing:
    """Draw when the sun shines: solid on the lens, hatched on floor in view, a dotted edge behind what is drawn.

    Parameters
    ----------
    stretches : tuple of Stretch
        At least one.
    key : str
        Unique on the page.
    title, description : str
        For who cannot see it.

    Returns
    -------
    Drawing
        In millimetres.
    """
    recorder = Recorder()
    first = max(0, int(min(one.start_min for one in stretches) // 180) * 3)
    last = min(24, -int(-max(one.end_min for one in stretches) // 180) * 3)
    top = (last - first) * HOUR_MM
    wide = WIDTH_MM - LEFT_MM - EDGE_MM
    kinds = tuple(kind for kind in STYLES if any(one.kind == kind for one in stretches))
    recorder.layer = "under"
    for kind in reversed(kinds):
        rings = _area(tuple(one for one in stretches if one.kind == kind), first=first, wide=wide)
        if kind == "lens":
            recorder.polygon(STYLES[kind], rings)
        elif kind == "view":
            recorder.hatch(STYLES[kind], rings)
        for ring in () if kind == "lens" else rings:
            recorder.polyline(f"{STYLES[kind]}-edge", (*ring, ring[0]))
    recorder.layer = "over"
    _axes(recorder, hours=(first, last), wide=wide)
    for row, kind in enumerate(kinds):
        _key(recorder, kind, level=-FOOT_MM - (row + 0.7) * ROW_MM)
    return Drawing(
        key=key,
        title=title,
        description=description,
        bounds=(0.0, -FOOT_MM - (len(kinds) + 0.3) * ROW_MM, WIDTH_MM, top + 2.0),
        mm_per_unit=1.0,
        own=recorder.recording(),
    )


def _area(stretches: tuple[Stretch, ...], *, first: int, wide: float) -> tuple[Ring, ...]:
    """All stretches of one kind as one area. [mm]"""
    days = sum(MONTHS)
    boxes = [
        shapely.box(
            LEFT_MM + wide * one.day / days,
            (one.start_min / 60.0 - first) * HOUR_MM,
            LEFT_MM + wide * (one.day + 1.02) / days,
            (one.end_min / 60.0 - first) * HOUR_MM,
        )
        for one in stretches
    ]
    parts = shapely.get_parts(shapely.union_all(boxes).simplify(0.05))
    return rings_of(shapely.union_all([part for part in parts if part.area > SPECK_MM2]))


def _axes(recorder: Recorder, *, hours: tuple[int, int], wide: float) -> None:
    first, last = hours
    top, day = (last - first) * HOUR_MM, 0
    for letter, length in zip(LETTERS, MONTHS, strict=True):
        x = LEFT_MM + wide * day / sum(MONTHS)
        recorder.line("strip-grid", (x, 0.0), (x, top))
        middle = x + wide * length / sum(MONTHS) / 2.0
        recorder.text("strip-number", (middle, -2.4), letter)
        day += length
    for hour in range(first, last + 1, 3):
        y = (hour - first) * HOUR_MM
        recorder.line("strip-grid", (LEFT_MM, y), (LEFT_MM + wide, y))
        recorder.text("strip-number", (LEFT_MM - 1.2, y), f"{hour}:00", anchor="end")
    recorder.line("strip-axis", (LEFT_MM, 0.0), (LEFT_MM + wide, 0.0))
    recorder.line("strip-axis", (LEFT_MM, 0.0), (LEFT_MM, top))


def _key(recorder: Recorder, kind: Kind, *, level: float) -> None:
    x0, x1, y0, y1 = LEFT_MM, LEFT_MM + 6.0, level - 1.4, level + 1.4
    ring: Ring = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    if kind == "lens":
        recorder.polygon(STYLES[kind], (ring,))
    else:
        if kind == "view":
            recorder.hatch(STYLES[kind], (ring,))
        recorder.polyline(f"{STYLES[kind]}-edge", (*ring, ring[0]))
    recorder.text("strip-number", (x1 + 1.5, level), WORDS[kind], anchor="start")
