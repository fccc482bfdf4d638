"""What is walked of each storey, and the floor about it.

A walk is taken apart by storeys, and what is found about each stretch is remembered by the stretch: walks from
several beds to one place are the same below, and a keypad that moves below leaves what is walked above as it was.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray, painted
from wardwright.model.placement import opening_footprint
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import BODY_RADIUS_M, Route, premises_network
from wardwright.trials.barriers import grids_of

BAND_M = 0.6
"""To each side of the walk. [m] (assumption)"""


class Stretch(NamedTuple):
    """What is walked of one storey; hashable, so that what is found on it is remembered by it."""

    storey: str
    places: bytes
    """The points of the walk, one after the other, as they lie in memory. [m]"""
    passed: frozenset[str]
    """Ids of the openings of the storey that are gone through."""

    def points(self) -> FloatArray:
        """The points of the walk, shape (n, 2). [m]"""
        return np.frombuffer(self.places, dtype=np.float64).reshape(-1, 2)


def stretches_of(house: Site, route: Route) -> tuple[tuple[Stretch, IntArray], ...]:
    """Take a walk apart by storeys.

    Parameters
    ----------
    house : Site
        The bare house.
    route : Route
        The walk.

    Returns
    -------
    tuple of (Stretch, ndarray of int)
        For each storey that has a floor of ours, in the order of ids: what is walked of it, and the numbers of its
        points. [-]
    """
    passed = frozenset(leg.subject for leg in route.legs if leg.kind == "door" and leg.subject)
    storeys, grids = np.asarray(route.storeys), grids_of(house)
    found = []
    for storey in sorted(set(route.storeys) & grids.keys()):
        numbers = np.nonzero(storeys == storey)[0]
        here = passed.intersection(_doorways(house, storey)[0])
        found.append((Stretch(storey, route.points[numbers].tobytes(), here), numbers))
    return tuple(found)


@lru_cache(maxsize=256)
def floor_about(house: Site, stretch: Stretch) -> BoolArray:
    """Free floor within `BAND_M` of a walk on one storey, without going through a door that the walk does not.

    Parameters
    ----------
    house : Site
        The bare house.
    stretch : Stretch
        What is walked of the storey.

    Returns
    -------
    ndarray of bool
        On the house's own grid; shared, not to be written to.
    """
    network, points = premises_network(house), stretch.points()
    line = shapely.LineString(points) if len(points) > 1 else shapely.Point(points[0])
    free = network.free[network.storeys.index(stretch.storey)]
    floor = line.buffer(BAND_M).intersection(free)
    names, every = _doorways(house, stretch.storey)
    holes = every[[name not in stretch.passed for name in names]]
    floor = floor.difference(shapely.union_all(holes[shapely.intersects(holes, floor)]))
    # What lies behind a wall is near, but nobody strays there.
    parts = shapely.get_parts(floor)
    near = parts[shapely.distance(parts, line) < BODY_RADIUS_M]
    return painted(grids_of(house)[stretch.storey], shapely.union_all(near))


@lru_cache(maxsize=64)
def _doorways(house: Site, storey: str) -> tuple[tuple[str, ...], NDArray[np.object_]]:
    """The openings of a storey, and what each takes of the floor, a hair wider."""
    openings = [one for one in house.openings if house.wall(one.wall).storey == storey]
    holes: NDArray[np.object_] = np.empty(len(openings), dtype=np.object_)
    holes[:] = [
        shapely.Polygon(opening_footprint(house.wall(one.wall), one)).buffer(1e-6) for one in openings
    ]
    return tuple(one.id for one in openings), holes
