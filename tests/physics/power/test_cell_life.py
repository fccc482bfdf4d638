"""Lives of cells: what moves them, and which way."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from wardwright.physics.power.cell_life import average_current, cell_life, share_left, within_shelf_life

CAPACITY, CURRENT = st.floats(0.05, 20.0), st.floats(1e-7, 1e-3)


def test_pulses_of_several_kinds_add_up() -> None:
    both = average_current(1e-6, pulse=[0.02, 0.05], pulse_time=[0.1, 0.2], pulses=[10.0, 20.0])
    assert float(both) == 1e-6 + (0.02 * 0.1 * 10 + 0.05 * 0.2 * 20) / 86_400


def test_many_at_once_are_as_one_by_one() -> None:
    found = cell_life([1.0, 2.0], [1e-5, 2e-5], loss=0.01)
    assert found.tolist() == [float(cell_life(1.0, 1e-5, loss=0.01)), float(cell_life(2.0, 2e-5, loss=0.01))]


def test_a_cell_that_nothing_is_drawn_from_still_ends() -> None:
    assert float(cell_life(1.0, 0.0, loss=0.01)) == 85.0
    assert np.isinf(cell_life(1.0, 0.0, loss=0.0))


@given(CAPACITY, CURRENT, st.floats(1.0, 5.0))
def test_drawing_more_never_lasts_longer(capacity: float, current: float, more: float) -> None:
    assert cell_life(capacity, current * more, loss=0.01) <= cell_life(capacity, current, loss=0.01)


@given(st.floats(-40.0, 40.0), st.floats(0.0, 20.0))
def test_colder_never_leaves_more(temperature: float, colder: float) -> None:
    points = [(-20.0, 0.25), (0.0, 0.75), (20.0, 1.0)]
    assert share_left(temperature - colder, points) <= share_left(temperature, points)


def test_no_life_is_longer_than_the_shelf() -> None:
    assert within_shelf_life([3.0, 30.0], 10.0).tolist() == [3.0, 10.0]
