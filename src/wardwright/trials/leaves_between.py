"""Leaves between a movement detector and places on the floor.

What may be seen with every leaf away is the detector's high-side shape. How leaves stand is then asked of each place
by itself: whether a leaf stands across the lines from the detector to a body there. So shutting a leaf can only take
places away. A leaf that stands open is taken to hide nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.geometry.taut import is_crossed_from
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.opening import LeafState, Opening
from wardwright.model.placement import along, direction, opening_line
from wardwright.model.record import Line2
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import watch, watch_elsewhere
from wardwright.physics.walking.from_site import BODY_RADIUS_M
from wardwright.trials.barriers import grids_of
from wardwright.trials.floors import on_grid
from wardwright.trials.stacked_floors import Floors

AJAR_SHARE = 0.85
"""How much of its doorway a leaf that is ajar still covers, from its hinge on. [-] (assumption)"""
STATES: tuple[LeafState, ...] = ("shut", "ajar", "open")
"""How leaves stand, from least to most that is seen."""
ACROSS = (-1.0, -0.5, 0.0, 0.5, 1.0)
"""Where across a body lines are drawn to, in shares of half its width. [-]"""
KNOWN = ("told", "measured")
"""How a habit is known that is one; otherwise any state is taken for possible."""


def states_of(opening: Opening) -> tuple[LeafState, ...]:
    """The states that a leaf is in by habit; all of them where nobody has said.

    Examples
    --------
    >>> door = Opening(id="d", name="door", kind="door", wall="w", offset_m=1.0, width_m=0.8)
    >>> states_of(door), states_of(door.model_copy(update={"habit": "ajar", "basis": (("habit", "told"),)}))
    (('shut', 'ajar', 'open'), ('ajar',))
    """
    if opening.basis_of("habit") not in KNOWN:
        return STATES
    found: set[LeafState] = {opening.habit}
    if opening.basis_of("habit_night") in KNOWN:
        found.add(opening.habit_night)
    return tuple(state for state in STATES if state in found)


@lru_cache(maxsize=1024)
def possible_floor(house: Site, catalogue: Catalogue, device: Device, *, storeys: tuple[str, ...]) -> Floors:
    """Where on some storeys a movement detector may notice somebody, with every leaf away."""
    grids, own = grids_of(house), watch(house, catalogue, device)
    level = house.storey(own.storey).elevation_m
    shapes = [own]
    # Zones only look down: floors above the detector's own are not asked for.
    if any(house.storey(storey).elevation_m < level for storey in storeys):
        shapes += watch_elsewhere(house, catalogue, device)
    return {
        one.storey: on_grid(one.high, of=one.grid, onto=grids[one.storey])
        for one in shapes
        if one.storey in grids and one.storey in storeys and house.storey(one.storey).elevation_m <= level
    }


class Lines(NamedTuple):
    """Lines from a detector to bodies on the floor."""

    eye: tuple[float, float]
    """Where the detector is. [m]"""
    ends: FloatArray
    """Several places across each body, shape (N, L, 2). [m]"""
    clear: BoolArray
    """Whether no wall stands across a line, shape (N, L)."""
    like: IntArray
    """For each body the one whose lines are asked: itself, or the nearest that has a line clear of walls where it has
    none, since the high-side shape reaches a little round corners; shape (N,). [-]"""


def lines_to(house: Site, storey: str, points: FloatArray, *, eye: tuple[float, float]) -> Lines:
    """Draw the lines from a detector to a body at each point of its storey.

    Parameters
    ----------
    house : Site
        The bare house.
    storey : str
        Id of the storey of both.
    points : ndarray, shape (N, 2)
        Where the middles of the bodies are. [m]
    eye : tuple of float
        Where the detector is. [m]

    Returns
    -------
    Lines
        To be asked by `seen_past`.
    """
    start = np.asarray(eye)
    away = points - start
    length = np.maximum(np.hypot(*away.T), 1e-9)[:, None]
    beside = np.stack([-away[:, 1], away[:, 0]], axis=1) / length * BODY_RADIUS_M
    ends = points[:, None] + np.asarray(ACROSS)[None, :, None] * beside[:, None]
    clear = ~_met(eye, ends, _wall_pieces(house, storey))
    is_clear = clear.any(axis=1)
    like = np.arange(len(points))
    if is_clear.any() and not is_clear.all():
        known, (x, y), (from_x, from_y) = np.nonzero(is_clear)[0], points[is_clear].T, points[~is_clear].T
        gaps = np.hypot(np.subtract.outer(from_x, x), np.subtract.outer(from_y, y))
        like[~is_clear] = known[gaps.argmin(axis=1)]
    return Lines(eye, ends, clear, like)


def seen_past(
    house: Site, leaves: Sequence[Opening], lines: Lines, *, state: Callable[[Opening], LeafState]
) -> BoolArray:
    """Whether some line to each body meets no leaf, shape (N,); all of them where walls leave no line at all."""
    if not lines.clear.any():
        return np.ones(len(lines.like), dtype=np.bool_)
    pieces = [piece for one in leaves for piece in leaf_pieces(house, one, state(one))]
    met = _met(lines.eye, lines.ends, np.array(pieces).reshape(-1, 2, 2))
    seen: BoolArray = np.logical_or.reduce(lines.clear & ~met, axis=1)
    return seen[lines.like]


def _met(eye: tuple[float, float], ends: FloatArray, pieces: FloatArray) -> BoolArray:
    """Whether any piece stands across each line, shape (N, L)."""
    return is_crossed_from(eye, ends.reshape(-1, 2), pieces).reshape(ends.shape[:2])


@lru_cache(maxsize=256)
def _wall_pieces(house: Site, storey: str) -> FloatArray:
    """The middle lines of a storey's walls, their openings left out, shape (D, 2, 2). [m]"""
    found: list[Line2] = []
    for wall in house.walls:
        if wall.storey != storey:
            continue
        length = direction(wall.line_m)[2]
        at = 0.0
        holes = sorted(
            (one.offset_m - one.width_m / 2, one.offset_m + one.width_m / 2)
            for one in house.openings
            if one.wall == wall.id
        )
        for start, end in (*holes, (length, length)):
            if start > at:
                found.append((along(wall.line_m, at), along(wall.line_m, start)))
            at = max(at, end)
    return np.array(found).reshape(-1, 2, 2)


@lru_cache(maxsize=256)
def leaves_on(house: Site, storey: str) -> tuple[Opening, ...]:
    """The openings of a storey that have a leaf, by id."""
    return tuple(
        one
        for one in sorted(house.openings, key=lambda o: o.id)
        if one.kind != "gap" and one.leaves > 0 and house.wall(one.wall).storey == storey
    )


def leaves_before(
    house: Site,
    storey: str,
    points: FloatArray,
    *,
    eye: tuple[float, float],
    passed: frozenset[str] = frozenset(),
) -> list[Opening]:
    """Leaves of a storey that can stand between a detector and any of some points; doors passed hide nothing."""
    if not len(points):
        return []
    # One line through all of them has the hull that they have, and is one geometry instead of many.
    hull = shapely.convex_hull(shapely.linestrings(np.vstack([points, [eye]])))
    between = shapely.intersects(hull, _doorways(house, storey)).tolist()
    every = zip(leaves_on(house, storey), between, strict=True)
    return [one for one, is_between in every if is_between and one.id not in passed]


@lru_cache(maxsize=256)
def _doorways(house: Site, storey: str) -> NDArray[np.object_]:
    """The lines of the doorways of `leaves_on`, in its order."""
    lines = [opening_line(house.wall(one.wall), one) for one in leaves_on(house, storey)]
    found: NDArray[np.object_] = shapely.linestrings(np.array(lines).reshape(-1, 2, 2))
    return found


def leaf_pieces(house: Site, opening: Opening, state: LeafState) -> list[Line2]:
    """What a leaf covers of its doorway on the plan: all, all but a gap at its free edge, or nothing. [m]"""
    line = opening_line(house.wall(opening.wall), opening)
    if state == "open":
        return []
    if state == "shut" or opening.hinge in ("fixed", "none"):
        return [line]
    width = opening.width_m / max(1, opening.leaves)
    near, far = AJAR_SHARE * width, opening.width_m
    pieces = [(0.0, near)] + ([(width, far)] if opening.leaves > 1 else [])
    if opening.hinge == "end":
        pieces = [(far - end, far - start) for start, end in pieces]
    return [(along(line, start), along(line, end)) for start, end in pieces]


def looked_through(house: Site, leaves: Sequence[Opening], lines: Lines, *, seen: BoolArray) -> list[str]:
    """Doors across whose doorways bodies are seen, the one with most of them first."""
    chosen = lines.ends[lines.like[seen]]
    clear = lines.clear[lines.like[seen]]
    doorways = {one.id: np.array([opening_line(house.wall(one.wall), one)]) for one in leaves}
    counts: Mapping[str, int] = {
        name: int((clear & _met(lines.eye, chosen, doorway)).any(axis=1).sum())
        for name, doorway in doorways.items()
    }
    return sorted((name for name, count in counts.items() if count), key=lambda name: (-counts[name], name))
