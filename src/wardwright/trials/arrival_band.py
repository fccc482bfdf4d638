"""The arrival band: floor that the household is on when it comes in and leaves, and what a detector sees of it."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.opening import LeafState, Opening
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.trials.barriers import grids_of
from wardwright.trials.leaves_between import (
    leaves_before,
    lines_to,
    looked_through,
    possible_floor,
    seen_past,
    states_of,
)
from wardwright.trials.stacked_floors import Floors
from wardwright.trials.stretches import floor_about, stretches_of
from wardwright.trials.trips import Trip, trips_to


class SeenBand(NamedTuple):
    """How much of the arrival band one detector possibly sees. [m2]"""

    usual: float
    """With the leaves as they usually stand when the house is set."""
    low: float
    high: float
    """With each leaf in that of its habitual states that lets least, and most, be seen."""
    ever: float
    """With every leaf open, habitual or not."""
    through: tuple[str, ...]
    """Doors that are looked through, the most looked through first."""
    storey: str | None
    """Where most of it is; None: nothing is seen."""
    is_from_elsewhere: bool
    """Whether the detector hangs in a room that no walk passes."""
    is_down_stairs: bool
    """Whether all of it is on another storey."""
    cells: Floors
    """The cells seen in any habitual state, on the house's own grids."""


NOTHING_SEEN = SeenBand(
    usual=0.0,
    low=0.0,
    high=0.0,
    ever=0.0,
    through=(),
    storey=None,
    is_from_elsewhere=False,
    is_down_stairs=False,
    cells={},
)


@lru_cache(maxsize=64)
def band_of(house: Site, catalogue: Catalogue, controls: tuple[Device, ...]) -> Floors:
    """The arrival band of all entry doors, by storey, on the house's own grids; not to be written to.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        For the pace that ways are chosen by.
    controls : tuple of Device
        The keypads, as `controls_of` gives them.

    Returns
    -------
    mapping of storey to ndarray of bool
        Floor about a walk (`floor_about`) on which somebody's middle can be, without going through another door.
    """
    found: dict[str, BoolArray] = {}
    for trip in trips_to(house, catalogue, controls):
        for stretch, _ in () if trip.route is None else stretches_of(house, trip.route):
            cells, storey = floor_about(house, stretch), stretch.storey
            found[storey] = found[storey] | cells if storey in found else cells
    return found


def doors_passed(trips: tuple[Trip, ...]) -> frozenset[str]:
    """Inside doors on the household's way; it opens those that are shut."""
    return frozenset(
        leg.subject
        for trip in trips
        if trip.route is not None
        for leg in trip.route.legs
        if leg.kind == "door" and leg.subject is not None
    )


@lru_cache(maxsize=512)
def seen_of_band(
    house: Site, catalogue: Catalogue, device: Device, *, controls: tuple[Device, ...]
) -> SeenBand:
    """How much of the arrival band a movement detector possibly sees.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        For its sheet.
    device : Device
        The detector.
    controls : tuple of Device
        The keypads, as `controls_of` gives them.

    Returns
    -------
    SeenBand
        Areas of floor.
    """
    band, passed = band_of(house, catalogue, controls), doors_passed(trips_to(house, catalogue, controls))
    eye = standing(house, device)
    floors = possible_floor(house, catalogue, device, storeys=tuple(sorted(band)))
    cells = {s: band[s] & floors[s] for s in sorted(band.keys() & floors.keys())}
    cells = {s: mask for s, mask in cells.items() if mask.any()}
    if not cells:
        return NOTHING_SEEN
    area = {s: grids_of(house)[s].cell ** 2 for s in cells}
    elsewhere = sum(float(mask.sum()) * area[s] for s, mask in cells.items() if s != eye.storey)
    own = cells.get(eye.storey)
    amounts, kept, through = dict.fromkeys(("usual", "low", "high", "ever"), elsewhere), dict(cells), []
    if own is not None:
        points = grids_of(house)[eye.storey].centres()[own]
        at = (eye.x_m, eye.y_m)
        leaves = leaves_before(house, eye.storey, points, eye=at, passed=passed)
        lines = lines_to(house, eye.storey, points, eye=at) if leaves else None

        def seen(state: Callable[[Opening], LeafState]) -> BoolArray:
            if lines is None:
                return np.ones(len(points), dtype=np.bool_)
            return seen_past(house, leaves, lines, state=state)

        most, ever = seen(lambda one: states_of(one)[-1]), np.ones(len(points), dtype=np.bool_)
        counts = {
            "usual": seen(lambda one: one.habit),
            "low": seen(lambda one: states_of(one)[0]),
            "high": most,
            "ever": ever,
        }
        for name, mask in counts.items():
            amounts[name] += float(mask.sum()) * area[eye.storey]
        kept[eye.storey] = own.copy()
        kept[eye.storey][own] = most
        if lines is not None:
            through = looked_through(house, leaves, lines, seen=most if most.any() else ever)
    space = space_at(house, eye.storey, (eye.x_m, eye.y_m))
    storey = max(cells, key=lambda s: (float(kept[s].sum()), s))
    return SeenBand(
        **amounts,
        through=tuple(through),
        storey=storey,
        is_from_elsewhere=space is None or space.id not in _spaces_passed(house, catalogue, controls),
        is_down_stairs=own is None,
        cells=kept,
    )


@lru_cache(maxsize=64)
def _spaces_passed(house: Site, catalogue: Catalogue, controls: tuple[Device, ...]) -> frozenset[str]:
    """Ids of the spaces that any of the walks passes."""
    found = set()
    for trip in trips_to(house, catalogue, controls):
        if trip.route is not None:
            storeys, points = np.asarray(trip.route.storeys), trip.route.points
            for space in house.spaces:
                there = points[storeys == space.storey]
                room = shapely.Polygon(space.outline_m)
                if len(there) and shapely.intersects_xy(room, there[:, 0], there[:, 1]).any():
                    found.add(space.id)
    return frozenset(found)
