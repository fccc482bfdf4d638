"""Exact intervals of shares, and spreads of times."""

from __future__ import annotations

import math

import numpy as np
import pytest

from wardwright.trials.campaign.shares import share_of, spread_of


@pytest.mark.parametrize(("n", "bound"), [(10, 0.741), (20, 0.861), (29, 0.902), (30, 0.905), (59, 0.951)])
def test_the_one_sided_bound_of_n_of_n(n: int, bound: float) -> None:
    """All of n seen: 0.05 to the power of 1/n bounds 95 % on one side, so 0.025 bounds 97.5 %."""
    assert 0.05 ** (1.0 / n) == pytest.approx(bound, abs=6e-4)
    assert share_of(n, n).low == pytest.approx(0.025 ** (1.0 / n), rel=1e-9)
    assert share_of(n, n).high == 1.0


@pytest.mark.parametrize(("count", "n"), [(1, 7), (27, 30), (29, 30), (500, 1000)])
def test_the_ends_leave_a_fortieth_on_each_side(count: int, n: int) -> None:
    """Summed up term by term: so many or more at the low end, so many or fewer at the high end."""

    def tail(p: float, first: int, last: int) -> float:
        return sum(math.comb(n, k) * p**k * (1.0 - p) ** (n - k) for k in range(first, last + 1))

    found = share_of(count, n)
    assert tail(found.low, count, n) == pytest.approx(0.025, rel=1e-6)
    assert tail(found.high, 0, count) == pytest.approx(0.025, rel=1e-6)


def test_none_of_none_is_not_known() -> None:
    found = share_of(0, 0)
    assert found.value is None
    assert (found.low, found.high) == (0.0, 1.0)


def test_a_spread_leaves_out_what_never_happened() -> None:
    found = spread_of("notice", np.array([np.inf, *np.arange(101.0)]))
    assert (found.low_s, found.middle_s, found.high_s) == pytest.approx((5.0, 50.0, 95.0))
    assert found.never.count == 1
    never = spread_of("notice", np.full(3, np.inf))
    assert never.middle_s is None
    assert never.never.value == 1.0
