"""Floors of all storeys stacked in one array, apart from one another, so that one pass goes over all of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray, Grid, IntArray

Floors = Mapping[str, BoolArray]
"""Storey -> cells, on the grids of the time maps they go with."""


@dataclass(frozen=True, eq=False)
class Stack:
    """Where the cells of each storey lie in the stack; one object for a house."""

    shape: tuple[int, int]
    parts: Mapping[str, tuple[slice, slice]]
    """Storey -> its rows and columns."""


def stack_for(grids: Mapping[str, Grid]) -> Stack:
    """Stack storeys in the order of their ids, with a blank row after each."""
    parts, used = {}, 0
    for storey, grid in sorted(grids.items()):
        parts[storey] = (slice(used, used + grid.ny), slice(0, grid.nx))
        used += grid.ny + 1
    return Stack((used, max((grid.nx for grid in grids.values()), default=0)), parts)


class StackedFloors(Mapping[str, BoolArray]):
    """Floors that are kept in one stack.

    Parameters
    ----------
    stack : Stack
        Where the storeys lie.
    cells : ndarray of bool
        All cells; none of those between the storeys is True.
    """

    def __init__(self, stack: Stack, cells: BoolArray) -> None:
        self.stack = stack
        self.cells = cells

    # What is worked out over some floors is remembered by the object: see `one_of`.
    __eq__ = object.__eq__
    __hash__ = object.__hash__

    def __getitem__(self, storey: str) -> BoolArray:
        """The cells of one storey."""
        return self.cells[self.stack.parts[storey]]

    def __iter__(self) -> Iterator[str]:
        """The storeys."""
        return iter(self.stack.parts)

    def __len__(self) -> int:
        """How many storeys there are."""
        return len(self.stack.parts)


def stacked(stack: Stack, floors: Floors) -> StackedFloors:
    """Copy floors into a stack; storeys that are left out have no cells."""
    cells: BoolArray = np.zeros(stack.shape, dtype=np.bool_)
    for storey, mask in floors.items():
        cells[stack.parts[storey]] = mask
    return StackedFloors(stack, cells)


def one_of(floors: StackedFloors) -> StackedFloors:
    """The same cells as one object for all floors that have them, so that it is known again; not to be written to."""
    return _one_of(floors.stack, floors.cells.tobytes())


@lru_cache(maxsize=512)
def _one_of(stack: Stack, cells: bytes) -> StackedFloors:
    return StackedFloors(stack, np.frombuffer(cells, dtype=np.bool_).reshape(stack.shape))


class Distances(NamedTuple):
    """Distances to cells of a stack, the farthest cell first, so that the first True one is the answer."""

    cells: IntArray
    """Which cells, row by row. [-]"""
    metres: FloatArray
    """How far off each is. [m]"""


def distances_of(metres: FloatArray, known: BoolArray) -> Distances:
    """Order the cells whose distances are known."""
    cells = np.nonzero(known.ravel())[0]
    order = np.argsort(-metres.ravel()[cells], kind="stable")
    return Distances(cells[order], metres.ravel()[cells[order]])


def farthest(distances: Distances, floors: StackedFloors) -> float:
    """The largest distance over the True cells; 0 where none is known. [m]"""
    is_in = floors.cells.ravel()[distances.cells]
    first = int(is_in.argmax()) if is_in.size else 0
    return float(distances.metres[first]) if is_in.size and is_in[first] else 0.0
