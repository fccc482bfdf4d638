"""The calendar of the sun."""

from __future__ import annotations

import re

from wardwright.documents.drawing.calendar import Stretch, calendar_of_sun
from wardwright.documents.writers.svg import write_svg

LENS = tuple(Stretch("lens", day, 400.0, 430.0) for day in range(60, 80))
VIEW = tuple(Stretch("view", day, 420.0, 900.0) for day in range(365))
COVERED = (Stretch("covered", 10, 600.0, 660.0),)


def drawn(*stretches: Stretch) -> str:
    drawing = calendar_of_sun(tuple(stretches), key="sun", title="The sun", description="Days and hours.")
    return write_svg(drawing).decode()


def test_each_kind_has_its_own_look_and_its_line_in_the_key() -> None:
    text = drawn(*LENS, *VIEW, *COVERED)
    assert "straight on its lens" in text
    assert "on floor in its view" in text
    assert "only with a curtain or blind left open" in text
    for style in ("sun-lens", "sunlit-edge", "sun-covered-edge"):
        assert f"ink-{style}" in text


def test_what_is_not_there_has_no_line_in_the_key() -> None:
    assert "on floor" not in drawn(*LENS)


def test_the_axes_span_the_hours_that_matter() -> None:
    text = drawn(*LENS)
    assert re.findall(r">(\d+:00)<", text) == ["6:00", "9:00"]
    assert re.findall(r">(\d+:00)<", drawn(*VIEW)) == ["6:00", "9:00", "12:00", "15:00"]
