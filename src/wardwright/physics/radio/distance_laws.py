"""Laws of how a level falls with distance, walls and floors: functions with the same arguments, chosen by a table."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple, Protocol

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray
from wardwright.physics.radio.free_space import free_space_loss


class LawFigures(NamedTuple):
    """The numbers that a law is fitted with; each law says which of them it reads."""

    slope: float = 20.0
    """For each tenfold distance. [dB]"""
    at_one: float = 0.0
    """At 1 m and 1 GHz, or a constant of the law. [dB]"""
    by_frequency: float = 20.0
    """For each tenfold frequency. [dB]"""
    floors: tuple[float, ...] = ()
    """Loss of the first floor, or through one, two, three floors. [dB]"""
    bend: float = 0.46
    """How much less each further floor takes. [-]"""


class DistanceLaw(Protocol):
    """What every law is: the loss of N paths."""

    def __call__(
        self,
        distance: ArrayLike,
        frequency: float,
        *,
        walls: ArrayLike,
        floors: ArrayLike,
        figures: LawFigures,
    ) -> FloatArray:
        """Loss of each path. [dB]"""


def cost_231(
    distance: ArrayLike, frequency: float, *, walls: ArrayLike, floors: ArrayLike, figures: LawFigures
) -> FloatArray:
    """Free space, a constant, the walls one by one, and floors of which each further one takes less.

    Parameters
    ----------
    distance : array_like, shape (N,)
        Straight distance. [m]
    frequency : float
        Carrier frequency. [Hz]
    walls : array_like, shape (N,)
        What all walls on each path take together. [dB]
    floors : array_like, shape (N,)
        How many floors each path goes through. [-]
    figures : LawFigures
        Its constant, the loss of the first floor, and the bend.

    Returns
    -------
    ndarray, shape (N,)
        Loss. [dB]

    References
    ----------
    .. [1] COST Action 231, "Digital mobile radio towards future generation systems", final report, 1999, section 4.7:
       the multi-wall model, fitted at 1800 MHz in offices.
    """
    count = np.asarray(floors, dtype=np.float64)
    each = figures.floors[0] if figures.floors else 0.0
    bent = floor_factor(count, bend=figures.bend)
    taken = np.asarray(walls, dtype=np.float64) + bent * each
    return np.asarray(free_space_loss(distance, frequency) + figures.at_one + taken, dtype=np.float64)


def floor_factor(floors: ArrayLike, *, bend: float = 0.46) -> FloatArray:
    """How many times the first floor's loss several floors take.

    Parameters
    ----------
    floors : array_like, shape (...)
        How many there are. [-]
    bend : float, default 0.46
        How much less each further one takes. [-]

    Returns
    -------
    ndarray, shape (...)
        0 for none, 1 for one. [-]

    Examples
    --------
    >>> floor_factor([0, 1, 2]).round(3).tolist()
    [0.0, 1.0, 1.832]
    """
    count = np.asarray(floors, dtype=np.float64)
    some = np.maximum(count, 1.0)
    return np.where(count > 0.0, some ** ((some + 2.0) / (some + 1.0) - bend), 0.0)


def p1238_legacy(
    distance: ArrayLike, frequency: float, *, walls: ArrayLike, floors: ArrayLike, figures: LawFigures
) -> FloatArray:
    """The power law of the older editions: walls are inside its slope, floors are a table.

    Parameters
    ----------
    distance : array_like, shape (N,)
        Straight distance, above 1 m. [m]
    frequency : float
        Carrier frequency. [Hz]
    walls : array_like, shape (N,)
        Not read: the slope holds them. [dB]
    floors : array_like, shape (N,)
        How many floors each path goes through; beyond the table its last row counts. [-]
    figures : LawFigures
        Its slope, and the loss through one, two, three floors.

    Returns
    -------
    ndarray, shape (N,)
        Loss. [dB]

    References
    ----------
    .. [1] Recommendation ITU-R P.1238-9, "Propagation data and prediction methods for the planning of indoor
       radiocommunication systems", equation 1.
    """
    del walls
    table = np.array([0.0, *figures.floors])
    count = np.minimum(np.asarray(floors, dtype=np.int64), len(table) - 1)
    spread = figures.slope * np.log10(np.asarray(distance, dtype=np.float64))
    return np.asarray(20.0 * np.log10(frequency / 1e6) + spread + table[count] - 28.0, dtype=np.float64)


def p1238_site_general(
    distance: ArrayLike, frequency: float, *, walls: ArrayLike, floors: ArrayLike, figures: LawFigures
) -> FloatArray:
    """The site-general form of the newer editions: slope, level at 1 m and 1 GHz, power of the frequency.

    Parameters
    ----------
    distance : array_like, shape (N,)
        Straight distance. [m]
    frequency : float
        Carrier frequency; the law means it in GHz. [Hz]
    walls : array_like, shape (N,)
        Not read: the slope holds them. [dB]
    floors : array_like, shape (N,)
        Not read: the law holds for one storey. [-]
    figures : LawFigures
        Its slope, what it takes at 1 m and 1 GHz, and its power of the frequency.

    Returns
    -------
    ndarray, shape (N,)
        Median loss. [dB]

    References
    ----------
    .. [1] Recommendation ITU-R P.1238-11, section 3.1.
    """
    del walls, floors
    spread = figures.slope * np.log10(np.asarray(distance, dtype=np.float64))
    rise = figures.by_frequency * np.log10(frequency / 1e9)
    return np.asarray(spread + figures.at_one + rise, dtype=np.float64)


LAWS: Mapping[str, DistanceLaw] = MappingProxyType(
    {"cost-231": cost_231, "p1238-legacy": p1238_legacy, "p1238-site-general": p1238_site_general}
)
"""Every law by the name that a row of the catalogue's distance laws gives."""
