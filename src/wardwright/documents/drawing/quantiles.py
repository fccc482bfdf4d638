"""Rows of spreads on one axis: a line from low to high, a box about the middle half, a mark at the middle."""

from __future__ import annotations

from typing import NamedTuple

from wardwright.documents.drawing.recording import Drawing, Recorder
from wardwright.documents.drawing.strip import FOOT_MM, ROW_MM, WIDTH_MM, across, draw_axis, draw_row_words

BOX_MM = 1.1
"""Half the height of a box. [mm]"""


class SpreadRow(NamedTuple):
    """One quantity; nothing is drawn where it has no middle."""

    name: str
    words: str
    """As it is printed."""
    low: float
    middle: float | None
    high: float
    half: tuple[float, float] | None = None
    """Between which the middle half lies; None: only the line is drawn."""


def spreads(rows: tuple[SpreadRow, ...], *, end: float, unit: str, key: str, description: str) -> Drawing:
    """Draw spreads under each other, black on white.

    Parameters
    ----------
    rows : tuple of SpreadRow
        From the top down. [the unit]
    end : float
        What the axis ends at; what is beyond it runs off with an arrow. [the unit]
    unit : str
        Of all of them.
    key : str
        Unique on the page.
    description : str
        All of it in words, for who cannot see it.

    Returns
    -------
    Drawing
        In millimetres.
    """
    recorder = Recorder()
    recorder.layer = "over"
    top = len(rows) * ROW_MM

    def x(value: float) -> float:
        return across(value, end=end)

    draw_axis(recorder, [end * i / 4 for i in range(5)], unit=unit, top=top)
    for i, row in enumerate(rows):
        bar = draw_row_words(recorder, row.name, row.words, level=top - i * ROW_MM)
        if row.middle is None:
            continue
        recorder.line("spread", (x(row.low), bar), (x(row.high), bar))
        for value in (row.low, row.high) if row.high <= end else (row.low,):
            recorder.tick("spread", (x(value), bar), turn_deg=90.0, length_mm=BOX_MM)
        if row.half is not None:
            a, b = (x(value) for value in row.half)
            ring = ((a, bar - BOX_MM), (b, bar - BOX_MM), (b, bar + BOX_MM), (a, bar + BOX_MM))
            recorder.polygon("spread-half", (ring,))
        recorder.tick("spread-middle", (x(row.middle), bar), turn_deg=90.0, length_mm=2.4 * BOX_MM)
        if row.high > end:
            recorder.head("frame-solid", (WIDTH_MM, bar), turn_deg=0.0, length_mm=2.6)
    return Drawing(
        key=key,
        title="Spreads",
        description=description,
        bounds=(0.0, -FOOT_MM, WIDTH_MM, top + 1.0),
        mm_per_unit=1.0,
        own=recorder.recording(),
    )
