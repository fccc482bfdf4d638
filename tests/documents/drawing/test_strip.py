from __future__ import annotations

import pytest

from wardwright.documents.drawing.recording import Circle, Head, Line, Text
from wardwright.documents.drawing.strip import Event, range_line, strip_of_time
from wardwright.model.estimate import Estimate

EVENTS = (
    Event("first notice", "alarm", 10.0, 5.0, 12.0, "10 s"),
    Event("control unit reached", "intruder", 20.0, 18.0, 40.0, "20 s"),
    Event("message outside", "alarm", None, 0.0, 0.0, "never"),
)


def test_all_events_are_on_one_axis() -> None:
    strip = strip_of_time(EVENTS, key="a", title="", description="")
    points = [verb for _, verb in strip.own.strokes if isinstance(verb, Circle)]
    assert [point.style for point in points] == ["alarm-point", "intruder-point"]
    # 0 s lies at 2 mm; twice the time is twice as far.
    assert points[1].centre[0] - 2.0 == pytest.approx(2 * (points[0].centre[0] - 2.0))


def test_what_never_happens_has_words_and_no_mark() -> None:
    strip = strip_of_time(EVENTS[2:], key="a", title="", description="")
    assert "never" in [verb.text for _, verb in strip.own.strokes if isinstance(verb, Text)]
    assert not [verb for _, verb in strip.own.strokes if isinstance(verb, Circle)]


def test_a_range_lies_on_its_side_of_nought() -> None:
    line = range_line(Estimate(value=-5.0, low=-10.0, high=-2.0, unit="s"), key="a", description="")
    by_style = {verb.style: verb for _, verb in line.own.strokes if isinstance(verb, Line)}
    assert by_style["range"].end[0] < by_style["range-zero"].start[0]


def test_a_share_is_drawn_from_nought_to_one() -> None:
    line = range_line(Estimate(value=0.5, low=0.25, high=0.75, unit="-"), key="a", description="")
    (point,) = [verb for _, verb in line.own.strokes if isinstance(verb, Circle)]
    assert point.centre[0] == pytest.approx(30.0)


def test_a_range_far_beyond_every_likely_time_runs_off_the_axis() -> None:
    far = Event("sounder loud", "alarm", 11.0, 9.0, 480.0, "11 s (9 to 480 s)")
    strip = strip_of_time((*EVENTS[:2], far), key="a", title="", description="")
    (head,) = [verb for _, verb in strip.own.strokes if isinstance(verb, Head)]
    bars = [verb for _, verb in strip.own.strokes if isinstance(verb, Line) and verb.style == "alarm-range"]
    assert head.at[1] == bars[1].end[1]
    # What is near keeps its size: 20 s is at a third of the axis or later.
    points = [verb for _, verb in strip.own.strokes if isinstance(verb, Circle)]
    assert points[1].centre[0] >= 84.0 / 3


def test_a_range_that_the_axis_holds_has_no_arrow() -> None:
    strip = strip_of_time(EVENTS[:2], key="a", title="", description="")
    assert not [verb for _, verb in strip.own.strokes if isinstance(verb, Head)]


def test_a_range_without_an_end_has_an_arrow_however_near_its_end_is() -> None:
    last = Event("message outside", "alarm", 470.0, 440.0, 480.0, "470 s (440 s to never)", is_open=True)
    strip = strip_of_time((last,), key="a", title="", description="")
    assert [verb for _, verb in strip.own.strokes if isinstance(verb, Head)]


def test_a_range_down_to_never_runs_off_the_line() -> None:
    late = Estimate(value=-12.0, low=-480.0, high=3.0, unit="s")
    line = range_line(late, key="a", description="", horizon_s=480.0)
    assert [verb for _, verb in line.own.strokes if isinstance(verb, Head)]
    (point,) = [verb for _, verb in line.own.strokes if isinstance(verb, Circle)]
    assert point.centre[0] > 20.0
    plain = range_line(late, key="a", description="")
    assert not [verb for _, verb in plain.own.strokes if isinstance(verb, Head)]
