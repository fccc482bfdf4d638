"""A climb from the side: what is climbed in turn, and how high each is above the ground."""

from __future__ import annotations

from typing import NamedTuple

from wardwright.documents.drawing.inks import text_width_mm
from wardwright.documents.drawing.recording import Drawing, Recorder
from wardwright.documents.drawing.strip import WIDTH_MM

TALL_MM = 34.0
"""The height of the last step on paper. [mm]"""
ROOM_MM = 7.0
"""Above the last step and below the ground, for letters. [mm]"""
BESIDE_MM = 4.0
"""Between what is climbed and the next. [mm]"""
PANE_MM = 7.0
"""The opening that is climbed to, as it is drawn. [mm]"""


class Stage(NamedTuple):
    """One thing that is climbed, or the opening at the end."""

    name: str
    height_m: float
    """Above the ground. [m]"""
    words: str
    """The height as it is printed."""


def side_view(stages: tuple[Stage, ...], *, key: str, title: str, description: str) -> Drawing:
    """Draw a climb from the side: heights are to one scale, widths to none.

    Parameters
    ----------
    stages : tuple of Stage
        In the order of the climb; the opening comes last.
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
    recorder.layer = "over"
    most = max([1.0, *(stage.height_m for stage in stages)])
    column = WIDTH_MM / (len(stages) + 0.5)
    recorder.line("frame-line", (0.0, 0.0), (WIDTH_MM, 0.0))
    way = [(column / 4.0, 0.0)]
    for i, stage in enumerate(stages):
        level = TALL_MM * stage.height_m / most
        left, right = column * (i + 0.5) + BESIDE_MM / 2.0, column * (i + 1.5) - BESIDE_MM / 2.0
        middle, is_last = (left + right) / 2.0, i + 1 == len(stages)
        if is_last:
            recorder.line("frame-line", (left, 0.0), (left, TALL_MM + ROOM_MM))
            pane = (
                (left, level),
                (left + 2.0, level),
                (left + 2.0, level + PANE_MM),
                (left, level + PANE_MM),
            )
            recorder.polygon("opening", (pane,))
            way += [(way[-1][0], level), (left, level)]
        else:
            recorder.polyline("ground-thing", ((left, 0.0), (left, level), (right, level), (right, 0.0)))
            way += [(left - BESIDE_MM / 4.0, way[-1][1]), (left - BESIDE_MM / 4.0, level), (right, level)]
        recorder.text("strip-value", (middle, level + (2.4 if not is_last else 1.2)), stage.words)
        recorder.text("strip-number", (middle, -3.2), _cut(stage.name, right - left + BESIDE_MM))
    recorder.polyline("climb", way)
    return Drawing(
        key=key,
        title=title,
        description=description,
        bounds=(0.0, -ROOM_MM, WIDTH_MM, TALL_MM + ROOM_MM + PANE_MM),
        mm_per_unit=1.0,
        own=recorder.recording(),
    )


def _cut(name: str, room_mm: float) -> str:
    """A name that is too long for its column, cut short."""
    while len(name) > 4 and text_width_mm("strip-number", name) > room_mm:
        name = name[:-2].rstrip() + "\u2026"
    return name
