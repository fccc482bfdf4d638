"""The floor that somebody can surely be unnoticed on, coming from one place.

A movement detector surely notices whoever has walked 1.5 m inside its low-side shape. From one way in, the shape can
only be entered from the floor that is reached from there; so its core is larger than for somebody who may turn up
anywhere, and what it parts is parted surely. The floor that is reached and the cores are found in turn until neither
changes: the least floor that is consistent.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

import numpy as np

from wardwright.geometry.raster import BoolArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.physics.detection.depth import core_cells
from wardwright.physics.walking.from_site import Spot
from wardwright.trials.barriers import (
    grids_of,
    regions_without,
    standing_cells,
    standing_floor,
    watched_floor,
)
from wardwright.trials.floors import Regions
from wardwright.trials.stacked_floors import Floors, StackedFloors

SEED_M = 0.35
"""About a start within a shape, cells this near count as where one turns up. [m] (derived here: a body and a cell)"""


class WatchedShape:
    """One storey's floor on which a detector surely notices after 1.5 m, and its cores by where one comes from.

    Parameters
    ----------
    house : Site
        The bare house.
    storey : str
        The storey.
    shape : ndarray of bool
        The floor.
    """

    def __init__(self, house: Site, storey: str, shape: BoolArray) -> None:
        self.storey = storey
        self.grid = grids_of(house)[storey]
        self._house = house
        self.shape = shape & standing_floor(house)[storey]
        self.outside = regions_without(house, [{storey: self.shape}])
        self._cores: dict[tuple[frozenset[int], Spot | None], BoolArray] = {}

    def holds(self, spot: Spot) -> bool:
        """Whether a spot lies in the shape."""
        if spot.storey != self.storey:
            return False
        at = standing_cells(self._house, spot)
        return bool(self.shape[at[:, 0], at[:, 1]].any())

    def core(self, sources: frozenset[int], seed: Spot | None) -> BoolArray:
        """The cells that nobody reaches without walking 1.5 m inside.

        Parameters
        ----------
        sources : frozenset of int
            Regions of the floor outside the shape that one may come from.
        seed : Spot, optional
            Where one turns up within the shape.

        Returns
        -------
        ndarray of bool, shape (ny, nx)
            The core.
        """
        key = (sources, seed)
        if key not in self._cores:
            entries = np.full(self.grid.shape, np.inf)
            if seed is not None:
                away = np.hypot(*np.moveaxis(self.grid.centres() - np.array([seed.x, seed.y]), -1, 0))
                entries = np.where(self.shape & (away <= SEED_M), away, np.inf)
            free = self.shape | self.outside.floors(sources)[self.storey]
            core = core_cells(self.shape, free, entries=entries, grid=self.grid)
            if not sources and seed is None:
                core = self.shape
            self._cores[key] = core
        return self._cores[key]


@lru_cache(maxsize=512)
def shape_of(house: Site, catalogue: Catalogue, device: Device) -> WatchedShape | None:
    """The shape of a movement detector; None where it watches no floor of ours."""
    for storey, mask in watched_floor(house, catalogue, device, side="likely").items():
        return WatchedShape(house, storey, mask)
    return None


_From = tuple[frozenset[int], Spot | None]
# Where one comes into a shape from: regions outside it, and where within it one turns up.


class GuardedFloor:
    """The floor of a house, some of it watched, and what can be reached on it from anywhere without being noticed.

    Parameters
    ----------
    house : Site
        The bare house.
    shapes : sequence of WatchedShape
        Floor where somebody is surely noticed after 1.5 m.
    closed : sequence of mapping of storey to ndarray of bool
        Floor where somebody is noticed at once, such as doorways with contacts.
    """

    def __init__(self, house: Site, shapes: Sequence[WatchedShape], *, closed: Sequence[Floors]) -> None:
        self._house = house
        self._shapes = shapes
        self._closed = closed
        self._regions: dict[tuple[_From, ...], Regions] = {}
        self._grown: dict[StackedFloors, tuple[frozenset[int], ...]] = {}

    def unnoticed_from(self, start: Spot) -> StackedFloors:
        """The floor that can be reached from a start without surely being noticed.

        Parameters
        ----------
        start : Spot
            Where somebody turns up.

        Returns
        -------
        StackedFloors
            The floor.
        """
        seeds = [start if one.holds(start) else None for one in self._shapes]
        sources: list[frozenset[int]] = [
            frozenset() if seed is not None else one.outside.regions_at(start)
            for one, seed in zip(self._shapes, seeds, strict=True)
        ]
        while True:
            regions = self._regions_from(tuple(zip(sources, seeds, strict=True)))
            floors = regions.floors(regions.regions_at(start))
            touched = self._touched_by(floors)
            grown = [source | more for source, more in zip(sources, touched, strict=True)]
            if grown == sources:
                return floors
            sources = grown

    def _regions_from(self, ways: tuple[_From, ...]) -> Regions:
        """What hangs together while each shape is come into in one way; most starts share them."""
        if ways not in self._regions:
            cores = [{one.storey: one.core(*way)} for one, way in zip(self._shapes, ways, strict=True)]
            self._regions[ways] = regions_without(self._house, [*self._closed, *cores])
        return self._regions[ways]

    def _touched_by(self, floors: StackedFloors) -> tuple[frozenset[int], ...]:
        """The regions outside each shape that share cells with some floor."""
        if floors not in self._grown:
            self._grown[floors] = tuple(one.outside.numbers_in(floors) for one in self._shapes)
        return self._grown[floors]
