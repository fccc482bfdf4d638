"""Spreads drawn on one axis."""

from __future__ import annotations

from wardwright.documents.drawing.quantiles import SpreadRow, spreads
from wardwright.documents.drawing.recording import Head, Line, Polygon, Text, Tick


def verbs(*rows: SpreadRow) -> list[object]:
    drawing = spreads(rows, end=100.0, unit="s", key="k", description="d")
    return [one for _, one in drawing.own.strokes]


def test_low_middle_and_high_stand_where_they_are() -> None:
    drawn = verbs(SpreadRow("notice", "0 / 50 / 100 s", 0.0, 50.0, 100.0, (25.0, 75.0)))
    (line,) = (one for one in drawn if isinstance(one, Line) and one.style == "spread")
    (middle,) = (one for one in drawn if isinstance(one, Tick) and one.style == "spread-middle")
    (box,) = (one for one in drawn if isinstance(one, Polygon))
    left, right = line.start[0], line.end[0]
    assert middle.at[0] == (left + right) / 2
    assert {round((x - left) / (right - left), 6) for x, _ in box.rings[0]} == {0.25, 0.75}
    assert not any(isinstance(one, Head) for one in drawn)


def test_what_is_beyond_the_axis_runs_off_with_an_arrow() -> None:
    drawn = verbs(SpreadRow("unit", "long", 10.0, 40.0, 300.0, (20.0, 150.0)))
    assert sum(isinstance(one, Head) for one in drawn) == 1
    ends = [one.end[0] for one in drawn if isinstance(one, Line) and one.style == "spread"]
    assert max(ends) < 88.0


def test_what_never_happens_is_named_and_not_drawn() -> None:
    drawn = verbs(SpreadRow("message", "never 100 %", 0.0, None, 0.0))
    assert {one.text for one in drawn if isinstance(one, Text)} >= {"message", "never 100 %"}
    assert not any(getattr(one, "style", "").startswith("spread") for one in drawn)
