"""The sun in a house: the only file of this engine that knows the model.

The sun's way hangs on the place, its order before a wall on the wall's azimuth, what shades a pane on the house: each
is remembered by just that, so that a moved device asks only about its own lines.

Limits: clear sky the whole year; roofs above the walls, hills and trees hide nothing; panes of other storeys are not
looked at; a lit floor's own furniture hides nothing of it; light that glass, floors or mirrors throw on is left out.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.panels import Blockers, between, joined
from wardwright.geometry.raster import BoolArray, FloatArray, Grid, IntArray
from wardwright.geometry.sight import look, visible_heights
from wardwright.model.floor_tops import tops_of
from wardwright.model.opening import Opening
from wardwright.model.outside_shade import outside_shade
from wardwright.model.placement import along, direction, sides_of_opening
from wardwright.model.site import Site
from wardwright.model.surfaces import level_of, surfaces
from wardwright.model.time_zones import time_zone_of
from wardwright.physics.sunlight.clock import clock_shift
from wardwright.physics.sunlight.panes import Aims, Pane, aims_of, bounds_of, lit_by_any, row_bounds, shining
from wardwright.physics.sunlight.position import HALF_SUN_RAD
from wardwright.physics.sunlight.shade import beyond, reach_the_sun
from wardwright.physics.sunlight.year import Facing, Year, facing, sun_year

CELL_M = 0.1
"""Side of a cell of the floor, as the detectors' shapes have it. [m]"""
THIN_STEP_MIN, THIN_DAYS = 6.0, 5
"""Steps and days of the thinned year that ranges are taken from. [min], [-]"""
OFF_GLASS_M, UNDER_HEAD_M = 0.01, 0.05
"""How far behind the middle of a wall, and under its head, a line from a pane into the room begins. [m]"""
REACH_M, ARC_M = 15.0, 0.15
"""How far into the house sun through a pane is followed, and how finely. [m] (assumption)"""


class SitePane(NamedTuple):
    """A pane of the house, by which sun comes in."""

    opening: str
    storey: str
    pane: Pane
    is_covered: bool
    """Whether a curtain, a blind or a shutter is drawn before it, as told."""

    @property
    def normal(self) -> float:
        """Direction of its outward normal on the plan, anticlockwise from x. [rad]"""
        return math.atan2(self.pane.normal[1], self.pane.normal[0])


class Lens(NamedTuple):
    """A place that the sun may shine on."""

    storey: str
    x: float
    y: float
    z: float
    """Above the house's zero. [m]"""


class Beam(NamedTuple):
    """The sun through one pane, on a lens or on floor in view."""

    opening: str
    is_covered: bool
    steps: IntArray
    """Steps of the year, ascending."""
    bearings: FloatArray
    """Of the sun on the plan at each, anticlockwise from x; empty for a lit floor. [rad]"""


class Sun(NamedTuple):
    """The year at a house."""

    year: Year
    clock: FloatArray
    """What is added to local mean time on each day, shape (365,). [min]"""
    zone: str | None
    """The time zone; None: hours are of local mean time."""
    north: float | None
    """Where true north lies, anticlockwise from the plan's y axis; None: not known. [rad]"""


def sun_of(site: Site) -> Sun:
    """The year at a house.

    Parameters
    ----------
    site : Site
        The house.

    Returns
    -------
    Sun
        All steps of 2 minutes with the sun up.

    Raises
    ------
    NotComputable
        If its latitude is not known.
    """
    place = site.place
    if place.latitude_deg is None:
        raise NotComputable("no latitude", cure="Add the latitude, such as 'latitude 51.5' in notes")
    longitude = place.longitude_deg or 0.0
    zone = time_zone_of(place) if place.longitude_deg is not None else None
    north = None if place.north_deg is None else math.radians(place.north_deg)
    return Sun(_year(place.latitude_deg, longitude, is_thin=False), clock_shift(zone, longitude), zone, north)


@lru_cache(maxsize=8)
def _year(latitude_deg: float, longitude_deg: float, *, is_thin: bool) -> Year:
    step, days = (THIN_STEP_MIN, THIN_DAYS) if is_thin else (2.0, 1)
    return sun_year(math.radians(latitude_deg), math.radians(longitude_deg), step=step, every_days=days)


def _order(site: Site, normal: float, *, north: float, is_thin: bool, spread: float = HALF_SUN_RAD) -> Facing:
    """The year before a wall whose outward normal has a direction on the plan. [rad]"""
    place = site.place
    azimuth = round(math.degrees(math.pi / 2.0 + north - normal), 4) % 360.0
    find = _thin_order if is_thin else _full_order
    return find((place.latitude_deg or 0.0, place.longitude_deg or 0.0), azimuth, spread)


@lru_cache(maxsize=12)
def _full_order(place: tuple[float, float], azimuth_deg: float, spread: float) -> Facing:
    return facing(_year(*place, is_thin=False), math.radians(azimuth_deg), spread=spread)


@lru_cache(maxsize=96)
def _thin_order(place: tuple[float, float], azimuth_deg: float, spread: float) -> Facing:
    return facing(_year(*place, is_thin=True), math.radians(azimuth_deg), spread=spread)


def step_minutes(site: Site, *, is_thin: bool = False) -> float:
    """What one step stands for in a year.

    Parameters
    ----------
    site : Site
        A house whose latitude is known.
    is_thin : bool, default False
        Of the thinned year.

    Returns
    -------
    float
        Minutes of a year. [min]
    """
    return _year(site.place.latitude_deg or 0.0, site.place.longitude_deg or 0.0, is_thin=is_thin).step_min


@lru_cache(maxsize=64)
def panes_of(house: Site) -> tuple[SitePane, ...]:
    """All panes and gaps to the open air.

    Parameters
    ----------
    house : Site
        A bare house.

    Returns
    -------
    tuple of SitePane
        In the order of the openings' ids.
    """
    found = []
    for opening in sorted(house.openings, key=lambda one: one.id):
        sign = _outward(house, opening)
        lets_light_in = opening.glazing is not None or opening.kind in ("window", "rooflight", "gap")
        if sign == 0.0 or not lets_light_in:
            continue
        wall = house.wall(opening.wall)
        floor = house.storey(wall.storey).elevation_m
        _, (nx, ny), _ = direction(wall.line_m)
        pane = Pane(
            along(wall.line_m, opening.offset_m),
            (sign * nx, sign * ny),
            opening.width_m,
            floor + opening.sill_m,
            floor + opening.head_m,
            wall.thickness_m,
        )
        found.append(SitePane(opening.id, wall.storey, pane, opening.covering != "none"))
    return tuple(found)


def _outward(house: Site, opening: Opening) -> float:
    """1 where the open air is on the left of an opening's wall, -1 on the right, 0 where not on just one side."""
    sides = [s is None or house.space(s).is_outdoors for s in sides_of_opening(house, opening)]
    return 0.0 if sides[0] == sides[1] else 1.0 if sides[0] else -1.0


def beams_on(
    site: Site, lens: Lens, *, north: float, is_thin: bool = False, spread: float = HALF_SUN_RAD
) -> tuple[Beam, ...]:
    """When the sun shines straight on a lens, through which pane, whichever way it looks.

    Parameters
    ----------
    site : Site
        A house whose latitude is known.
    lens : Lens
        Where the lens is.
    north : float
        Where true north lies, anticlockwise from the plan's y axis. [rad]
    is_thin : bool, default False
        Whether the thinned year will do.
    spread : float, default HALF_SUN_RAD
        Half of the sun's disc: a beam lasts as long as any part of it shines; 0 for its middle alone. [rad]

    Returns
    -------
    tuple of Beam
        One for each pane of its storey that any beam comes through, coverings taken as drawn back.
    """
    return _beams_on(site.bare, lens, north=north, is_thin=is_thin, spread=spread)


@lru_cache(maxsize=2048)
def _beams_on(house: Site, lens: Lens, *, north: float, is_thin: bool, spread: float) -> tuple[Beam, ...]:
    found = []
    for one in panes_of(house):
        if one.storey != lens.storey:
            continue
        at = bounds_of(one.pane, [lens[1:]])
        if at.right[0] >= at.left[0] or at.high[0] <= max(0.0, at.low[0]):
            continue
        order = _order(house, one.normal, north=north, is_thin=is_thin, spread=spread)
        places = shining(order, at)
        if not len(places):
            continue
        aims = aims_of(order, at, places)
        free = reach_the_sun(lens[1:], aims, _in_the_open(house, lens.storey), normal=one.normal)
        places = places[free]
        if len(places):
            steps = order.steps[places]
            by_time = np.argsort(steps)
            bearings = one.normal + order.turn[places]
            found.append(Beam(one.opening, one.is_covered, steps[by_time], bearings[by_time]))
    return tuple(found)


@lru_cache(maxsize=64)
def _uncovered(house: Site) -> Site:
    """The same house with every covering drawn back."""
    openings = tuple(
        one if one.covering == "none" else one.model_copy(update={"covering": "none"})
        for one in house.openings
    )
    return house.model_copy(update={"openings": openings}).bare


@lru_cache(maxsize=64)
def _in_the_open(house: Site, storey: str) -> Blockers:
    """All that stops light, on a storey and outside: furniture of other storeys left out."""
    levels = [level_of(_uncovered(house), one.id) for one in house.storeys]
    own = [surfaces(level, "light", "told") for level in levels if level.storey.id == storey]
    return joined([*own, outside_shade(house, storey)])


class View(NamedTuple):
    """Cells of a storey's floor that a detector looks at."""

    storey: str
    grid: Grid
    mask: BoolArray
    """Shape (ny, nx)."""


def beams_into(site: Site, view: View, *, north: float, is_thin: bool = False) -> tuple[Beam, ...]:
    """When the sun shines on floor, or on the top of low furniture, that is in view, and through which pane.

    Parameters
    ----------
    site : Site
        A house whose latitude is known.
    view : View
        What is in view.
    north : float
        Where true north lies, anticlockwise from the plan's y axis. [rad]
    is_thin : bool, default False
        Whether the thinned year will do.

    Returns
    -------
    tuple of Beam
        One for each pane of the storey that lights any of it, coverings taken as drawn back.
    """
    house = site.bare
    found = []
    for one in panes_of(house):
        if one.storey != view.storey:
            continue
        points = _lightable(house, one)
        row, column = view.grid.cells_of(points[:, :2])
        seen = view.mask[row, column]
        if not seen.any():
            continue
        order = _order(house, one.normal, north=north, is_thin=is_thin)
        clear = _clear(house, one, north=north, is_thin=is_thin)
        lit = lit_by_any(order, row_bounds(one.pane, points[seen], cell=CELL_M), clear)
        if lit.any():
            found.append(Beam(one.opening, one.is_covered, np.sort(order.steps[lit]), np.empty(0)))
    return tuple(found)


TRIED_STEPS = 24
"""How many steps of a beam are looked at for the one that lights most. [-]"""


def brightest(site: Site, view: View, beam: Beam, *, north: float) -> BoolArray:
    """The floor in view that the sun through one pane lights when it lights most of it.

    Parameters
    ----------
    site : Site
        A house whose latitude is known.
    view : View
        What is in view.
    beam : Beam
        From `beams_into`.
    north : float
        Where true north lies, anticlockwise from the plan's y axis. [rad]

    Returns
    -------
    ndarray of bool, shape (ny, nx)
        Cells of the view's grid, at one of some two dozen steps spread over the beam.
    """
    house = site.bare
    one = next(pane for pane in panes_of(house) if pane.opening == beam.opening)
    points = _lightable(house, one)
    row, column = view.grid.cells_of(points[:, :2])
    seen = view.mask[row, column]
    at, order = bounds_of(one.pane, points[seen]), _order(house, one.normal, north=north, is_thin=False)
    steps = beam.steps[np.linspace(0, len(beam.steps) - 1, TRIED_STEPS).astype(np.intp)]
    places = np.nonzero(np.isin(order.steps, steps))[0]
    turn, profile = order.turn[places, None], order.profile[places, None]
    lit = (turn >= at.right) & (turn <= at.left) & (profile >= at.low) & (profile <= at.high)
    mask = np.zeros(view.grid.shape, dtype=np.bool_)
    most = lit[np.argmax(lit.sum(axis=1))]
    mask[row[seen][most], column[seen][most]] = True
    return mask


@lru_cache(maxsize=256)
def _lightable(house: Site, one: SitePane) -> FloatArray:
    """Places of a storey that a straight line joins to a pane, shape (N, 3). [m]"""
    points = tops_of(level_of(house, one.storey), CELL_M)
    at = bounds_of(one.pane, points)
    points = points[(at.right < at.left) & (at.high > np.maximum(0.0, at.low))]
    level = level_of(_uncovered(house), one.storey)
    blockers = between(surfaces(level, "light", "told"), low=level.floor_m, high=level.ceiling_m)
    (x, y), (nx, ny) = one.pane.middle, one.pane.normal
    joined_to = np.zeros(len(points), dtype=np.bool_)
    for aside in (-0.35 * one.pane.width, 0.35 * one.pane.width):
        sight = look(
            (
                x - ny * aside - OFF_GLASS_M * nx,
                y + nx * aside - OFF_GLASS_M * ny,
                one.pane.head - UNDER_HEAD_M,
            ),
            blockers,
            heading=one.normal + math.pi,
            half_angle=math.pi / 2.0,
            reach=REACH_M,
            band=(level.floor_m, level.ceiling_m),
            arc=ARC_M,
        )
        joined_to |= visible_heights(sight, points[:, :2]).seen_at(points[:, 2])
    return np.asarray(points[joined_to])


@lru_cache(maxsize=256)
def _clear(house: Site, one: SitePane, *, north: float, is_thin: bool) -> BoolArray:
    """Whether nothing outside stands between the middle of a pane and the sun, for each step of its order."""
    order = _order(house, one.normal, north=north, is_thin=is_thin)
    (x, y), (nx, ny) = one.pane.middle, one.pane.normal
    out = one.pane.depth / 2.0 + 2 * OFF_GLASS_M
    eye = (x + nx * out, y + ny * out, (one.pane.sill + one.pane.head) / 2.0)
    rise = np.tan(order.profile) * np.cos(order.turn)
    return reach_the_sun(eye, Aims(order.turn, rise), _before(house, one), normal=one.normal)


def _before(house: Site, one: SitePane) -> Blockers:
    """What stands outside of a pane's own wall."""
    own = surfaces(level_of(_uncovered(house), one.storey), "light", "told")
    everything = joined([outside_shade(house, one.storey), own])
    edge = one.pane.depth / 2.0 + OFF_GLASS_M
    return beyond(everything, one.pane.middle, normal=one.pane.normal, edge=edge)
