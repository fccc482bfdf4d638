"""What the engine hands on about one movement detector."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from wardwright.geometry.raster import BoolArray, FloatArray, Grid
from wardwright.physics.detection.crossing import first_walked
from wardwright.physics.detection.walks import Walks


class Watch(NamedTuple):
    """What one movement detector watches on one storey."""

    device: str
    storey: str
    grid: Grid
    seen: BoolArray
    """Where it senses as its sheet and the site say, shape (ny, nx), as all below."""
    low: BoolArray
    """Low-side shape: where it surely senses."""
    high: BoolArray
    """High-side shape: where it may sense."""
    leak: BoolArray
    """Cells of the high-side shape outside the space it stands in."""
    core_of: Callable[[], BoolArray]
    """Works out `core`, which takes as long as much of the rest: sun and pets never ask for it."""

    @property
    def core(self) -> BoolArray:
        """Cells of the low-side shape that nobody reaches without walking 1.5 m inside it."""
        return self.core_of()


class Noticing(NamedTuple):
    """How far one walks on a route before a detector notices; inf where never."""

    entered_m: float
    """Into the high-side shape. [m]"""
    noticed_m: FloatArray
    """By its zones, at each reach share, shape (L,). [m]"""


def noticings_of(walks: Walks, inside: BoolArray, noticed: FloatArray) -> tuple[Noticing, ...]:
    """What one detector notices on each of some walks.

    Parameters
    ----------
    walks : Walks
        The walks, W of them, N points in all.
    inside : ndarray of bool, shape (N,)
        Which points lie in its high-side shape.
    noticed : ndarray, shape (W, L)
        Walked before its zones notice, at each of L reaches. [m]

    Returns
    -------
    tuple of Noticing, length W
        In the order of the walks.
    """
    return tuple(
        Noticing(first_walked(walks.walked[part], inside[part]), distances)
        for part, distances in zip(walks.parts, noticed, strict=True)
    )


class SeenFacts(NamedTuple):
    """What a detector really sees on its own storey, at several shares of its reach."""

    device: str
    storey: str
    space: str | None
    """The space it stands in."""
    reach_shares: tuple[float, ...]
    seen_at_03_m2: tuple[float, ...]
    """Floor over which a point 0.3 m high is in its sight. [m2]"""
    seen_at_10_m2: tuple[float, ...]
    """Floor over which a point 1.0 m high is in its sight. [m2]"""
    blind_share: tuple[float, ...]
    """Of the free floor of its own space, where it does not sense a person upright; nan without a space. [-]"""
    leak_m2: tuple[float, ...]
    """Free floor outside its own space where it may sense. [m2]"""
    leak_spaces: tuple[tuple[str, float], ...]
    """Space and leak there at the whole reach, largest first. [m2]"""
    low_m2: tuple[float, ...]
    """Low-side shape. [m2]"""
    high_m2: tuple[float, ...]
    """High-side shape. [m2]"""
