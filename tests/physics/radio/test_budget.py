import numpy as np
import pytest

from wardwright.physics.radio.budget import (
    COUNT,
    Links,
    drawn_unknowns,
    levels_over,
    low_and_high,
    margins_over,
    normal_draws,
)
from wardwright.physics.radio.calibration import Belief

PLAIN = Belief(np.array([5.0, 0.0]), np.diag([9.0, 4.0]))


def links(walls: float = 7.0, count: float = 1.0) -> Links:
    return Links(
        np.array([-60.0]), np.array([[1.0, count]]), np.array([walls]), np.zeros(1), np.array([7.0]),
        np.array([-100.0]),
    )  # fmt: skip


def test_draws_hang_on_their_key_alone_and_are_spread_as_they_say() -> None:
    one, other = normal_draws("hall"), normal_draws("kitchen")
    assert normal_draws("hall") is one
    assert one.shape == (COUNT,)
    assert one.std() == pytest.approx(1.0, abs=0.02)
    assert abs(np.corrcoef(one, other)[0, 1]) < 0.15


def test_drawn_unknowns_have_the_mean_and_spread_that_is_believed() -> None:
    tied = Belief(np.array([5.0, 1.0]), np.array([[9.0, -3.0], [-3.0, 4.0]]))
    drawn = drawn_unknowns(tied, ("offset", "brick"))
    assert drawn.mean(axis=0) == pytest.approx(tied.mean, abs=0.05)
    assert np.cov(drawn.T) == pytest.approx(tied.spread, abs=0.9)


def test_without_readings_each_unknown_hangs_on_its_own_draws() -> None:
    drawn = drawn_unknowns(PLAIN, ("offset", "brick"))
    assert drawn[:, 1] == pytest.approx(2.0 * normal_draws("brick"))


def test_a_level_is_what_arrives_less_offset_and_corrections() -> None:
    unknowns = np.array([[5.0, 1.0]])
    assert levels_over(links(), unknowns, shadows=np.array([[1.0]])).item() == pytest.approx(-60 - 5 - 1 + 7)


def test_walls_never_give_something() -> None:
    unknowns = np.array([[0.0, -50.0]])
    assert levels_over(links(walls=7.0), unknowns, shadows=np.zeros((1, 1))).item() == pytest.approx(-53.0)


def test_noise_counts_where_it_is_above_what_the_receiver_needs() -> None:
    levels = np.array([[-80.0, -80.0]])
    found = margins_over(levels, np.array([-100.0, -100.0]), noise=np.array([[-110.0, -90.0]]))
    assert found.tolist() == [[20.0, 10.0]]


def test_low_and_high_are_numpy_s_own_percentiles() -> None:
    draws = np.random.default_rng(2).normal(size=400)
    assert low_and_high(draws) == pytest.approx(np.percentile(draws, (5.0, 95.0)))
