"""The interruption estimate: its variants, what always holds, and a drawing of lots that knows no formula."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from accuracy import interruption as published
from wardwright.trials.interruption import (
    AT_END,
    AT_START,
    IN_THE_MIDDLE,
    Response,
    Tasks,
    first_detected,
    in_time,
    interruption,
    last_timely,
    remaining,
    timely_detection,
)

CHANCE = st.floats(0.0, 1.0)
TIME = st.floats(0.0, 600.0)
PLACES = st.sampled_from((AT_START, IN_THE_MIDDLE, AT_END))


@st.composite
def _paths(draw: st.DrawFn) -> tuple[Tasks, Response]:
    n = draw(st.integers(1, 7))
    columns = [draw(st.lists(one, min_size=n, max_size=n)) for one in (CHANCE, TIME, TIME, PLACES)]
    return Tasks(*columns), Response(draw(TIME), draw(TIME))


@pytest.mark.parametrize("case", published.VARIANTS, ids=lambda case: case[0])
def test_every_variant_to_six_digits(case: tuple[str, Tasks, Response, float, float]) -> None:
    """The values that were reckoned apart."""
    _, tasks, response, told, expected = case
    assert float(interruption(tasks, response, communication=told)) == pytest.approx(expected, abs=5e-7)


@pytest.mark.parametrize("case", published.VARIANTS, ids=lambda case: case[0])
def test_lots_drawn_agree_with_the_closed_form(case: tuple[str, Tasks, Response, float, float]) -> None:
    """400 000 intruders that walk task by task and know no formula, within 4 standard errors."""
    _, tasks, response, told, _ = case
    count, rng = 400_000, np.random.default_rng(20_260_101)
    columns = [np.asarray(one, dtype=float) for one in tasks]
    n = len(columns[0])
    detection, delay, spread, left = columns
    times = delay + spread * rng.standard_normal((count, n))
    is_seen = rng.random((count, n)) < detection
    first = np.where(is_seen.any(axis=1), is_seen.argmax(axis=1), n)
    later = np.where(np.arange(n) > first[:, None], times, 0.0).sum(axis=1)
    own = np.take_along_axis(times, np.minimum(first, n - 1)[:, None], axis=1)[:, 0]
    hand = later + left[np.minimum(first, n - 1)] * own
    answer = float(response.mean) + float(response.spread) * rng.standard_normal(count)  # type: ignore[arg-type]
    met = (first < n) & (rng.random(count) < told) & (hand > answer)
    expected = float(interruption(tasks, response, communication=told))
    assert abs(met.mean() - expected) < 4.0 * math.sqrt(expected * (1.0 - expected) / count)


def test_no_spread_is_exact() -> None:
    """0.9 x 0.95: whoever is missed at the first door is detected too late."""
    assert float(interruption(*published.NO_SPREAD, communication=0.95)) == pytest.approx(0.855, abs=1e-12)


def test_the_logistic_stand_in_would_be_seen() -> None:
    """1 / (1 + exp(-1.7 z)) in the place of the normal curve gives 0.478."""
    mean, variance = remaining(published.TASKS)
    z = (mean - 300.0) / np.sqrt(variance + 90.0**2)
    wrong = 0.95 * float((first_detected(published.DETECTION) / (1.0 + np.exp(-1.7 * z))).sum())
    assert wrong == pytest.approx(0.478, abs=5e-4)
    assert abs(wrong - 0.476041) > 1e-3


@given(_paths(), CHANCE)
def test_never_more_than_detected_and_told(path: tuple[Tasks, Response], told: float) -> None:
    """The estimate is at most the chance to be detected at all, times the chance that it is told."""
    tasks, response = path
    at_all = 1.0 - np.prod(1.0 - np.asarray(tasks.detection))
    found = float(interruption(tasks, response, communication=told))
    assert -1e-12 <= found <= told * at_all + 1e-12


@given(_paths(), TIME)
def test_a_longer_response_never_helps(path: tuple[Tasks, Response], longer: float) -> None:
    """With its spread held."""
    tasks, response = path
    slower = response._replace(mean=float(response.mean) + longer)  # type: ignore[arg-type]
    assert interruption(tasks, slower) <= interruption(tasks, response) + 1e-12


@given(_paths(), TIME, st.integers(0, 6))
def test_a_longer_delay_never_harms(path: tuple[Tasks, Response], longer: float, place: int) -> None:
    """With its spread held: a longer delay together with a larger spread may harm, and is not asserted."""
    tasks, response = path
    delay = np.array(tasks.delay, dtype=float)
    delay[place % len(delay)] += longer
    assert interruption(tasks._replace(delay=delay), response) >= interruption(tasks, response) - 1e-12


@given(_paths(), CHANCE)
def test_in_proportion_to_what_is_told(path: tuple[Tasks, Response], told: float) -> None:
    """Half of the detections told is half of the estimate."""
    whole = float(interruption(*path))
    assert float(interruption(*path, communication=told)) == pytest.approx(told * whole, abs=1e-12)


def test_a_sensor_moved_to_the_end_may_help() -> None:
    """Why the tempting property is not asserted: where time is ample, a spread that is over before counts no more."""
    ample = Tasks([1.0, 0.0], [10.0, 200.0], [200.0, 1.0], [AT_START, AT_START])
    response = Response(150.0, 1.0)
    late = ample._replace(left=[AT_END, AT_START])
    assert float(interruption(late, response)) > float(interruption(ample, response))


def test_a_longer_delay_with_a_spread_in_proportion_may_harm() -> None:
    """Why the other is not asserted either: 210 s are enough for 200 s, unless the last task may be much shorter."""
    ample = Tasks([1.0, 0.0], [110.0, 100.0], [1.0, 1.0], [AT_START, AT_START])
    response = Response(200.0, 1.0)
    longer = ample._replace(delay=[110.0, 110.0], spread=[1.0, 110.0])
    assert float(interruption(longer, response)) < float(interruption(ample, response))


def test_the_critical_detection_point() -> None:
    """The last task that leaves more time than the response takes; none; and the chance up to it."""
    assert last_timely(published.TASKS, published.RESPONSE) == 2
    assert last_timely(published.TASKS, Response(332.0, 0.0)) is None
    assert timely_detection(published.TASKS, Response(332.0, 0.0)) == 0.0
    assert timely_detection(published.TASKS, published.RESPONSE) == pytest.approx(0.9, abs=1e-12)


def test_many_paths_and_a_response_for_each_task() -> None:
    """Arrays of paths give each path's own estimate; a response may differ by task."""
    many = Tasks(np.array([published.DETECTION, (0.0,) * 6]), published.DELAY, published.SPREAD, AT_START)
    both = interruption(many, published.RESPONSE, communication=0.95)
    assert both.shape == (2,)
    assert both[0] == pytest.approx(0.476041, abs=5e-7)
    assert both[1] == 0.0
    each = Response(np.full(6, 300.0), np.full(6, 90.0))
    assert in_time(published.TASKS, each).tolist() == in_time(published.TASKS, published.RESPONSE).tolist()
