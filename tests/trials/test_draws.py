"""Draws hang on names, not on places in a list; estimates hold their quantiles."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from wardwright.model.catalogue import Figure
from wardwright.trials.draws import Input, cases_of, draws_of, estimate_of, share_met


def figure(value: float, low: float, high: float) -> Figure:
    return Figure(
        id="x", name="x", source="own", mark="assumption", value=value, low=low, high=high, unit="s"
    )


PACE = Input("pace", "pace", figure(2.5, 1.8, 3.2), "default")
DOOR = Input("door", "door", figure(1.0, 0.5, 1.5), "measured")


def test_quantiles_are_the_figures_own() -> None:
    drawn = np.array(draws_of("pace", PACE.figure, seed=1, count=4000))
    assert np.percentile(drawn, [5, 50, 95]) == pytest.approx([1.8, 2.5, 3.2], abs=0.01)


def test_a_symmetric_figure_draws_a_normal_curve() -> None:
    # Reference: scipy's normal distribution, spread from the 95th percentile; the tails are cut at 2.5 spreads.
    drawn = np.array(draws_of("pace", PACE.figure, seed=1, count=4000))
    spread = 0.7 / stats.norm.ppf(0.95)
    inner = drawn[np.abs(drawn - 2.5) < 2.4 * spread]
    reference = stats.truncnorm(-2.4, 2.4, loc=2.5, scale=spread)
    assert stats.kstest(inner, reference.cdf).pvalue > 0.05


def test_order_and_company_of_inputs_change_nothing() -> None:
    one, other = cases_of((PACE, DOOR)), cases_of((DOOR, PACE, PACE))
    assert one.rows["pace"][5:].tolist() == other.rows["pace"][5:].tolist()
    assert cases_of((PACE,)).rows["pace"][3:].tolist() == one.rows["pace"][5:].tolist()


def test_two_names_are_drawn_apart() -> None:
    same = Input("other", "other", PACE.figure, "default")
    cases = cases_of((PACE, same))
    assert abs(np.corrcoef(cases.rows["pace"][5:], cases.rows["other"][5:])[0, 1]) < 0.15


def test_estimate_ranks_its_drivers_and_takes_the_weaker_basis() -> None:
    cases = cases_of((PACE, DOOR))
    estimate = estimate_of(10.0 / cases.rows["pace"] + cases.rows["door"], cases, unit="s")
    assert estimate.value == pytest.approx(5.0)
    assert [driver.name for driver in estimate.drivers] == ["pace", "door"]
    assert estimate.drivers[0].swing == pytest.approx(10 / 1.8 - 10 / 3.2)
    assert estimate.drivers[1].swing == pytest.approx(1.0)
    assert estimate.basis == "default"
    assert estimate.low < 5.0 < estimate.high


def test_percentiles_agree_with_plain_random_draws() -> None:
    cases = cases_of((PACE, DOOR))
    estimate = estimate_of(10.0 / cases.rows["pace"] + cases.rows["door"], cases, unit="s")
    rng = np.random.default_rng(7)
    z = rng.standard_normal((2, 200_000)).clip(-2.5, 2.5) / stats.norm.ppf(0.95)
    plain = 10.0 / (2.5 + 0.7 * z[0]) + 1.0 + 0.5 * z[1]
    assert [estimate.low, estimate.high] == pytest.approx(np.percentile(plain, [5, 95]), abs=0.15)


def test_share_met_counts_draws_only() -> None:
    cases = cases_of((DOOR,))
    assert share_met(cases.rows["door"] - 1.0, cases) == pytest.approx(0.5, abs=0.01)
    assert share_met(cases.rows["door"] - 5.0, cases) == 0.0
