"""Levels and distances as figures on a plan."""

from __future__ import annotations

import math

from wardwright.documents.drawing.inks import text_width_mm
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.recording import Recorder
from wardwright.model.record import Point2
from wardwright.model.sketch import Sketch

TICK_MM = 2.0
"""At each end of a distance. [mm]"""
RING_MM = 1.3
"""About the place of a level. [mm]"""


def is_measured(sketch: Sketch) -> bool:
    """Whether it is drawn as a bare figure: a distance, or the level of a room; a level with words has a ring."""
    return sketch.role == "distance" or (sketch.role == "level" and " " not in sketch.label)


def draw_measured(recorder: Recorder, sketch: Sketch, *, board: Board) -> None:
    """Draw a room's level as a figure in it, or a distance as a line with its length beside it.

    Parameters
    ----------
    recorder : Recorder
        Takes the verbs.
    sketch : Sketch
        What is measured; of a walk the end alone, without a line.
    board : Board
        Places that labels have.
    """
    (ax, ay), (bx, by) = sketch.points[0], sketch.points[-1]
    if (ax, ay) != (bx, by):
        distance_line(recorder, (ax, ay), (bx, by))
    style, clear = ("answer-label", 1.2) if sketch.role == "distance" else ("level-room", 0.5)
    size = (text_width_mm(style, sketch.label), 3.0)
    centre = board.place(((ax + bx) / 2, (ay + by) / 2), size, clear_mm=clear)
    recorder.text(style, centre, sketch.label)


def distance_line(recorder: Recorder, start: Point2, end: Point2) -> None:
    """A line with a tick at each end."""
    turn = math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))
    recorder.line("distance", start, end)
    for at in (start, end):
        recorder.tick("distance", at, turn_deg=turn + 90.0, length_mm=TICK_MM)


def measured_sign(recorder: Recorder, role: str, left: Point2, *, right: Point2) -> None:
    """A sample of either for the key of signs."""
    if role == "distance":
        distance_line(recorder, left, right)
        return
    recorder.circle("level", (left[0] + RING_MM, left[1]), radius_mm=RING_MM)
    recorder.text("level-room", ((left[0] + right[0]) / 2, left[1]), "62")
