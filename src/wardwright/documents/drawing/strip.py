"""A strip of time: what the alarm does and what the intruder does, on one axis of seconds."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal, NamedTuple

from wardwright.documents.drawing.recording import Drawing, Recorder
from wardwright.model.estimate import Estimate

WIDTH_MM = 88.0
"""Fits a telephone's screen and half a page. [mm]"""
ROW_MM = 7.4
FOOT_MM = 5.0
EDGE_MM = 2.0
RUNS_OFF = 3.0
"""Ranges are shown up to this many times the latest likely time; an arrow says that they go on. [-]"""


class Event(NamedTuple):
    """One thing that happens in a race; no time where it never does."""

    name: str
    side: Literal["alarm", "intruder"]
    value: float | None
    low: float
    high: float
    words: str
    """The time as it is printed."""
    is_open: bool = False
    """Whether its range has no end: an arrow says so."""


def strip_of_time(events: tuple[Event, ...], *, key: str, title: str, description: str) -> Drawing:
    """Draw a race as rows on one axis: a bar from low to high and a mark at the likely time.

    Parameters
    ----------
    events : tuple of Event
        In the order of the rows.
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
    known = [event for event in events if event.value is not None]
    last = _last(known)
    step = next((s for s in (1, 2, 5, 10, 20, 30, 60, 120, 300, 600) if last / s <= 8), 3600)
    end = max(1, math.ceil(last / step)) * step
    top = len(events) * ROW_MM

    def x(seconds: float) -> float:
        return across(seconds, end=end)

    draw_axis(recorder, range(0, end + 1, step), unit="s", top=top)
    for i, event in enumerate(events):
        bar = draw_row_words(recorder, event.name, event.words, level=top - i * ROW_MM)
        recorder.line("strip-axis", (EDGE_MM, bar), (WIDTH_MM - EDGE_MM, bar))
        if event.value is not None:
            recorder.line(f"{event.side}-range", (x(event.low), bar), (x(event.high), bar))
            if event.is_open or event.high > end:
                recorder.head("frame-solid", (WIDTH_MM, bar), turn_deg=0.0, length_mm=2.6)
            recorder.circle(f"{event.side}-point", (x(event.value), bar), radius_mm=1.25)
    return Drawing(
        key=key,
        title=title,
        description=description,
        bounds=(0.0, -FOOT_MM, WIDTH_MM, top + 1.0),
        mm_per_unit=1.0,
        own=recorder.recording(),
    )


def across(value: float, *, end: float) -> float:
    """How far across the page a value on an axis from 0 to an end is; what is beyond it stays at its edge. [mm]"""
    return EDGE_MM + (WIDTH_MM - 2 * EDGE_MM) * min(max(value / end, 0.0), 1.0)


def draw_axis(recorder: Recorder, marks: Sequence[float], *, unit: str, top: float) -> None:
    """Draw the axis that rows share, its marks up through all of them.

    Parameters
    ----------
    recorder : Recorder
        Takes the strokes.
    marks : sequence of float
        From 0 to the end of the axis. [the unit]
    unit : str
        Printed with the last of them.
    top : float
        How high the rows are together. [mm]
    """
    first, *_, end = marks
    for value in marks:
        x = across(value, end=end)
        recorder.line("strip-grid", (x, 0.0), (x, top))
        anchor: Literal["start", "middle", "end"] = (
            "start" if value == first else "end" if value == end else "middle"
        )
        words = f"{value:g} {unit}" if value == end else f"{value:g}"
        recorder.text("strip-number", (x, -3.0), words, anchor=anchor)
    recorder.line("strip-axis", (EDGE_MM, 0.0), (WIDTH_MM - EDGE_MM, 0.0))


def draw_row_words(recorder: Recorder, name: str, words: str, *, level: float) -> float:
    """Write what a row is and its value at its top, which is at a level; the level of its bar. [mm]"""
    recorder.text("strip-name", (EDGE_MM, level - 2.0), name, anchor="start")
    recorder.text("strip-value", (WIDTH_MM - EDGE_MM, level - 2.0), words, anchor="end")
    return level - 5.2


def _last(known: list[Event]) -> float:
    """The latest second that the axis must show: a range far beyond every likely time runs off it."""
    likely = max((event.value for event in known if event.value is not None), default=1.0)
    return max([likely, *(min(event.high, RUNS_OFF * likely) for event in known)])


LINE_MM = 60.0
"""Length of a range line. [mm]"""


def range_line(estimate: Estimate, *, key: str, description: str, horizon_s: float = math.inf) -> Drawing:
    """Draw a value and its range against zero.

    Parameters
    ----------
    estimate : Estimate
        What to draw; a share is drawn from 0 to 1.
    key : str
        Unique on the page.
    description : str
        The value and range in words, for who cannot see it.
    horizon_s : float, default inf
        A range that is late by this runs off the line with an arrow: it stands for never. [s]

    Returns
    -------
    Drawing
        In millimetres.
    """
    recorder = Recorder()
    recorder.layer = "over"
    is_open = estimate.unit == "s" and estimate.low <= -horizon_s < estimate.value
    near = RUNS_OFF * max(abs(estimate.value), abs(estimate.high))
    low = min(0.0, -near if is_open else estimate.low, estimate.value)
    high = max(1.0 if estimate.unit == "-" else 0.0, estimate.high, estimate.value)
    span = (high - low) or 1.0

    def x(value: float) -> float:
        return 2.0 + (LINE_MM - 4.0) * (value - low) / span

    recorder.line("strip-axis", (x(low), 3.0), (x(high), 3.0))
    recorder.line("range-zero", (x(0.0), 0.8), (x(0.0), 5.2))
    recorder.line("range", (x(max(low, estimate.low)), 3.0), (x(estimate.high), 3.0))
    if is_open:
        recorder.head("frame-solid", (0.0, 3.0), turn_deg=180.0, length_mm=2.6)
    recorder.circle("alarm-point", (x(estimate.value), 3.0), radius_mm=1.25)
    return Drawing(
        key=key,
        title="Range",
        description=description,
        bounds=(0.0, 0.0, LINE_MM, 6.0),
        mm_per_unit=1.0,
        own=recorder.recording(),
    )
