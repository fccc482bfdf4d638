from __future__ import annotations

import pytest

from wardwright.documents.drawing.beside import beside
from wardwright.documents.drawing.recording import Drawing, Line, Recorder, Text


def _in_mm(style: str) -> Drawing:
    recorder = Recorder()
    recorder.line(style, (0.0, 0.0), (10.0, 5.0))
    return Drawing("r", "", "", bounds=(0.0, 0.0, 10.0, 5.0), mm_per_unit=1.0, own=recorder.recording())


PLAN = Drawing("p", "", "", bounds=(0.0, 0.0, 4.0, 8.0), mm_per_unit=10.0)
HEADING = (("picture-name", "Terrace"),)


def test_what_stands_beside_keeps_its_size_on_paper_and_clears_the_plan() -> None:
    whole = beside(
        PLAN, (_in_mm("walk"), _in_mm("goal")), heading=HEADING, key="k", title="t", description="d"
    )
    one, two = [verb for _, verb in whole.own.strokes if isinstance(verb, Line)]
    assert (one.end[0] - one.start[0]) * whole.mm_per_unit == pytest.approx(10.0)
    assert (one.end[1] - one.start[1]) * whole.mm_per_unit == pytest.approx(5.0)
    assert one.start[0] >= PLAN.bounds[2]
    assert two.end[1] < one.start[1]
    assert one.end[0] < whole.bounds[2]
    assert (whole.key, whole.scale) == ("k", 100)


def test_the_heading_stands_over_it() -> None:
    whole = beside(PLAN, (_in_mm("walk"),), heading=HEADING, key="k", title="t", description="d")
    (line,) = [verb for _, verb in whole.own.strokes if isinstance(verb, Line)]
    (text,) = [verb for _, verb in whole.own.strokes if isinstance(verb, Text)]
    assert text.text == "Terrace"
    assert text.at[1] > line.end[1]


def test_a_verb_that_cannot_be_moved_is_refused() -> None:
    recorder = Recorder()
    recorder.box("device", (0.0, 0.0), "MD")
    other = _in_mm("walk")._replace(own=recorder.recording())
    with pytest.raises(TypeError, match="a Box cannot be set beside a plan"):
        beside(PLAN, (other,), heading=HEADING, key="k", title="t", description="d")
