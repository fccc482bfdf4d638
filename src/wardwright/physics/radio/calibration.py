"""What a few readings on site teach about a house's radio: a Bayesian update of a linear model.

The model of a level is ``known - row . unknowns + shadow``. The unknowns are one offset for the site and one
correction for each class of wall; each link has a shadow of its own.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray


class Belief(NamedTuple):
    """What is believed of the K unknowns: a normal distribution."""

    mean: FloatArray
    """Shape (K,). [dB]"""
    spread: FloatArray
    """Covariance, shape (K, K), in squared decibels. [-]"""


class Learned(NamedTuple):
    """What is believed after R readings."""

    belief: Belief
    """Of the K unknowns."""
    shadows: FloatArray
    """Expected shadow of each link that was read, shape (R,). [dB]"""
    joint: FloatArray
    """Covariance of the K unknowns and the R shadows together, shape (K + R, K + R), in squared decibels. [-]"""


def learned(
    belief: Belief, rows: FloatArray, misses: FloatArray, *, shadowing: FloatArray, reading: float
) -> Learned:
    """Update what is believed by readings.

    Parameters
    ----------
    belief : Belief
        Before them. [dB]
    rows : ndarray, shape (R, K)
        How many times each unknown is in the loss of each link that was read. [-]
    misses : ndarray, shape (R,)
        Each reading less what is known of its level: minus the row times the unknowns, plus the shadow. [dB]
    shadowing : ndarray, shape (R,)
        Standard deviation of each link's shadow. [dB]
    reading : float
        Standard deviation of one reading about what a longer one would give. [dB]

    Returns
    -------
    Learned
        The unknowns and the shadows after them. [dB]

    References
    ----------
    .. [1] A. Gelman and others, "Bayesian Data Analysis", 3rd edition, chapter 14: linear models with a normal prior.
    """
    known, many = len(belief.mean), len(misses)
    before = np.zeros((known + many, known + many))
    before[:known, :known] = belief.spread
    before[known:, known:] = np.diag(shadowing**2)
    seen = np.hstack([-rows, np.eye(many)])
    scatter = seen @ before @ seen.T + reading**2 * np.eye(many)
    gain = np.linalg.solve(scatter, seen @ before).T
    mean = np.concatenate([belief.mean, np.zeros(many)])
    mean = mean + gain @ (misses - seen @ mean)
    after = before - gain @ seen @ before
    after = (after + after.T) / 2.0
    return Learned(Belief(mean[:known], after[:known, :known]), mean[known:], after)


def teaching(belief: Belief, rows: FloatArray, *, shadowing: FloatArray, reading: float) -> FloatArray:
    """How much one more reading of each link would narrow all links together.

    Parameters
    ----------
    belief : Belief
        What is believed now. [dB]
    rows : ndarray, shape (L, K)
        How many times each unknown is in the loss of each link. [-]
    shadowing : ndarray, shape (L,)
        Standard deviation of each link's shadow as it is known now. [dB]
    reading : float
        Standard deviation of one reading. [dB]

    Returns
    -------
    ndarray, shape (L,)
        Squared decibels taken off the variance of all links together by reading that one. [-]
    """
    shared = rows @ belief.spread @ rows.T
    own = shadowing**2
    scatter = np.diag(shared) + own + reading**2
    together = shared + np.diag(own)
    return np.asarray((together**2).sum(axis=0) / scatter, dtype=np.float64)
