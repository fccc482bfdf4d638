"""Levels and margins of links over seeded draws of all that is uncertain."""

from __future__ import annotations

import hashlib
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from scipy.special import ndtri

from wardwright.geometry.raster import FloatArray
from wardwright.physics.radio.calibration import Belief

SEED = 20_260_101
COUNT = 400
"""Draws for one answer."""
FARTHEST = 3.0
"""A draw is never farther out than so many standard deviations. [-]"""


class Links(NamedTuple):
    """L links, one way each."""

    known: FloatArray
    """Level that arrives when all unknowns are nought: power less free space and losses as judged. [dB re 1 mW]"""
    rows: FloatArray
    """How many times each of K unknowns is in each link's loss, (L, K). [-]"""
    walls: FloatArray
    """What walls, floors and bodies take of each as judged: no draw makes it less than nothing. [dB]"""
    shadow: FloatArray
    """Expected shadow of each. [dB]"""
    shadowing: FloatArray
    """Standard deviation of each shadow. [dB]"""
    need: FloatArray
    """The weakest signal that the receiver takes. [dB re 1 mW]"""


@lru_cache(maxsize=4096)
def normal_draws(key: str, *, count: int = COUNT, seed: int = SEED) -> FloatArray:
    """Draws of a standard normal distribution, one from each of equal slices of it, shuffled.

    Parameters
    ----------
    key : str
        What the draws belong to: the same key and seed give the same draws.
    count : int, default COUNT
        How many.
    seed : int, default SEED
        Of all draws.

    Returns
    -------
    ndarray, shape (count,)
        Not to be written to. [-]
    """
    digest = hashlib.blake2b(f"{seed}:{key}".encode(), digest_size=8).digest()
    shuffle = np.random.default_rng(int.from_bytes(digest, "big")).permutation(count)
    drawn = np.clip(ndtri((shuffle + 0.5) / count), -FARTHEST, FARTHEST)
    drawn.flags.writeable = False
    return np.asarray(drawn, dtype=np.float64)


def drawn_unknowns(belief: Belief, names: tuple[str, ...]) -> FloatArray:
    """Draws of the unknowns, correlated as they are believed to be.

    Parameters
    ----------
    belief : Belief
        Of the K unknowns. [dB]
    names : tuple of str
        What each one's draws hang on.

    Returns
    -------
    ndarray, shape (COUNT, K)
        One row for each draw. [dB]
    """
    values, vectors = np.linalg.eigh(belief.spread)
    # The root that stays near each unknown's own axis, so that without readings each hangs on its own draws alone.
    root = vectors @ np.diag(np.sqrt(np.maximum(values, 0.0))) @ vectors.T
    plain = np.stack([normal_draws(name) for name in names], axis=1)
    return np.asarray(belief.mean + plain @ root.T, dtype=np.float64)


def levels_over(links: Links, unknowns: FloatArray, *, shadows: FloatArray, offsets: int = 1) -> FloatArray:
    """The level of each link in each draw.

    Parameters
    ----------
    links : Links
        L links. [dB]
    unknowns : ndarray, shape (D, K)
        Draws of the unknowns, the site's offsets first. [dB]
    shadows : ndarray, shape (D, L)
        Draws of each link's shadow, in standard deviations. [-]
    offsets : int, default 1
        How many of the unknowns are offsets of the site, one for each band.

    Returns
    -------
    ndarray, shape (D, L)
        Levels that arrive. [dB re 1 mW]
    """
    offset = unknowns[:, :offsets] @ links.rows[:, :offsets].T
    more = np.maximum(unknowns[:, offsets:] @ links.rows[:, offsets:].T, -links.walls)
    return np.asarray(
        links.known - offset - more + links.shadow + shadows * links.shadowing, dtype=np.float64
    )


def margins_over(levels: FloatArray, need: FloatArray, *, noise: FloatArray) -> FloatArray:
    """How far each level is above what its receiver needs.

    Parameters
    ----------
    levels : ndarray, shape (D, L)
        Levels in each draw. [dB re 1 mW]
    need : ndarray, shape (L,)
        The weakest signal that each receiver takes. [dB re 1 mW]
    noise : ndarray, shape (D, L)
        Noise at each receiver in each draw: where it is above, it counts. [dB re 1 mW]

    Returns
    -------
    ndarray, shape (D, L)
        Margins. [dB]
    """
    return np.asarray(levels - np.maximum(need, noise), dtype=np.float64)


def low_and_high(draws: FloatArray) -> tuple[float, float]:
    """The 5th and the 95th percentile of some draws, straight between neighbours.

    Parameters
    ----------
    draws : ndarray, shape (D,)
        In any order. [dB]

    Returns
    -------
    tuple of float
        Both percentiles. [dB]
    """
    ordered, last = np.sort(draws), len(draws) - 1
    found = []
    for share in (0.05, 0.95):
        below = int(share * last)
        part = share * last - below
        above = min(below + 1, last)
        found.append(float(ordered[below] * (1.0 - part) + ordered[above] * part))
    return found[0], found[1]
