"""A climb from the side."""

from __future__ import annotations

from wardwright.documents.drawing.side_view import TALL_MM, WIDTH_MM, Stage, side_view
from wardwright.documents.writers.svg import write_svg


def test_heights_are_to_one_scale_and_names_stand_below() -> None:
    stages = (Stage("Bin", 1.0, "1.0 m"), Stage("Roof", 2.5, "2.5 m"), Stage("Window", 4.0, "4.0 m"))
    drawing = side_view(stages, key="k", title="t", description="d")
    ways = [verb for _, verb in drawing.own.strokes if verb.style == "climb"]
    (way,) = ways
    levels = sorted({round(y, 6) for _, y in way.points})
    assert levels == [0.0, TALL_MM / 4, TALL_MM * 2.5 / 4, TALL_MM]
    assert all(0.0 <= x <= WIDTH_MM for x, _ in way.points)
    text = write_svg(drawing).decode()
    assert all(word in text for word in ("Bin", "Roof", "Window", "2.5 m"))


def test_a_long_name_is_cut() -> None:
    stages = (
        Stage("Neighbour's back addition with a long name indeed", 2.0, "2.0 m"),
        Stage("Window", 3.0, "3.0 m"),
    )
    text = write_svg(side_view(stages, key="k", title="t", description="d")).decode()
    assert "\u2026" in text
    assert "indeed" not in text
