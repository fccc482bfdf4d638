"""An answer is never a bare number: a value, its range, what moves it, and how that is known."""

from __future__ import annotations

from functools import lru_cache

from wardwright.model.record import Basis, Record


class Driver(Record):
    """One uncertain input and how far it moves an answer."""

    name: str
    """The input in trade words, such as `intruder's pace`."""
    swing: float
    """How far the answer moves when this input goes from its own low to its own high, others held; never
    negative, in the answer's unit."""
    basis: Basis
    """How the input is known."""


@lru_cache(maxsize=4096)
def driver_of(name: str, swing: float, basis: Basis) -> Driver:
    """One object for one driver: of those of new answers nearly all were drivers of the answers before.

    Parameters
    ----------
    name : str
        The input in trade words.
    swing : float
        How far the answer moves. [the answer's unit]
    basis : str
        How the input is known.

    Returns
    -------
    Driver
        The record.
    """
    return Driver(name=name, swing=swing, basis=basis)


class Estimate(Record):
    """A number with its range and its drivers."""

    value: float
    """With every input at its likely value."""
    low: float
    """The 5th percentile over seeded draws of every uncertain input."""
    high: float
    """The 95th percentile over the same draws."""
    unit: str
    """SI, as printed: `s`, `m`, `m2`, `-`."""
    drivers: tuple[Driver, ...] = ()
    """Largest swing first."""
    basis: Basis = "default"
    """The weakest basis among the two inputs that move it most."""
