from __future__ import annotations

import pytest
import shapely

from wardwright.documents.drawing.inks import text_width_mm
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.recording import Circle, Polygon, Recorder, Text
from wardwright.documents.drawing.sheet import (
    HALF,
    QUARTER,
    WHOLE,
    Room,
    Sheet,
    draw_foot,
    draw_numbered,
    sheet_for,
)
from wardwright.model.site import Site


@pytest.mark.parametrize(("room", "scale"), [(WHOLE, 50), (HALF, 100), (QUARTER, 200)])
def test_a_terrace_fits_the_room_it_is_given(site: Site, room: Room, scale: int) -> None:
    sheet = sheet_for(site, room=room)
    _, y0, _, y1 = sheet.bounds
    assert sheet.scale == scale
    assert sheet.width_mm <= room.width_mm
    assert (y1 - y0) * sheet.mm_per_m <= room.height_mm
    assert sheet.is_narrow == (room is QUARTER)


def test_a_house_that_is_ten_times_as_large_has_a_smaller_scale(site: Site) -> None:
    def ten(line: object) -> object:
        return tuple((x * 10, y * 10) for x, y in line)  # type: ignore[attr-defined] # lines of the fixture

    walls = tuple(wall.model_copy(update={"line_m": ten(wall.line_m)}) for wall in site.walls)
    large = site.model_copy(update={"walls": walls, "spaces": ()})
    assert sheet_for(large).scale == 500


@pytest.mark.parametrize(("scale", "metres"), [(20, 1), (50, 2), (100, 5), (200, 10)])
def test_the_scale_bar_is_as_long_as_it_says(scale: int, metres: int) -> None:
    recorder = Recorder()
    draw_foot(recorder, Sheet((0.0, 0.0, 20.0, 20.0), scale, 9.0), north_deg=0.0)
    verbs = [verb for _, verb in recorder.recording().strokes]
    corners = [p for verb in verbs if isinstance(verb, Polygon) for ring in verb.rings for p in ring]
    length = max(p[0] for p in corners) - min(p[0] for p in corners)
    assert length == pytest.approx(metres)
    assert f"{metres} m, 1:{scale}" in [verb.text for verb in verbs if isinstance(verb, Text)]


def test_an_unknown_north_is_said_and_not_drawn() -> None:
    recorder = Recorder()
    draw_foot(recorder, Sheet((0.0, 0.0, 9.0, 9.0), 100, 9.0), north_deg=None)
    verbs = [verb for _, verb in recorder.recording().strokes]
    assert "north not known" in [verb.text for verb in verbs if isinstance(verb, Text)]
    assert not [verb for verb in verbs if isinstance(verb, Circle)]


def test_numbers_are_told_at_the_foot_in_lines_that_fit() -> None:
    sheet = Sheet((0.0, 0.0, 4.0, 9.0), 100, 9.0)
    board = Board(sheet.bounds, mm_per_unit=10.0, solid=shapely.Polygon(), soft=shapely.Polygon())
    recorder = Recorder()
    draw_numbered(recorder, sheet, (("1", "Cupboard"), ("2", "Boiler room"), ("3", "Hall")), board=board)
    texts = [verb for _, verb in recorder.recording().strokes if isinstance(verb, Text)]
    assert [verb.text for verb in reversed(texts)] == ["1 Cupboard, 2 Boiler room,", "3 Hall"]
    assert all(text_width_mm(verb.style, verb.text) <= 36.5 for verb in texts)
    assert len(board.taken) == 2
