"""Which spaces lie beside, over and under one another, and over how much: what sound has to go through.

Worked out from the outlines of the spaces, whose edges are the inner faces of their walls, so that it does not matter
how many walls are drawn between two rooms. Memoised by the bare house.
"""

from __future__ import annotations

import math
from collections import defaultdict
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray
from wardwright.model.fabric import Space
from wardwright.model.flights import well
from wardwright.model.floor import StoreyParts, storey_parts
from wardwright.model.opening import Opening
from wardwright.model.placement import sides_of_opening, space_at, wall_footprint
from wardwright.model.record import Point2
from wardwright.model.room_shapes import floor_polygon, indoors
from wardwright.model.site import Site

SAMPLE_M = 0.25
"""Between the places of an outline that are looked from. [m] (assumption)"""
PROBE_STEP_M = 0.06
"""Between the places that are looked at. [m] (assumption: finer than any wall is thick)"""
THICKEST_M = 0.9
"""What is farther off than this is not beside. [m] (assumption: thicker than a wall of rubble)"""
LEAST_AREA_M2 = 0.05
"""Floors that overlap by less do not. [m2] (assumption: slips of drawing)"""


class Facing(NamedTuple):
    """A stretch of one space's outline with one thing behind it."""

    space: str
    other: str | None
    """The space behind; None: outside, or nothing drawn."""
    walls: tuple[str, ...]
    """Ids of the walls between; empty where none is drawn."""
    length_m: float
    at_m: Point2
    """Its middle."""
    normal: Point2
    """Unit vector out of the space."""


class Stacked(NamedTuple):
    """Two spaces one over the other, or joined by a well."""

    lower: str
    upper: str
    area_m2: float


def area_of(opening: Opening) -> float:
    """The area of an opening, sill to head. [m2]"""
    return opening.width_m * max(0.05, opening.head_m - opening.sill_m)


@lru_cache(maxsize=32)
def _joining(site: Site) -> tuple[tuple[Opening, tuple[str | None, str | None]], ...]:
    found = []
    for opening in sorted(site.openings, key=lambda o: o.id):
        one, other = sides_of_opening(site, opening)
        if one != other:
            found.append((opening, (one, other)))
    return tuple(found)


def joining(site: Site) -> tuple[tuple[Opening, tuple[str | None, str | None]], ...]:
    """Openings that have two different spaces, or a space and the open air, on their sides, by id."""
    return _joining(site.bare)


def facings(site: Site) -> tuple[Facing, ...]:
    """What lies behind each stretch of each space's outline.

    Parameters
    ----------
    site : Site
        Its house alone counts.

    Returns
    -------
    tuple of Facing
        By space, edge, and what is behind.
    """
    return _facings(site.bare)


@lru_cache(maxsize=32)
def _facings(site: Site) -> tuple[Facing, ...]:
    found: list[Facing] = []
    for storey in sorted(site.storeys, key=lambda s: s.id):
        parts = storey_parts(site, storey.id)
        spaces = tuple(s for s in parts.spaces if not s.is_outdoors)
        if spaces:
            found.extend(_of_a_storey(parts, spaces))
    return tuple(found)


class _Samples(NamedTuple):
    owner: FloatArray
    edge: FloatArray
    at: FloatArray
    normal: FloatArray
    length: FloatArray


def _of_a_storey(parts: StoreyParts, spaces: tuple[Space, ...]) -> list[Facing]:
    floors = [floor_polygon(space) for space in spaces]
    samples = _samples(floors)
    steps = np.arange(0.02, THICKEST_M, PROBE_STEP_M)
    probes = samples.at[:, None, :] + steps[None, :, None] * samples.normal[:, None, :]
    held = _first_holder(floors, probes)
    other, reach = held
    ends = np.where(other >= 0, reach, THICKEST_M)
    crossed = _walls_crossed(parts, samples, ends)
    groups: dict[tuple[int, int, int, tuple[str, ...]], list[int]] = defaultdict(list)
    for index in range(len(samples.at)):
        owner, behind = int(samples.owner[index]), int(other[index])
        if behind != owner:
            groups[owner, int(samples.edge[index]), behind, crossed[index]].append(index)
    found = []
    for (owner, _, behind, walls), members in sorted(groups.items()):
        share = samples.length[members]
        middle = (samples.at[members] * share[:, None]).sum(axis=0) / share.sum()
        normal = samples.normal[members[0]]
        found.append(
            Facing(
                spaces[owner].id,
                spaces[behind].id if behind >= 0 else None,
                walls,
                float(share.sum()),
                (float(middle[0]), float(middle[1])),
                (float(normal[0]), float(normal[1])),
            )
        )
    return found


def _samples(floors: list[shapely.Polygon]) -> _Samples:
    """Places along all outlines, with the way out of their space."""
    rows: list[tuple[float, ...]] = []
    for owner, floor in enumerate(floors):
        ring = shapely.get_coordinates(shapely.geometry.polygon.orient(floor).exterior)
        for edge, (start, end) in enumerate(pairwise(ring)):
            length = math.dist(start, end)
            if length < 1e-6:
                continue
            count = max(1, math.ceil(length / SAMPLE_M))
            way = (end - start) / length
            # Outlines run anticlockwise: out is to the right.
            rows.extend(
                (owner, edge, *(start + (i + 0.5) / count * (end - start)), way[1], -way[0], length / count)
                for i in range(count)
            )
    table = np.asarray(rows, dtype=np.float64).reshape(-1, 7)
    return _Samples(table[:, 0], table[:, 1], table[:, 2:4], table[:, 4:6], table[:, 6])


def _first_holder(floors: list[shapely.Polygon], probes: FloatArray) -> tuple[FloatArray, FloatArray]:
    """For each row of probes the first space that holds one, and how far off; -1 and nan where none does."""
    rows, steps, _ = probes.shape
    points = shapely.points(probes.reshape(-1, 2))
    place, floor = shapely.STRtree(floors).query(points, predicate="within")
    first = np.full((rows, steps), -1, dtype=np.int64)
    first[place // steps, place % steps] = floor
    has = first >= 0
    at = has.argmax(axis=1)
    any_held = has.any(axis=1)
    other = np.where(any_held, first[np.arange(rows), at], -1).astype(np.float64)
    return other, np.where(any_held, 0.02 + at * PROBE_STEP_M, np.nan)


def _walls_crossed(parts: StoreyParts, samples: _Samples, ends: FloatArray) -> list[tuple[str, ...]]:
    """Ids of the walls that stand between each place and what lies behind it."""
    bodies = [shapely.Polygon(wall_footprint(wall)).buffer(0) for wall in parts.walls]
    if not bodies:
        return [()] * len(ends)
    starts = samples.at - 0.01 * samples.normal
    lines = shapely.linestrings(np.stack([starts, samples.at + ends[:, None] * samples.normal], axis=1))
    line, body = shapely.STRtree(bodies).query(lines, predicate="intersects")
    found: list[list[str]] = [[] for _ in range(len(ends))]
    for index, wall in zip(line.tolist(), body.tolist(), strict=True):
        found[index].append(parts.walls[wall].id)
    return [tuple(sorted(ids)) for ids in found]


@lru_cache(maxsize=32)
def _stacked(site: Site) -> tuple[Stacked, ...]:
    spaces = indoors(site)
    level = {storey.id: storey.elevation_m for storey in site.storeys}
    heights = sorted(set(level.values()))
    above = dict(pairwise(heights))
    wells = shapely.union_all([shapely.Polygon(well(stair)).buffer(0) for stair in site.stairs])
    found = []
    for lower in spaces:
        over = above.get(level[lower.storey])
        for upper in spaces:
            if level[upper.storey] != over:
                continue
            shared = floor_polygon(lower).intersection(floor_polygon(upper)).difference(wells).area
            if shared > LEAST_AREA_M2:
                found.append(Stacked(lower.id, upper.id, float(shared)))
    return tuple(found)


def stacked(site: Site) -> tuple[Stacked, ...]:
    """Spaces one over the other with the floor between them, wells of stairs left out."""
    return _stacked(site.bare)


@lru_cache(maxsize=32)
def _wells(site: Site) -> tuple[Stacked, ...]:
    found = []
    for stair in sorted(site.stairs, key=lambda s: s.id):
        lower = space_at(site, stair.lower, stair.line_m[0])
        upper = space_at(site, stair.upper, stair.line_m[-1])
        if lower is not None and upper is not None and lower.id != upper.id:
            found.append(Stacked(lower.id, upper.id, float(shapely.Polygon(well(stair)).buffer(0).area)))
    return tuple(found)


def wells(site: Site) -> tuple[Stacked, ...]:
    """Spaces that the well of a stair joins, with its area."""
    return _wells(site.bare)
