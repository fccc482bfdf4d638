from __future__ import annotations

import pytest

from wardwright.documents.drawing.recording import Circle, Polygon, Recorder, Text
from wardwright.documents.drawing.sheet import (
    SHEET_HEIGHT_MM,
    SHEET_WIDTH_MM,
    SMALL_HEIGHT_MM,
    SMALL_WIDTH_MM,
    Sheet,
    draw_foot,
    sheet_for,
)
from wardwright.model.site import Site


def test_a_terrace_fits_an_a4_page_at_fifty(site: Site) -> None:
    sheet = sheet_for(site)
    x0, y0, x1, y1 = sheet.bounds
    assert sheet.scale == 50
    assert (x1 - x0) * sheet.mm_per_m <= SHEET_WIDTH_MM
    assert (y1 - y0) * sheet.mm_per_m <= SHEET_HEIGHT_MM


def test_the_small_sheet_is_smaller(site: Site) -> None:
    assert sheet_for(site, width_mm=SMALL_WIDTH_MM, height_mm=SMALL_HEIGHT_MM).scale == 100


def test_a_house_that_is_ten_times_as_large_has_a_smaller_scale(site: Site) -> None:
    def ten(line: object) -> object:
        return tuple((x * 10, y * 10) for x, y in line)  # type: ignore[attr-defined] # lines of the fixture

    walls = tuple(wall.model_copy(update={"line_m": ten(wall.line_m)}) for wall in site.walls)
    large = site.model_copy(update={"walls": walls, "spaces": ()})
    assert sheet_for(large).scale == 500


@pytest.mark.parametrize(("scale", "metres"), [(20, 1), (50, 2), (100, 5), (200, 10)])
def test_the_scale_bar_is_as_long_as_it_says(scale: int, metres: int) -> None:
    recorder = Recorder()
    draw_foot(recorder, Sheet((0.0, 0.0, 20.0, 20.0), scale), north_deg=0.0)
    verbs = [verb for _, verb in recorder.recording().strokes]
    corners = [p for verb in verbs if isinstance(verb, Polygon) for ring in verb.rings for p in ring]
    length = max(p[0] for p in corners) - min(p[0] for p in corners)
    assert length == pytest.approx(metres)
    assert f"{metres} m" in [verb.text for verb in verbs if isinstance(verb, Text)]


def test_an_unknown_north_is_said_and_not_drawn() -> None:
    recorder = Recorder()
    draw_foot(recorder, Sheet((0.0, 0.0, 9.0, 9.0), 100), north_deg=None)
    verbs = [verb for _, verb in recorder.recording().strokes]
    assert "north not known" in [verb.text for verb in verbs if isinstance(verb, Text)]
    assert not [verb for verb in verbs if isinstance(verb, Circle)]
