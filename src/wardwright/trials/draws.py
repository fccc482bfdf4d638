"""Seeded draws of uncertain inputs, keyed by what they belong to, never by a position in a list."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from operator import itemgetter
from typing import NamedTuple

import numpy as np
from scipy.special import ndtri

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Figure
from wardwright.model.estimate import Estimate, driver_of
from wardwright.model.record import BASES, Basis

SEED = 20_260_101
"""One seed for all; another gives the same answers within sampling error."""
COUNT = 400
"""Draws for one answer."""
Z_95 = 1.6448536269514722
"""95th percentile of the standard normal distribution. [-]"""


class Input(NamedTuple):
    """One uncertain input of a trial."""

    key: str
    """What its draws hang on; draws of one key are shared by all trials."""
    name: str
    """In trade words."""
    figure: Figure
    basis: Basis

    @classmethod
    def of(cls, figure: Figure, basis: Basis = "default") -> Input:
        """A figure that is drawn under its own id and name."""
        return cls(figure.id, figure.name, figure, basis)


@lru_cache(maxsize=1024)
def _slices(key: str, *, seed: int, count: int) -> FloatArray:
    """Where each draw of a key lies, whatever the figure is; not to be written to. [spreads]"""
    digest = hashlib.blake2b(f"{seed}:{key}".encode(), digest_size=8).digest()
    shuffle = np.random.default_rng(int.from_bytes(digest, "big")).permutation(count)
    found: FloatArray = np.clip(ndtri((shuffle + 0.5) / count), -2.5, 2.5) / Z_95
    return found


@dataclass(frozen=True, eq=False)
class Cases:
    """Rows of inputs: the likely case, each input at its low and high, then the draws; one object for one list."""

    inputs: tuple[Input, ...]
    rows: Mapping[str, FloatArray]
    """Key of an input -> its value in every row."""
    total: int
    """How many rows there are."""


@lru_cache(maxsize=1024)
def draws_of(key: str, figure: Figure, *, seed: int, count: int) -> FloatArray:
    """Draw one input, one value from each of `count` equal slices of its distribution.

    The distribution is two halves of normal curves that meet at the likely value, with 5th and 95th percentile
    at the figure's low and high; it is cut at 2.5 spreads and never passes zero.

    Parameters
    ----------
    key : str
        What the draw belongs to: the same key and seed give the same draws.
    figure : Figure
        Likely value, low and high.
    seed : int
        Seed of all draws.
    count : int
        How many.

    Returns
    -------
    ndarray, shape (count,)
        The draws, shuffled; shared, not to be written to. [the figure's unit]
    """
    z = _slices(key, seed=seed, count=count)
    spread = np.where(z > 0, figure.high - figure.value, figure.value - figure.low)
    floor = min(figure.low, 0.25 * figure.value)
    found: FloatArray = np.maximum(figure.value + z * spread, floor)
    found.flags.writeable = False
    return found


@lru_cache(maxsize=1024)
def cases_of(inputs: tuple[Input, ...], *, seed: int = SEED, count: int = COUNT) -> Cases:
    """Lay out all rows for a trial: likely, each input low and high with the others likely, draws.

    Parameters
    ----------
    inputs : tuple of Input
        The uncertain inputs; keys that come twice are taken once.
    seed, count : int
        Of the draws.

    Returns
    -------
    Cases
        ``1 + 2 k + count`` rows for k inputs.
    """
    kept = tuple({one.key: one for one in inputs}.values())
    k = len(kept)
    total = 1 + 2 * k + count
    rows: dict[str, FloatArray] = {}
    for i, one in enumerate(kept):
        column = np.full(total, one.figure.value)
        column[1 + 2 * i] = one.figure.low
        column[2 + 2 * i] = one.figure.high
        column[1 + 2 * k :] = draws_of(one.key, one.figure, seed=seed, count=count)
        rows[one.key] = column
    return Cases(kept, rows, total)


def estimate_of(values: FloatArray, cases: Cases, *, unit: str) -> Estimate:
    """Sum up one quantity over all rows.

    Parameters
    ----------
    values : ndarray, shape (rows,)
        The quantity in each row of `cases`.
    cases : Cases
        The rows.
    unit : str
        Of the quantity.

    Returns
    -------
    Estimate
        Likely value; 5th and 95th percentile of the draws, widened to hold the likely value; the drivers.
    """
    k = len(cases.inputs)
    likely = float(values[0])
    low, high = percentiles(np.sort(values[1 + 2 * k :]), (0.05, 0.95))
    swings = np.abs(values[2 : 2 + 2 * k : 2] - values[1 : 1 + 2 * k : 2]).tolist()
    some = [(-swing, one.name, one) for swing, one in zip(swings, cases.inputs, strict=True) if swing > 1e-9]
    some.sort(key=itemgetter(0, 1))
    moving = tuple(driver_of(name, -swing, one.basis) for swing, name, one in some)
    weakest = max((BASES.index(driver.basis) for driver in moving[:2]), default=0)
    return Estimate(
        value=likely,
        low=min(low, likely),
        high=max(high, likely),
        unit=unit,
        drivers=moving,
        basis=BASES[weakest],
    )


def percentiles(ordered: FloatArray, shares: Sequence[float]) -> tuple[float, ...]:
    """Values that shares of some ordered values lie below, straight between neighbours."""
    last = len(ordered) - 1
    found = []
    for share in shares:
        below = int(share * last)
        above = min(below + 1, last)
        part = share * last - below
        found.append(float(ordered[below] * (1.0 - part) + ordered[above] * part))
    return tuple(found)


def share_met(values: FloatArray, cases: Cases) -> float:
    """Share of the draws in which a time in hand is above zero. [-]"""
    drawn = values[1 + 2 * len(cases.inputs) :]
    return float(np.count_nonzero(drawn > 0.0)) / max(1, drawn.size)
