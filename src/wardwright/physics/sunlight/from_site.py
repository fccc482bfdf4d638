"""The sun in a house: the only file of this engine that knows the model.

The sun's way hangs on the place, its order before a wall on the wall's azimuth, what shades a pane on the house: each
is remembered by just that, so that a moved device asks only about its own lines.

Limits: clear sky the whole year; roofs above the walls, hills and trees hide nothing; panes of other storeys are not
looked at; a lit floor's own furniture hides nothing of it; only glossy floors and mirrors throw it on.
"""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.panels import Blockers, between, joined
from wardwright.geometry.raster import BoolArray, FloatArray, Grid, IntArray
from wardwright.geometry.sight import look, visible_heights
from wardwright.model.daylight import GlossyFloor, Mirror, SitePane, panes_of, shiny_in
from wardwright.model.floor_tops import tops_of
from wardwright.model.outside_shade import outside_shade
from wardwright.model.site import Site
from wardwright.model.surfaces import level_of, surfaces
from wardwright.model.time_zones import time_zone_of
from wardwright.physics.sunlight.clock import clock_shift
from wardwright.physics.sunlight.glints import (
    Glints,
    behind_floor,
    behind_mirror,
    through_floor,
    through_mirror,
)
from wardwright.physics.sunlight.orders import order_at, year_at
from wardwright.physics.sunlight.panes import (
    Aims,
    Bounds,
    ByTime,
    aims_of,
    bounds_of,
    by_time,
    in_rows,
    lit_sky,
    most_lit,
    row_bounds,
    shining,
)
from wardwright.physics.sunlight.position import HALF_SUN_RAD
from wardwright.physics.sunlight.shade import beyond, reach_the_sun
from wardwright.physics.sunlight.shine import Beam, Lens, Norths, Sun, View, norths_in
from wardwright.physics.sunlight.year import Facing, Year

CELL_M = 0.1
"""Side of a cell of the floor, as the detectors' shapes have it. [m]"""
OFF_GLASS_M, UNDER_HEAD_M = 0.01, 0.05
"""How far behind the middle of a wall, and under its head, a line from a pane into the room begins. [m]"""
REACH_M, ARC_M = 15.0, 0.15
"""How far into the house sun through a pane is followed, and how finely. [m] (assumption)"""


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
    return Sun(year_of(site), clock_shift(zone, longitude), zone, north)


def _order(
    site: Site, normal: float, *, norths: Norths, is_thin: bool, spread: float = HALF_SUN_RAD
) -> Facing:
    """The year before a wall whose outward normal has a direction on the plan. [rad]"""
    place = (site.place.latitude_deg or 0.0, site.place.longitude_deg or 0.0)
    azimuths = tuple(round(math.degrees(math.pi / 2.0 + north - normal), 4) % 360.0 for north in norths)
    return order_at(place, azimuths, spread=spread, is_thin=is_thin)


def year_of(site: Site, *, is_thin: bool = False) -> Year:
    """The steps of the year at a house.

    Parameters
    ----------
    site : Site
        A house whose latitude is known.
    is_thin : bool, default False
        The thinned year.

    Returns
    -------
    Year
        Those with the sun up.
    """
    return year_at(site.place.latitude_deg or 0.0, site.place.longitude_deg or 0.0, is_thin=is_thin)


def beams_on(
    site: Site, lens: Lens, *, north: float | Norths, is_thin: bool = False, spread: float = HALF_SUN_RAD
) -> tuple[Beam, ...]:
    """When the sun shines straight on a lens, through which pane, whichever way it looks.

    Parameters
    ----------
    site : Site
        A house whose latitude is known.
    lens : Lens
        Where the lens is.
    north : float or tuple of float
        Where true north lies, anticlockwise from the plan's y axis; the steps of each further one are numbered on
        from those of the one before, a year apart. [rad]
    is_thin : bool, default False
        Whether the thinned year will do.
    spread : float, default HALF_SUN_RAD
        Half of the sun's disc: a beam lasts as long as any part of it shines; 0 for its middle alone. [rad]

    Returns
    -------
    tuple of Beam
        One for each pane of its storey that any beam comes through, coverings taken as drawn back.
    """
    return _beams_on(site.bare, lens, norths=norths_in(north), is_thin=is_thin, spread=spread)


@lru_cache(maxsize=256)
def _panes_before(house: Site, lens: Lens) -> tuple[tuple[SitePane, Bounds], ...]:
    """The panes of its storey by which the sun may shine on a lens, and between which angles."""
    every = [(one, bounds_of(one.pane, [lens[1:]])) for one in panes_of(house) if one.storey == lens.storey]
    return tuple(
        (one, at) for one, at in every if at.right[0] < at.left[0] and at.high[0] > max(0.0, at.low[0])
    )


@lru_cache(maxsize=256)
def _beams_on(house: Site, lens: Lens, *, norths: Norths, is_thin: bool, spread: float) -> tuple[Beam, ...]:
    found = []
    for one, at in _panes_before(house, lens):
        order = _order(house, one.normal, norths=norths, is_thin=is_thin, spread=spread)
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


def beams_into(site: Site, view: View, *, north: float | Norths, is_thin: bool = False) -> tuple[Beam, ...]:
    """When the sun shines on floor, or on the top of low furniture, that is in view, and through which pane.

    Parameters
    ----------
    site : Site
        A house whose latitude is known.
    view : View
        What is in view.
    north : float or tuple of float
        Where true north lies, anticlockwise from the plan's y axis; the steps of each further one are numbered on
        from those of the one before, a year apart. [rad]
    is_thin : bool, default False
        Whether the thinned year will do.

    Returns
    -------
    tuple of Beam
        One for each pane of the storey that lights any of it, coverings taken as drawn back.
    """
    house, norths = site.bare, norths_in(north)
    found = []
    for one in panes_of(house):
        sky = _sky(house, one, view) if one.storey == view.storey else None
        if sky is None:
            continue
        free = _unshaded(house, one, norths=norths, is_thin=is_thin)
        steps = free.steps[sky.take(free.bins)]
        if len(steps):
            found.append(Beam(one.opening, one.is_covered, steps, np.empty(0)))
    return tuple(found)


@lru_cache(maxsize=64)
def _sky(house: Site, one: SitePane, view: View) -> BoolArray | None:
    """From where in the sky the sun lights any of a view through a pane; None where it lights nothing."""
    seen = view.mask[_lightable_cells(house, one, view.grid)]
    return lit_sky(row_bounds(one.pane, _lightable(house, one)[seen], cell=CELL_M)) if seen.any() else None


def beams_thrown(
    site: Site, lens: Lens, view: View, *, north: float
) -> tuple[tuple[GlossyFloor | Mirror, Beam], ...]:
    """When a glossy floor or a mirror in view throws the sun on a lens.

    Parameters
    ----------
    site : Site
        A house whose latitude is known.
    lens : Lens
        Where the lens is.
    view : View
        What is in view: only what shines there, or right before there, counts.
    north : float
        Where true north lies, anticlockwise from the plan's y axis. [rad]

    Returns
    -------
    tuple of (GlossyFloor or Mirror, Beam)
        What throws it, and the beam through each pane; bearings are of the bright spot as the lens sees it. [rad]
    """
    house, found = site.bare, []
    for thing in shiny_in(house, lens.storey):
        eye = _seen_in(thing, lens)
        for one in panes_of(house):
            if eye is None or one.storey != lens.storey:
                continue
            order, at = _order(house, one.normal, norths=(north,), is_thin=False), bounds_of(one.pane, [eye])
            places = shining(order, at)
            places = places[_clear(house, one, norths=(north,), is_thin=False)[places]]
            aims = aims_of(order, at, places)
            spots = _spots(thing, eye, (one.normal + aims.turn, aims.rise))
            met = spots.is_met & _among(view, view.mask, spots.shown)
            met &= _among(view, _lit_cells(house, one, view), spots.shown)
            if met.any():
                away = spots.places[met] - np.asarray(lens[1:3])
                by_time = np.argsort(order.steps[places[met]])
                seen = np.arctan2(away[:, 1], away[:, 0])[by_time]
                found.append(
                    (thing, Beam(one.opening, one.is_covered, order.steps[places[met]][by_time], seen))
                )
    return tuple(found)


def _seen_in(thing: GlossyFloor | Mirror, lens: Lens) -> tuple[float, float, float] | None:
    """Where a lens is seen in something smooth."""
    if isinstance(thing, GlossyFloor):
        return behind_floor(lens[1:], thing.level)
    return behind_mirror(lens[1:], thing.ends, thing.front)


def _spots(
    thing: GlossyFloor | Mirror, eye: tuple[float, float, float], lines: tuple[FloatArray, FloatArray]
) -> Glints:
    """Where lines from behind something smooth come out of it."""
    if isinstance(thing, GlossyFloor):
        return through_floor(eye, *lines, level=thing.level, ring=thing.ring)
    return through_mirror(eye, *lines, face=(thing.ends, thing.front), levels=(thing.low, thing.high))


def _among(view: View, mask: BoolArray, places: FloatArray) -> BoolArray:
    """Whether places lie in cells of a mask."""
    row, column = view.grid.cells_of(places)
    return np.asarray(mask[row, column])


def _lit_cells(house: Site, one: SitePane, view: View) -> BoolArray:
    """Cells that a straight line joins to a pane."""
    mask = np.zeros(view.grid.shape, dtype=np.bool_)
    mask[_lightable_cells(house, one, view.grid)] = True
    return mask


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
    row, column = _lightable_cells(house, one, view.grid)
    seen = view.mask[row, column]
    at, free = (
        bounds_of(one.pane, _lightable(house, one)[seen]),
        _unshaded(house, one, norths=(north,), is_thin=False),
    )
    steps = beam.steps[np.linspace(0, len(beam.steps) - 1, TRIED_STEPS).astype(np.intp)]
    places = np.unique(free.places[np.searchsorted(free.steps, steps)])
    most = most_lit(_order(house, one.normal, norths=(north,), is_thin=False), at, places)
    mask = np.zeros(view.grid.shape, dtype=np.bool_)
    mask[row[seen][most], column[seen][most]] = True
    return mask


@lru_cache(maxsize=256)
def _lightable(house: Site, one: SitePane) -> FloatArray:
    """Places of a storey that a straight line joins to a pane, in rows along it, shape (N, 3). [m]"""
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
    points = points[joined_to]
    return np.asarray(points[in_rows(one.pane, points, cell=CELL_M)])


@lru_cache(maxsize=256)
def _lightable_cells(house: Site, one: SitePane, grid: Grid) -> tuple[IntArray, IntArray]:
    """Row and column of the cells that hold them."""
    return grid.cells_of(_lightable(house, one)[:, :2])


@lru_cache(maxsize=256)
def _unshaded(house: Site, one: SitePane, *, norths: Norths, is_thin: bool) -> ByTime:
    """When nothing outside stands between the middle of a pane and the sun."""
    order = _order(house, one.normal, norths=norths, is_thin=is_thin)
    return by_time(order, _clear(house, one, norths=norths, is_thin=is_thin))


@lru_cache(maxsize=256)
def _clear(house: Site, one: SitePane, *, norths: Norths, is_thin: bool) -> BoolArray:
    """Whether nothing outside stands between the middle of a pane and the sun, for each step of its order."""
    order = _order(house, one.normal, norths=norths, is_thin=is_thin)
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
