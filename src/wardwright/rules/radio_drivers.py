"""What moves the margin of a radio link, and by how much."""

from __future__ import annotations

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.estimate import Driver, driver_of
from wardwright.model.record import BASES, Basis
from wardwright.rules.radio_belief import Z_90, HouseRadio

OFFSETS = 2
"""The first unknowns are the offsets of the bands. [-]"""
LEAST_SWING_DB = 0.3
"""What moves a margin less is not named. [dB] (assumption)"""


def padded(radio: HouseRadio, row: FloatArray, *, read: int | None) -> FloatArray:
    """A row over all that is believed, the shadow of its own link counted where that was read."""
    found = np.zeros(len(radio.belief.mean))
    found[: len(row)] = row
    if read is not None:
        found[read] = -1.0
    return found


def drivers_of(
    catalogue: Catalogue, radio: HouseRadio, row: FloatArray, *, spread: float, noise: Figure, need: float
) -> tuple[tuple[Driver, ...], Basis]:
    """How far the margin moves when each input goes from its own low to its own high, largest first.

    What was read hangs together: a higher offset means a lesser shadow. Each input's swing is told with what
    hangs on it moving along.
    """
    known: Basis = "measured" if radio.read else "default"
    variances = np.diag(radio.belief.spread)
    together = radio.belief.spread @ row
    moved = np.divide(np.abs(together), np.sqrt(variances), out=np.zeros(len(row)), where=variances > 0.0)
    swings = [(2.0 * Z_90 * spread, "shadowing of this path", known)]
    words = ["what mounting and aerials take here"] * OFFSETS
    words += [f"what a {one.name} takes" for one in catalogue.wall_losses]
    words += ["shadowing of this path"] * radio.read
    for name, times, by in zip(words, row.tolist(), moved.tolist(), strict=True):
        swings.append((2.0 * Z_90 * by if times else 0.0, name, known))
    loudest, quietest = max(noise.high, need), max(noise.low, need)
    swings.append((loudest - quietest, "noise at the receiver", "default"))
    kept = sorted((one for one in swings if one[0] >= LEAST_SWING_DB), key=lambda one: (-one[0], one[1]))
    drivers = tuple(driver_of(name, swing, basis) for swing, name, basis in kept)
    weakest = max((BASES.index(one.basis) for one in drivers[:2]), default=0)
    return drivers, BASES[weakest]
