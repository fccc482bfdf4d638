"""Shares of trials with their intervals, and spreads of times."""

from __future__ import annotations

import numpy as np
from scipy.special import betaincinv

from wardwright.geometry.raster import FloatArray
from wardwright.model.record import Record
from wardwright.trials.draws import percentiles

DOUBT = 0.05
"""How often an interval may miss the true share, both sides together. [-]"""


class Share(Record):
    """How often something happened in seeded trials."""

    count: int
    """Of the trials."""
    trials: int
    value: float | None
    """None: there were no trials. [-]"""
    low: float
    high: float
    """Exact binomial interval (Clopper and Pearson), 95 %. [-]"""


class Spread(Record):
    """When something happened in seeded trials, where it did."""

    name: str
    low_s: float | None
    """5th percentile; None: it never happened. [s]"""
    quarter_s: float | None
    """25th percentile. [s]"""
    middle_s: float | None
    three_quarters_s: float | None
    """75th percentile. [s]"""
    high_s: float | None
    """95th percentile. [s]"""
    never: Share
    """How often it did not happen while the intruder was in the house."""


def share_of(count: int, trials: int) -> Share:
    """Put an exact interval about a share.

    Parameters
    ----------
    count : int
        How often it happened. [-]
    trials : int
        In how many trials. [-]

    Returns
    -------
    Share
        With the interval of C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404-413: at least 95 %.

    Examples
    --------
    Ten of ten: the one-sided 97.5 % bound is 0.025 to the power of a tenth.

    >>> one = share_of(10, 10)
    >>> one.value, round(one.low, 4), one.high
    (1.0, 0.6915, 1.0)
    """
    if not trials:
        return Share(count=0, trials=0, value=None, low=0.0, high=1.0)
    low = float(betaincinv(count, trials - count + 1, DOUBT / 2.0)) if count else 0.0
    high = float(betaincinv(count + 1, trials - count, 1.0 - DOUBT / 2.0)) if count < trials else 1.0
    return Share(count=count, trials=trials, value=count / trials, low=low, high=high)


def spread_of(name: str, times: FloatArray) -> Spread:
    """Sum up when something happened.

    Parameters
    ----------
    name : str
        What.
    times : ndarray, shape (N,)
        Infinite where it never did. [s]

    Returns
    -------
    Spread
        Percentiles of the finite times.
    """
    some = np.sort(times[np.isfinite(times)])
    told = percentiles(some, (0.05, 0.25, 0.5, 0.75, 0.95)) if len(some) else (None,) * 5
    low, quarter, middle, three_quarters, high = told
    never = share_of(len(times) - len(some), len(times))
    return Spread(
        name=name,
        low_s=low,
        quarter_s=quarter,
        middle_s=middle,
        three_quarters_s=three_quarters,
        high_s=high,
        never=never,
    )
