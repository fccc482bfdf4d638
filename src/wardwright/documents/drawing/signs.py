"""The key of signs: a small sample of each sign that a plan may hold."""

from __future__ import annotations

from wardwright.documents.drawing.measured import measured_sign
from wardwright.documents.drawing.overlay import AREAS, PLAIN_LINES, UNNOTICED_FLOOR
from wardwright.documents.drawing.recording import Drawing, Recorder
from wardwright.documents.drawing.round_signs import draw_rings
from wardwright.model.record import Ring

WIDTH_MM = 13.0
HEIGHT_MM = 6.5
EDGE_MM = 0.8
SAMPLES = {"task": ("task", "word"), "climb-step": ("climb-step", "2.6 m")}
"""Style and word of a box with letters."""


def sign(role: str, *, key: str, words: str) -> Drawing:
    """Draw a sample of one sign.

    Parameters
    ----------
    role : str
        The role of a sketch.
    key : str
        Unique on the page.
    words : str
        What it means.

    Returns
    -------
    Drawing
        In millimetres.
    """
    recorder = Recorder()
    middle = (WIDTH_MM / 2, HEIGHT_MM / 2)
    left, right = (EDGE_MM, HEIGHT_MM / 2), (WIDTH_MM - EDGE_MM, HEIGHT_MM / 2)
    match role:
        case "unnoticed":
            _sample(recorder, UNNOTICED_FLOOR)
        case _ if role in AREAS:
            _sample(recorder, role)
        case "walk":
            recorder.line("walk", left, right)
            recorder.tick("walk-tick", middle, turn_deg=90.0, length_mm=2.6)
            recorder.head("frame-solid", right, turn_deg=0.0, length_mm=2.6)
        case "beam" | "beaten" | "least-detected":
            recorder.line(role, left, right)
            recorder.head("frame-solid", right, turn_deg=0.0, length_mm=2.6)
        case _ if role in ("timely", "arrival-band", "trip", "radio-path", *PLAIN_LINES):
            recorder.line(role, left, right)
        case "radio-cost":
            recorder.line("radio-path", left, right)
            recorder.line("radio-cost", (middle[0], EDGE_MM), (middle[0], HEIGHT_MM - EDGE_MM))
        case "notice" | "goal":
            draw_rings(recorder, role, middle)
        case "distance" | "level":
            measured_sign(recorder, role, left, right=right)
        case "fault":
            recorder.tick("fault", middle, turn_deg=45.0, length_mm=4.2)
            recorder.tick("fault", middle, turn_deg=135.0, length_mm=4.2)
        case _:
            style, word = SAMPLES.get(role, ("suggestion", "here"))
            recorder.box(style, middle, word)
    return Drawing(
        key=key,
        title=words,
        description=f"The sign for: {words}.",
        bounds=(0.0, 0.0, WIDTH_MM, HEIGHT_MM),
        mm_per_unit=1.0,
        own=recorder.recording(),
    )


def _sample(recorder: Recorder, style: str) -> None:
    x0, y0, x1, y1 = EDGE_MM, EDGE_MM, WIDTH_MM - EDGE_MM, HEIGHT_MM - EDGE_MM
    ring: Ring = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    recorder.hatch(style, (ring,))
    recorder.polyline(f"{style}-edge", (*ring, ring[0]))
