import hypothesis
import numpy as np
import pytest
from hypothesis import strategies as st

from wardwright.physics.radio.calibration import Belief, learned, teaching

BEFORE = Belief(np.array([5.0, 0.0, 0.0]), np.diag([4.0**2, 1.5**2, 3.0**2]))


def test_one_reading_is_weighed_by_its_own_spread() -> None:
    # One unknown, one reading: the textbook's mean of two normal curves.
    before = Belief(np.array([0.0]), np.array([[4.0]]))
    after = learned(
        before, np.array([[1.0]]), np.array([-6.0]), shadowing=np.array([1.0]), reading=np.sqrt(3.0)
    )
    assert after.belief.mean[0] == pytest.approx(6.0 * 4.0 / (4.0 + 4.0))
    assert after.belief.spread[0, 0] == pytest.approx(4.0 - 16.0 / 8.0)
    assert after.shadows[0] == pytest.approx(-6.0 / 8.0)


def test_many_exact_readings_find_the_truth() -> None:
    rng = np.random.default_rng(3)
    truth = np.array([11.0, 2.0, -1.0])
    rows = np.column_stack([np.ones(400), rng.integers(0, 4, (400, 2))])
    misses = -rows @ truth + rng.normal(0, 1.0, 400)
    after = learned(BEFORE, rows, misses, shadowing=np.full(400, 1.0), reading=0.5)
    assert after.belief.mean == pytest.approx(truth, abs=0.25)


@hypothesis.given(
    rows=st.lists(st.tuples(st.just(1.0), st.floats(0, 4), st.floats(0, 4)), min_size=1, max_size=5),
    miss=st.floats(-30, 10),
)
def test_a_reading_never_widens_what_is_believed(rows: list[tuple[float, ...]], miss: float) -> None:
    made = np.array(rows)
    after = learned(BEFORE, made, np.full(len(made), miss), shadowing=np.full(len(made), 7.0), reading=3.0)
    narrowed = np.linalg.eigvalsh(BEFORE.spread - after.belief.spread)
    assert narrowed.min() > -1e-9
    assert np.linalg.eigvalsh(after.joint).min() > -1e-9


def test_the_order_of_readings_does_not_matter() -> None:
    rows = np.array([[1.0, 2.0, 0.0], [1.0, 0.0, 1.0]])
    misses = np.array([-8.0, -2.0])
    both = learned(BEFORE, rows, misses, shadowing=np.array([7.0, 7.0]), reading=3.0)
    turned = learned(BEFORE, rows[::-1], misses[::-1], shadowing=np.array([7.0, 7.0]), reading=3.0)
    assert both.belief.mean == pytest.approx(turned.belief.mean)


def test_the_path_through_the_most_that_is_unsure_teaches_most() -> None:
    rows = np.array([[1.0, 0.0, 0.0], [1.0, 0.0, 2.0], [1.0, 0.0, 2.0]])
    gains = teaching(BEFORE, rows, shadowing=np.full(3, 7.0), reading=3.0)
    assert gains[1] > gains[0]
    # What was read already, and so has no shadow left to learn, teaches less.
    again = teaching(BEFORE, rows, shadowing=np.array([7.0, 0.5, 7.0]), reading=3.0)
    assert again[1] < gains[1]


def test_what_teaching_foretells_comes_true() -> None:
    rows = np.array([[1.0, 1.0, 0.0], [1.0, 0.0, 2.0]])
    shadowing = np.array([7.0, 6.0])
    told = teaching(BEFORE, rows, shadowing=shadowing, reading=3.0)[0]
    after = learned(BEFORE, rows[:1], np.array([-9.0]), shadowing=shadowing[:1], reading=3.0)
    k = len(BEFORE.mean)
    own = np.hstack([-rows[:1], np.eye(1)])
    variances_before = np.diag(rows @ BEFORE.spread @ rows.T) + shadowing**2
    variances_after = np.array(
        [
            (own @ after.joint @ own.T).item(),
            (rows[1] @ after.joint[:k, :k] @ rows[1]) + shadowing[1] ** 2,
        ]
    )
    assert told == pytest.approx((variances_before - variances_after).sum())
