"""Streams of chance, each keyed by what is drawn: by an id, never by a place in a list."""

from __future__ import annotations

import hashlib

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Figure
from wardwright.trials.draws import Z_95

LEAST_SHARE = 0.5
"""No draw lies under this share of its figure's low value. [-] (assumption)"""


class Streams:
    """One stream of chance for each key: what is drawn by one key hangs on no other, nor on any order.

    Parameters
    ----------
    seed : int
        The same seed gives the same draws.
    """

    def __init__(self, seed: int) -> None:
        self._seed = seed
        self._known: dict[str, np.random.Generator] = {}

    def stream(self, key: str) -> np.random.Generator:
        """The stream of one key, where the last block left it."""
        if key not in self._known:
            digest = hashlib.blake2b(f"campaign:{self._seed}:{key}".encode(), digest_size=16).digest()
            self._known[key] = np.random.default_rng(int.from_bytes(digest, "big"))
        return self._known[key]

    def even(self, key: str, count: int) -> FloatArray:
        """Evenly spread between 0 and 1. [-]"""
        return self.stream(key).random(count)

    def of(self, key: str, figure: Figure, count: int) -> FloatArray:
        """Values of an uncertain figure. [the figure's unit]"""
        z = self.stream(key).standard_normal(count) / Z_95
        z *= np.where(z > 0.0, figure.high - figure.value, figure.value - figure.low)
        z += figure.value
        return np.maximum(z, LEAST_SHARE * figure.low if figure.low > 0.0 else figure.low, out=z)
