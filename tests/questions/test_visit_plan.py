"""Visits: nobody's battery is left beyond its low end."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.questions.visit_plan import visit_plan

LIVES = st.dictionaries(st.sampled_from("abcdefgh"), st.floats(0.1, 20.0), min_size=1)


@given(LIVES, st.sampled_from([0.5, 1.0]))
def test_each_is_changed_within_its_low_end(lows: dict[str, float], interval: float) -> None:
    plan = visit_plan(lows, interval=interval)
    assert plan is not None
    for name, low in lows.items():
        assert plan.every[name] * plan.apart <= low + 1e-6


@given(LIVES, st.sampled_from([0.5, 1.0]))
def test_visits_are_whole_services_apart_where_lives_let(lows: dict[str, float], interval: float) -> None:
    plan = visit_plan(lows, interval=interval)
    assert plan is not None
    services = plan.apart / interval
    assert services < 1.0 or services == pytest.approx(round(services))


def test_lives_of_about_a_length_are_done_in_one_visit() -> None:
    plan = visit_plan({"a": 3.2, "b": 5.9}, interval=1.0)
    assert plan is not None
    assert plan.is_one_visit
    assert [visit.year for visit in plan.visits] == [3.0, 6.0, 9.0]


def test_a_long_life_is_passed_over_at_some_visits() -> None:
    plan = visit_plan({"a": 3.2, "b": 6.1}, interval=1.0)
    assert plan is not None
    assert not plan.is_one_visit
    assert [visit.devices for visit in plan.visits] == [("a",), ("a", "b"), ("a",)]


def test_a_battery_that_does_not_last_till_the_service_has_visits_of_its_own() -> None:
    plan = visit_plan({"a": 0.4}, interval=1.0)
    assert plan is not None
    assert plan.apart == 0.4


def test_nothing_to_change() -> None:
    assert visit_plan({}, interval=1.0) is None
