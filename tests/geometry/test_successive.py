"""Ways whose hardest step is the least hard."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.geometry.successive import easiest_ways, hardest_steps

INF = np.inf


def test_two_easy_steps_come_before_a_hard_one() -> None:
    """Floor, chair of 0.45 m, shelf of 1.4 m: by the chair the hardest jump is 0.95 m, straight up it is 1.4 m."""
    steps = np.array([[0.0, 0.45, 1.4], [0.0, 0.0, 0.95], [0.0, 0.0, 0.0]])
    found = easiest_ways(steps, np.array([0.0, INF, INF]))
    assert found.hardest.tolist() == [0.0, 0.45, 0.95]
    assert found.way_to(2) == (0, 1, 2)


def test_of_ways_as_hard_the_one_of_fewer_steps() -> None:
    steps = np.array([[0.0, 1.0, 1.0], [INF, 0.0, 0.5], [INF, INF, 0.0]])
    assert easiest_ways(steps, np.array([0.0, INF, INF])).way_to(2) == (0, 2)


def test_where_no_way_leads() -> None:
    steps = np.array([[0.0, INF], [0.0, 0.0]])
    found = easiest_ways(steps, np.array([0.0, INF]))
    assert found.hardest.tolist() == [0.0, INF]
    assert found.way_to(1) == (1,)


def test_a_start_may_be_hard_itself() -> None:
    steps = np.array([[0.0, 0.1], [0.1, 0.0]])
    assert easiest_ways(steps, np.array([0.7, INF])).hardest.tolist() == [0.7, 0.7]


@pytest.mark.parametrize("count", [0, 1])
def test_few_places(count: int) -> None:
    assert easiest_ways(np.zeros((count, count)), np.zeros(count)).hardest.tolist() == [0.0] * count


@given(st.lists(st.floats(0.0, 3.0), min_size=25, max_size=25), st.permutations(range(5)))
def test_the_order_of_places_changes_no_number_and_no_way_is_easier(
    values: list[float], order: list[int]
) -> None:
    steps = np.array(values).reshape(5, 5)
    starts = np.array([0.0, INF, INF, INF, INF])
    hardest = easiest_ways(steps, starts).hardest
    turned = easiest_ways(steps[np.ix_(order, order)], starts[order]).hardest
    assert turned.tolist() == hardest[order].tolist()
    assert hardest_steps(steps[None], starts)[0].tolist() == hardest.tolist()
    # Against every step: no place is easier by one more.
    assert (hardest <= np.maximum(hardest[:, None], steps).min(axis=0) + 1e-12).all()
