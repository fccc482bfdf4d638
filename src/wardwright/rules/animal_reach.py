"""What an animal gets onto, jump by jump, from the floors where it may be."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray
from wardwright.geometry.successive import Easiest, easiest_ways
from wardwright.model.catalogue import Animal
from wardwright.model.site import Site
from wardwright.rules.animal_tops import Top, tops_of

BY_STAGES = ("shelf",)
"""What one that climbs gets onto whatever its height: board by board."""


class Reach(NamedTuple):
    """The least jump that brings an animal to each top."""

    tops: tuple[Top, ...]
    easiest: Easiest
    """Over the tops; its hardest steps are heights jumped. [m]"""

    def needs(self) -> FloatArray:
        """The jump it takes to get to each top, shape (N,); inf: it never gets there. [m]"""
        return self.easiest.hardest

    def way_to(self, index: int) -> tuple[Top, ...]:
        """The tops on the way to one, from a floor; it comes last."""
        return tuple(self.tops[one] for one in self.easiest.way_to(index))


@lru_cache(maxsize=64)
def _gaps(house: Site) -> tuple[FloatArray, FloatArray]:
    """From each top to each other: the gap on the plan, inf between rooms, and the rise, both (N, N). [m]"""
    tops = tops_of(house)
    areas = np.array([one.area for one in tops], dtype=object)
    gaps = shapely.distance(areas[:, None], areas[None, :])
    heights = np.array([one.top_m for one in tops])
    rises = np.maximum(heights[None, :] - heights[:, None], 0.0)
    beside = {frozenset(edge.spaces) for edge in house.open_edges}
    for i, one in enumerate(tops):
        for j, other in enumerate(tops):
            if not any(a == b or frozenset((a, b)) in beside for a in one.spaces for b in other.spaces):
                gaps[i, j] = np.inf
            elif _is_walked(one, other):
                gaps[i, j] = rises[i, j] = 0.0
            elif not set(one.storeys).intersection(other.storeys):
                gaps[i, j] = np.inf
    return gaps, rises


def _is_walked(one: Top, other: Top) -> bool:
    """Whether no jump is needed: along one flight, and between a flight and the floors at its ends."""
    kinds = {one.kind, other.kind}
    return kinds == {"stair", "floor"} or (kinds == {"stair"} and one.thing == other.thing)


@lru_cache(maxsize=256)
def reach_of(
    house: Site, row: Animal, *, rooms: frozenset[str], without: frozenset[str] = frozenset()
) -> Reach:
    """The least jump that brings an animal of a kind to each top, from the floors where it may be.

    A jump is as hard as it is high, or as it is wide by the kind's own measure of leap to jump, whichever is more.
    Down is no jump, and stairs are walked. One that climbs jumps to a shelf's underside only. Nothing is stood on
    that is narrower than half the animal.

    Parameters
    ----------
    house : Site
        The bare house.
    row : Animal
        What is usual for its kind.
    rooms : frozenset of str
        Ids of the spaces where it may be.
    without : frozenset of str, default frozenset()
        Ids of things that are thought away.

    Returns
    -------
    Reach
        The animal gets to every top that needs no higher jump than its own.
    """
    tops = tops_of(house)
    gaps, rises = _gaps(house)
    wide = np.where(np.isfinite(gaps), gaps, 0.0) * row.jump_m / row.leap_m
    if row.climbs:
        by_stages = [j for j, other in enumerate(tops) if other.kind in BY_STAGES]
        feet = np.array([tops[j].foot_m for j in by_stages])
        from_m = np.array([one.top_m for one in tops])
        rises = rises.copy()
        rises[:, by_stages] = np.maximum(feet[None, :] - from_m[:, None], 0.0)
    steps = np.where(np.isfinite(gaps), np.maximum(rises, wide), np.inf)
    is_kept = np.array(
        [
            bool(rooms.intersection(one.spaces))
            and one.thing not in without
            and one.width_m >= row.half_width_m - 1e-9
            for one in tops
        ],
        dtype=np.bool_,
    )
    # It keeps to its rooms: no other floor, nor what stands there.
    steps[:, ~is_kept] = np.inf
    is_floor = np.array([one.kind == "floor" for one in tops], dtype=np.bool_)
    return Reach(tops, easiest_ways(steps, np.where(is_kept & is_floor, 0.0, np.inf)))
