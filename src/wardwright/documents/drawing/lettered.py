"""Paths that are told by a letter beside their end."""

from __future__ import annotations

import shapely

from wardwright.documents.drawing.inks import box_size_mm
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.recording import Recorder
from wardwright.model.record import Point2
from wardwright.model.sketch import Sketch

TOLD_BY_LETTER = ("least-detected", "beaten")
"""Roles of paths that are told by a letter."""
EACH_M = 0.2
"""How far apart a path keeps labels off. [m]"""


def keep_clear(points: tuple[Point2, ...], *, board: Board) -> None:
    """Keep labels off a path that is told by its corners."""
    line = shapely.LineString(points)
    for number in range(int(line.length / EACH_M) + 1):
        at = line.interpolate(number * EACH_M)
        board.take((float(at.x), float(at.y)), (1.6, 1.6))


def draw_letters(recorder: Recorder, sketches: tuple[Sketch, ...], *, board: Board) -> None:
    """Draw the letter that each path is told by, at its end on this storey."""
    for sketch in sketches:
        if sketch.role in TOLD_BY_LETTER and sketch.label and sketch.points:
            _letter(recorder, sketch, board=board)


def _letter(recorder: Recorder, sketch: Sketch, *, board: Board) -> None:
    size = box_size_mm("path-letter", sketch.label)
    centre = board.place(sketch.points[-1], size, clear_mm=2.5, is_apart=True)
    recorder.line("leader", sketch.points[-1], centre)
    recorder.box("path-letter", centre, sketch.label)
