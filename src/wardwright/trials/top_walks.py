"""Walks of an animal over what it stands on: floors, the tops of things, flights."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from wardwright.geometry.raster import FloatArray
from wardwright.model.site import Site
from wardwright.rules.animal_tops import tops_of
from wardwright.rules.perches import UnderZones

POINTS_M = 0.05
"""Between points of a walk. [m]"""
STRETCH_M = 3.0
"""It walks so far each way of the place where the zones leave least room. [m] (assumption)"""
WAYS = 4
"""Directions it walks in there, evenly about the line to the detector. [-] (assumption)"""
SHORT_M = 0.15
"""A shorter walk is none. [m] (assumption)"""


class TopWalk(NamedTuple):
    """A walk over a top, there and back."""

    points: FloatArray
    """On the plan, shape (N, 2). [m]"""
    stood: FloatArray | float
    """What is stood on, at each point or at all of them. [m]"""


def walks_over(
    house: Site, under: Sequence[tuple[UnderZones, FloatArray]]
) -> tuple[list[TopWalk], list[list[int]]]:
    """Walks over some tops: on a level one straight, in some directions about the line to a detector's eye.

    Up a flight it is one walk, whichever step is asked about and whoever watches.

    Parameters
    ----------
    house : Site
        The bare house.
    under : sequence of (UnderZones, ndarray)
        The tops, each with the eye of the detector that watches it, of which x and y count, shape (3,) [m].

    Returns
    -------
    laid : list of TopWalk
        The walks.
    mine : list of list of int
        Of each of the tops, which of the walks are over it; none where it is too small. [-]
    """
    tops = tops_of(house)
    laid: list[TopWalk] = []
    mine: list[list[int]] = [[] for _ in under]
    flights: dict[str, int] = {}
    level = []
    for i, (one, eye) in enumerate(under):
        top = tops[one.number]
        if top.kind == "stair" and top.thing is not None:
            if top.thing not in flights:
                flights[top.thing] = len(laid)
                laid.append(_walk_up(house, top.thing))
            mine[i].append(flights[top.thing])
        else:
            level.append((i, one, eye))
    for i, points in _stretches(house, level):
        mine[i].append(len(laid))
        laid.append(TopWalk(points, tops[under[i][0].number].top_m))
    return laid, mine


def _stretches(
    house: Site, under: Sequence[tuple[int, UnderZones, FloatArray]]
) -> Iterator[tuple[int, FloatArray]]:
    """Straight walks over level tops through the place with least room, there and back, each with its number. [m]"""
    if not under:
        return
    ways = [
        (math.cos(toward + turn), math.sin(toward + turn))
        for _, one, eye in under
        for toward in [math.atan2(float(eye[1]) - one.place[1], float(eye[0]) - one.place[0])]
        for turn in (np.arange(WAYS) * math.pi / WAYS).tolist()
    ]
    way = np.array(ways) * STRETCH_M
    place = np.repeat([one.place for _, one, _ in under], WAYS, axis=0)
    areas = np.repeat(np.array([_a_hair_wider(house, one.number) for _, one, _ in under], dtype=object), WAYS)
    lines = shapely.linestrings(np.stack([place - way, place + way], axis=1))
    pieces, line = shapely.get_parts(shapely.intersection(lines, areas), return_index=True)
    is_here = shapely.distance(pieces, shapely.points(place)[line]) < 1e-3
    pieces, line = pieces[is_here], line[is_here]
    line, first = np.unique(line, return_index=True)
    pieces = pieces[first]
    is_long = shapely.length(pieces) >= SHORT_M
    for number, points in zip(line[is_long].tolist(), _laid(pieces[is_long]), strict=True):
        yield under[number // WAYS][0], np.concatenate([points, points[-2::-1]])


@lru_cache(maxsize=256)
def _walk_up(house: Site, stair: str) -> TopWalk:
    """The walk over a flight; shared, not to be written to."""
    flight = [one for one in tops_of(house) if one.thing == stair]
    corners = np.concatenate([one.points for one in flight])
    heights = np.concatenate([np.full(len(one.points), one.top_m) for one in flight])
    (line,) = _laid(np.array([shapely.LineString(corners)]))
    nearest = np.argmin(np.hypot(*(line[:, None] - corners[None, :]).transpose(2, 0, 1)), axis=1)
    return TopWalk(line, heights[nearest])


@lru_cache(maxsize=2048)
def _a_hair_wider(house: Site, number: int) -> shapely.Geometry:
    """A top's area, so that a line along its edge is on it. [m]"""
    return tops_of(house)[number].area.buffer(1e-6)


def _laid(lines: NDArray[np.object_]) -> list[FloatArray]:
    """Points along each of some lines, `POINTS_M` apart. [m]"""
    counts = np.ceil(shapely.length(lines) / POINTS_M).astype(np.int64)
    ends = np.cumsum(counts)
    steps = (np.arange(counts.sum()) - np.repeat(ends - counts, counts)) * POINTS_M
    points = shapely.get_coordinates(shapely.line_interpolate_point(np.repeat(lines, counts), steps))
    return np.split(points, ends)[:-1]
