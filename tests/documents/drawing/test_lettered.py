"""Paths told by a letter."""

from __future__ import annotations

import shapely

from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.lettered import draw_letters, keep_clear
from wardwright.documents.drawing.recording import Box, Recorder
from wardwright.model.sketch import Sketch


def board() -> Board:
    nothing = shapely.MultiPolygon()
    return Board((0.0, 0.0, 10.0, 10.0), mm_per_unit=10.0, solid=nothing, soft=nothing)


def path(role: str, label: str) -> Sketch:
    return Sketch.model_validate(
        {"role": role, "storey": "ground", "points": ((1, 1), (5, 1)), "label": label}
    )


def test_each_path_with_a_letter_has_it_boxed_beside_its_end_and_no_two_lie_on_each_other() -> None:
    recorder = Recorder()
    paths = (path("beaten", "A"), path("beaten", "B"), path("least-detected", "1"), path("beaten", ""))
    draw_letters(recorder, (*paths, path("walk", "C")), board=board())
    boxes = [one for _, one in recorder.recording().strokes if isinstance(one, Box)]
    assert [one.text for one in boxes] == ["A", "B", "1"]
    assert len({one.centre for one in boxes}) == 3
    assert all(abs(one.centre[0] - 5.0) < 2.0 for one in boxes)


def test_labels_keep_off_the_whole_of_a_path_that_is_told_by_its_corners() -> None:
    one, other = board(), board()
    keep_clear(((1.0, 5.0), (9.0, 5.0)), board=one)
    size = (3.0, 2.0)
    assert one.place((5.0, 5.0), size, clear_mm=0.5) != other.place((5.0, 5.0), size, clear_mm=0.5)
