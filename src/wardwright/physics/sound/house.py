"""A house as arrays for sound: what each room swallows, what joins rooms, and what lets sound out.

Octave bands are the six of ``bands.BANDS_HZ``. Every uncertain input is a case: the likely one first, then each
input at its low and at its high with the others as they are likely, so that one set of arrays gives a level with
its range.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wardwright.geometry.raster import FloatArray
from wardwright.physics.sound.network import answering

AJAR_SHARE = math.sin(math.radians(10.0))
"""The share of its opening that a leaf ajar leaves free: turned by 10 degrees. [-] (assumption)"""
MOST_MEAN = 0.9
"""The mean absorption of a room is never taken to be more. [-] (assumption: no home is an anechoic chamber)"""
OUTSIDE = -1
"""Stands for the open air where the number of a room is asked for."""

IntArray = NDArray[np.int64]


class Case(NamedTuple):
    """One set of values of the uncertain inputs."""

    field_loss: float
    """How much less an element keeps back than in a laboratory. [dB]"""
    door_gap: float
    """Under an inside door. [m]"""
    furnishing: float
    """What rooms swallow, as a share of the usual. [-]"""
    unknown_walls: int = 1
    """0, 1, 2: what is not known is the lightest, the likely, the heaviest. [-]"""


class Rooms(NamedTuple):
    """The rooms, N of them."""

    volume: FloatArray
    """Shape (N,). [m3]"""
    surface: FloatArray
    """Shape (N,). [m2]"""
    swallowing: FloatArray
    """Equivalent absorption area of all surfaces and furnishing, shape (N, F). [m2]"""
    of_the_air: FloatArray
    """The same of the air, shape (N, F). [m2]"""


class Elements(NamedTuple):
    """Walls and floors, K of them."""

    one: IntArray
    """Number of the room on one side, shape (K,). [-]"""
    other: IntArray
    """The same on the other; ``OUTSIDE`` for the open air. [-]"""
    area: FloatArray
    """Shape (K,). [m2]"""
    loss: FloatArray
    """By lightest, likely and heaviest make, shape (3, K, F). [dB]"""


class Leaves(NamedTuple):
    """Doors, windows, gaps and wells, L of them."""

    one: IntArray
    other: IntArray
    area: FloatArray
    """Shape (L,). [m2]"""
    loss: FloatArray
    """Shut, shape (L, F). [dB]"""
    gap_width: FloatArray
    """Of the gap under it when shut; 0: it shuts tight. Shape (L,). [m]"""


@dataclass(frozen=True, eq=False)
class House:
    """All that sound meets in a house; it stands for itself as a key of memories."""

    rooms: Rooms
    walls: Elements
    leaves: Leaves


@dataclass(frozen=True, eq=False)
class Balance:
    """A house with its leaves in one state: what each room hears of each, in every case."""

    heard: FloatArray
    """As `network.answering` gives it, shape (C, F, N, N). [m-2]"""
    left_over: FloatArray
    """The share of a source's power that is left after its room's walls, shape (C, F, N). [-]"""
    walls_through: FloatArray
    """Area times share let through of each wall, shape (C, F, K). [m2]"""
    leaves_through: FloatArray
    """The same of each leaf, shape (C, F, L). [m2]"""


def open_shares(states: tuple[str, ...]) -> FloatArray:
    """How much of each leaf's opening is free.

    Parameters
    ----------
    states : tuple of str
        ``shut``, ``ajar`` or ``open``, one for each leaf.

    Returns
    -------
    ndarray, shape (L,)
        Gaps under doors left out. [-]
    """
    return np.array([{"shut": 0.0, "ajar": AJAR_SHARE, "open": 1.0}[state] for state in states])


def balance_of(house: House, open_share: FloatArray, cases: tuple[Case, ...]) -> Balance:
    """Let sound settle in a house, whatever sounds in it.

    What a room swallows does not hang on how its doors stand: an open leaf swallows in its room as a shut one does.

    Parameters
    ----------
    house : House
        The house.
    open_share : ndarray, shape (L,)
        How much of each leaf's opening is free. [-]
    cases : tuple of Case
        The likely one first.

    Returns
    -------
    Balance
        For all cases and bands.
    """
    rooms = house.rooms
    count, bands = rooms.swallowing.shape
    shape = (len(cases), bands, count)
    swallowed = np.empty(shape)
    for index, case in enumerate(cases):
        swallowed[index] = (case.furnishing * rooms.swallowing + rooms.of_the_air).T
    left_over = 1.0 - np.minimum(swallowed / rooms.surface, MOST_MEAN)
    walls = np.stack([_through_walls(house.walls, case) for case in cases])
    leaves = np.stack([_through_leaves(house.leaves, open_share, case) for case in cases])
    joined = np.zeros((*shape, count))
    for through, one, other in (
        (walls, house.walls.one, house.walls.other),
        (leaves, house.leaves.one, house.leaves.other),
    ):
        # Rows of ones where an element has a room on that side; the open air has no column.
        first, second = (
            np.asarray(side[:, None] == np.arange(count), dtype=np.float64) for side in (one, other)
        )
        between = (first.T * through[..., None, :]) @ second
        joined += between + between.swapaxes(-1, -2)
        swallowed += (through * (other == OUTSIDE)) @ first
    return Balance(answering(swallowed, joined), left_over, walls, leaves)


def _through_walls(walls: Elements, case: Case) -> FloatArray:
    loss = np.maximum(walls.loss[case.unknown_walls] - case.field_loss, 0.0)
    return np.asarray((walls.area[:, None] * 10.0 ** (-loss / 10.0)).T)


def _through_leaves(leaves: Leaves, open_share: FloatArray, case: Case) -> FloatArray:
    gap = np.minimum(leaves.gap_width * case.door_gap, leaves.area)
    free = np.maximum(leaves.area * open_share, gap)
    loss = np.maximum(leaves.loss - case.field_loss, 0.0)
    shut = (leaves.area - free)[:, None] * 10.0 ** (-loss / 10.0)
    return np.asarray((free[:, None] + shut).T)
