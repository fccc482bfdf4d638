"""How somebody climbs to an opening from outside: step by step, and how far the hardest step is from being made."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

import numpy as np
import shapely
from shapely.ops import nearest_points

from wardwright.geometry.raster import FloatArray
from wardwright.geometry.successive import Easiest, easiest_ways, hardest_steps
from wardwright.model.catalogue import Catalogue
from wardwright.model.opening import Opening
from wardwright.model.placement import opening_line, sides_of_opening
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.trials.footholds import Foothold, footholds

FREE_M = -100.0
"""How hard it is to stand on the ground: less than any step. [m]"""


class Limits(NamedTuple):
    """What a person manages in one step."""

    from_ground: float
    """An edge so high above the ground. [m]"""
    from_thing: float
    """An edge so high above what is stood on. [m]"""
    across: float
    """A gap so wide. [m]"""


class Step(NamedTuple):
    """One step of a climb, onto a foothold or to the opening."""

    name: str
    thing: str | None
    """Id of what is stepped onto, where it has one."""
    kind: str
    rise_m: float
    """What is climbed. [m]"""
    gap_m: float
    """What is got across. [m]"""
    height_m: float
    """Where it ends, above the ground. [m]"""
    place: Point2
    """Where on the plan. [m]"""


class Climb(NamedTuple):
    """The easiest climb to an opening."""

    short_m: float
    """How much the hardest step is beyond a person's reach; below zero it is made, with so much to spare; inf: there
    is no step. [m]"""
    steps: tuple[Step, ...]
    """From the ground; the opening comes last."""
    hardest: Step

    @property
    def is_made(self) -> bool:
        """Whether somebody gets there."""
        return self.short_m <= 1e-9


def usual_limits(catalogue: Catalogue) -> Limits:
    """What a person likely manages."""
    return Limits(*(catalogue.figure(name).value for name in LIMIT_FIGURES))


LIMIT_FIGURES = ("climb-from-ground", "climb-from-thing", "climb-across")
"""The figures of `Limits`, in its order."""


def sill_above_ground(site: Site, opening: Opening) -> float:
    """How far the lower edge of an opening is above the ground outside. [m]"""
    if opening.sill_outside_m is not None:
        return opening.sill_outside_m
    storey = site.storey(site.wall(opening.wall).storey)
    return storey.elevation_m + opening.sill_m - site.ground.level_m


@lru_cache(maxsize=128)
def _between(house: Site) -> tuple[FloatArray, FloatArray]:
    """Rise and gap of each step from one foothold (row) to another (column), both (N, N). [m]"""
    there = footholds(house)
    rises = np.array(
        [[_rise(one, other.edge_m, is_climbed=other.is_climbed) for other in there] for one in there]
    )
    gaps = np.array([[_gap(one.area, other.area) for other in there] for one in there])
    return rises, gaps


def _rise(one: Foothold, edge_m: float, *, is_climbed: bool) -> float:
    return 0.0 if is_climbed else max(edge_m - one.height_m, 0.0)


def _gap(one: shapely.Geometry | None, other: shapely.Geometry | None) -> float:
    return 0.0 if one is None or other is None else float(shapely.distance(one, other))


def _last(house: Site, opening: Opening) -> tuple[FloatArray, FloatArray]:
    """Rise and gap of the last step, from each foothold to the opening, both (N,). [m]"""
    there = footholds(house)
    up, wall = sill_above_ground(house, opening), house.wall(opening.wall)
    line = shapely.LineString(opening_line(wall, opening))
    beside = {one for one in sides_of_opening(house, opening) if one is not None}
    rises = np.array([max(up - one.height_m, 0.0) for one in there])
    gaps = np.array([max(_gap(one.area, line) - wall.thickness_m / 2, 0.0) for one in there])
    on_it = np.array([one.thing is not None and one.thing in beside for one in there], dtype=np.bool_)
    return rises, np.where(on_it, 0.0, gaps)


def _short(house: Site, rises: FloatArray, gaps: FloatArray, *, limits: FloatArray) -> FloatArray:
    """How much steps from footholds (axis 1) are beyond reach, in each case (axis 0; limits are (R, 3)). [m]"""
    is_ground = np.array([one.kind == "ground" for one in footholds(house)], dtype=np.bool_)
    up = np.where(is_ground[None, :], limits[:, :1], limits[:, 1:2])
    shape = (*up.shape, *(1,) * (rises.ndim - 1))
    beyond: FloatArray = np.maximum(
        rises[None] - up.reshape(shape), gaps[None] - limits[:, 2].reshape(-1, *(1,) * rises.ndim)
    )
    return beyond


def _starts(house: Site) -> FloatArray:
    return np.array([FREE_M if one.is_start else np.inf for one in footholds(house)])


@lru_cache(maxsize=1024)
def climb_to(house: Site, opening: Opening, limits: Limits) -> Climb:
    """The easiest climb to an opening: of all ways the one whose hardest step is least beyond reach.

    Parameters
    ----------
    house : Site
        The bare house and the ground about it.
    opening : Opening
        An opening to the outside.
    limits : Limits
        What a person manages in one step.

    Returns
    -------
    Climb
        Of ways that are alike the one of fewest steps.
    """
    steps_short, easiest = _easiest(house, limits)
    last_rises, last_gaps = _last(house, opening)
    last_short = _short(house, last_rises, last_gaps, limits=np.array([limits]))[0]
    ends = np.maximum(easiest.hardest, last_short)
    taken = np.array([len(easiest.way_to(i)) for i in range(len(ends))])
    best = int(np.lexsort((taken, np.round(ends, 9)))[0])
    there, way = footholds(house), easiest.way_to(best)
    line = shapely.LineString(opening_line(house.wall(opening.wall), opening))
    gaps = _between(house)[1]
    marks = [*(there[i].area for i in way), line]
    steps = [
        Step(
            there[j].name,
            there[j].thing,
            there[j].kind,
            max(there[j].height_m - there[i].height_m, 0.0),
            float(gaps[i, j]),
            there[j].height_m,
            _place(marks[n + 1], marks[n + 2]),
        )
        for n, (i, j) in enumerate(pairwise(way))
    ]
    up = sill_above_ground(house, opening)
    end = line.interpolate(0.5, normalized=True)
    final = Step(
        opening.name, None, "opening", float(last_rises[best]), float(last_gaps[best]), up, (end.x, end.y)
    )
    shorts = [*(steps_short[i, j] for i, j in pairwise(way)), last_short[best]]
    every = (*steps, final)
    return Climb(float(ends[best]), every, every[int(np.argmax(np.round(shorts, 9)))])


@lru_cache(maxsize=128)
def _easiest(house: Site, limits: Limits) -> tuple[FloatArray, Easiest]:
    """How much each step between footholds is beyond reach, shape (N, N) [m], and the easiest ways over them."""
    short = _short(house, *_between(house), limits=np.array([limits]))[0]
    return short, easiest_ways(short, _starts(house))


def _place(area: shapely.Geometry | None, toward: shapely.Geometry | None) -> Point2:
    """The point of a foothold from which the next step is made."""
    if area is None or toward is None:
        return (0.0, 0.0)
    point = nearest_points(area, toward)[0]
    return (float(point.x), float(point.y))


def onto_footholds(house: Site, catalogue: Catalogue) -> FloatArray:
    """How far the hardest step onto each foothold is beyond reach, likely and at the figures' ends.

    Parameters
    ----------
    house : Site
        The bare house and the ground about it.
    catalogue : Catalogue
        What a person manages in one step.

    Returns
    -------
    ndarray, shape (3, N)
        For what a person likely manages, for the most and for the least. [m]
    """
    figures = [catalogue.figure(name) for name in LIMIT_FIGURES]
    cases = np.array(
        [[one.value for one in figures], [one.high for one in figures], [one.low for one in figures]]
    )
    return _hardest(house, cases.tobytes())


def short_in(house: Site, opening: Opening, limits: FloatArray) -> FloatArray:
    """How much the hardest step of the easiest climb is beyond reach, in each of many cases.

    Parameters
    ----------
    house : Site
        The bare house.
    opening : Opening
        An opening to the outside.
    limits : ndarray, shape (R, 3)
        As `Limits`, in each case. [m]

    Returns
    -------
    ndarray, shape (R,)
        As `Climb.short_m`. [m]
    """
    hardest = _hardest(house, np.ascontiguousarray(limits, dtype=np.float64).tobytes())
    least: FloatArray = np.maximum(hardest, _short(house, *_last(house, opening), limits=limits)).min(axis=1)
    return least


@lru_cache(maxsize=64)
def _hardest(house: Site, given: bytes) -> FloatArray:
    """The hardest step onto each foothold in each case: all openings of a house ask for the same."""
    limits = np.frombuffer(given, dtype=np.float64).reshape(-1, 3)
    return hardest_steps(_short(house, *_between(house), limits=limits), _starts(house))
