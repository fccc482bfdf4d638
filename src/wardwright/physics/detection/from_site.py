"""Movement detectors of a site: the only file of this engine that knows the model.

Everything is remembered by the parts that matter: the storeys, the detector's place and sheet, the room temperatures.

Limits: sight does not leave the storeys that a stair joins directly; things outside the house hide nothing; a ceiling
only cuts heights; crawling and very slow movement may pass unnoticed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache, partial

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.geometry.rays import ray_ranges
from wardwright.geometry.sight import Sight, look, look_again, visible_heights
from wardwright.model import sightlines
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.floor_cells import FloorCells, cells_on_flights, floor_cells
from wardwright.model.leaves import Leaves
from wardwright.model.placement import standing
from wardwright.model.sightlines import stood_on
from wardwright.model.site import Site
from wardwright.model.surfaces import Level, clear_of_walls, level_of, levels_by_stairs
from wardwright.physics.detection.areas import Owned, facts_of, owner_before
from wardwright.physics.detection.contrast import contrast_factor
from wardwright.physics.detection.crossing import angles_to, mask_at
from wardwright.physics.detection.depth import core_cells
from wardwright.physics.detection.noticed import Noticing, SeenFacts, Watch, noticings_of
from wardwright.physics.detection.noticing import Detector, Needs, noticed_at
from wardwright.physics.detection.shapes import (
    FAN_MARGIN_RAD,
    HIGH_REACH,
    Fan,
    Figures,
    Sensed,
    possibly_sensed,
    sensed_places,
    widened,
    within_reach,
)
from wardwright.physics.detection.walkers import BODY_RADIUS_M, Body, Posture, body_of
from wardwright.physics.detection.walks import Walks, walks_of
from wardwright.physics.detection.zones import Halves, zone_halves

__all__ = [
    "Noticing", "Posture", "SeenFacts", "Walks", "Watch", "crossing_angles", "detector_of", "noticed_along",
    "seen_facts", "walks_of", "watch", "watch_elsewhere",
]  # fmt: skip

CELL_M = 0.1
"""Side of a cell of the floor. [m]"""


@dataclass(frozen=True)
class _Placed:
    """All that a detector's shapes depend on: hashable."""

    level: Level
    others: tuple[Level, ...]
    eye: tuple[float, float, float]
    heading: float
    tilt: float
    sheet: MovementSheet
    temperatures: tuple[float, float]
    """Warmest and usual. [deg C]"""
    cell: float
    """Side of a cell of the floor. [m]"""

    def __hash__(self) -> int:
        """The hash of the content, kept: every answer is looked up by it."""
        return self._kept_hash

    @cached_property
    def _kept_hash(self) -> int:
        return hash(tuple(vars(self).values()))


def watch(
    site: Site, catalogue: Catalogue, device: Device, *, posture: Posture = "upright", cell: float = CELL_M
) -> Watch:
    """What a movement detector watches on its own storey.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        For its sheet.
    device : Device
        The detector.
    posture : {"upright", "crouch", "crawl", "pet"}, default "upright"
        How somebody goes.
    cell : float, default CELL_M
        Side of a cell of the floor. [m]

    Returns
    -------
    Watch
        Its shapes; low lies within seen, seen within high, core within low.

    Raises
    ------
    NotComputable
        If it is no movement detector.
    """
    placed = _placed(site, catalogue, device, cell=cell)
    return _watched(placed, placed.level, posture)._replace(device=device.id)


def watch_elsewhere(
    site: Site, catalogue: Catalogue, device: Device, *, posture: Posture = "upright"
) -> tuple[Watch, ...]:
    """What a movement detector watches through stairwells, one storey up or down.

    Parameters
    ----------
    site, catalogue, device : Site, Catalogue, Device
        As for `watch`.
    posture : {"upright", "crouch", "crawl", "pet"}, default "upright"
        How somebody goes.

    Returns
    -------
    tuple of Watch
        One for each storey that a stair joins to its own, in the order of their ids.
    """
    placed = _placed(site, catalogue, device)
    return tuple(_watched(placed, level, posture)._replace(device=device.id) for level in placed.others)


def noticed_along(
    site: Site,
    catalogue: Catalogue,
    devices: Sequence[Device],
    *,
    walks: Walks,
    posture: Posture = "upright",
    reach_shares: Sequence[float] = (0.8, 0.9, 1.0, 1.1, 1.2),
    room_c: float | None = None,
) -> tuple[tuple[Noticing, ...], ...]:
    """How far one walks on each of some routes before each of some movement detectors notices.

    Parameters
    ----------
    site, catalogue : Site, Catalogue
        As for `watch`.
    devices : sequence of Device
        The detectors.
    walks : Walks
        The routes, points at most 0.05 m apart.
    posture : {"upright", "crouch", "crawl", "pet"}, default "upright"
        How somebody goes.
    reach_shares : sequence of float, default (0.8, 0.9, 1.0, 1.1, 1.2)
        Shares of the sheet's reach. [-]
    room_c : float, optional
        Room temperature; None: the site's usual one. [deg C]

    Returns
    -------
    tuple of tuple of Noticing
        For each detector, walked distances on the plan, one for each route. [m]
    """
    every = [_placed(site, catalogue, device) for device in devices]
    found: dict[_Placed, tuple[Noticing, ...]] = {}
    for sheet in dict.fromkeys(placed.sheet for placed in every):
        alike = [placed for placed in every if placed.sheet == sheet]
        met = [_met(placed, walks, posture) for placed in alike]
        floors, detectors = np.array([stood for _, stood in met]), [_detector(one, room_c) for one in alike]
        reaches = np.asarray(reach_shares, dtype=np.float64) * sheet.reach_m
        noticed = noticed_at(walks, floors, detectors, reaches=reaches, body=body_of(posture))
        for placed, (inside, _), distances in zip(alike, met, noticed, strict=True):
            found[placed] = noticings_of(walks, inside, distances)
    return tuple(found[placed] for placed in every)


def _met(placed: _Placed, walks: Walks, posture: Posture) -> tuple[BoolArray, FloatArray]:
    """Which points of walks lie in a detector's high-side shape, and what is stood on there [m]; shape (N,)."""
    inside = np.zeros(len(walks.points), dtype=np.bool_)
    floors = np.full(len(walks.points), placed.level.floor_m - 1e3)
    for level in (placed.level, *placed.others):
        there = walks.rows.get(level.storey.id)
        # Zones only look down: nobody is noticed on a floor above the detector's own.
        if there is not None and level.floor_m <= placed.level.floor_m:
            shapes, on_it = _watched(placed, level, posture), walks.points[there]
            inside[there] = mask_at(shapes.grid, shapes.high, on_it)
            for name, rows in walks.by_flight(level.storey.id):
                floors[rows] = stood_on(level, (placed.level, *placed.others), walks.points[rows], stair=name)
    floors[walks.reaching.behind(np.asarray(placed.eye[:2]))] = np.nan
    return inside, floors


def seen_facts(
    site: Site, catalogue: Catalogue, device: Device, *, reach_shares: Sequence[float] = (0.8, 1.0, 1.2)
) -> SeenFacts:
    """What a movement detector really sees on its own storey.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        For its sheet.
    device : Device
        The detector.
    reach_shares : sequence of float, default (0.8, 1.0, 1.2)
        Shares of its reach, none above 1.2. [-]

    Returns
    -------
    SeenFacts
        Areas of floor.
    """
    placed = _placed(site, catalogue, device)
    cells, sensed = _picture(placed, level := placed.level, "upright")
    rows = np.nonzero(sensed.in_fan)[0]
    told = visible_heights(_sight(placed, level, "told"), cells.points()[rows])
    at_03, at_10 = np.zeros_like(sensed.in_fan), np.zeros_like(sensed.in_fan)
    at_03[rows], at_10[rows] = told.seen_at(level.floor_m + 0.3), told.seen_at(level.floor_m + 1.0)
    owned = Owned(
        cells.spaces[cells.free],
        owner_before(cells.grid, cells.spaces, placed.eye[:2], heading=placed.heading),
        tuple(space.id for space in level.parts.spaces),
        placed.cell,
    )
    facts = facts_of(
        sensed, owned, points_seen=(at_03, at_10), reach=placed.sheet.reach_m, reach_shares=reach_shares
    )
    return facts._replace(device=device.id, storey=level.storey.id)


def crossing_angles(site: Site, catalogue: Catalogue, device: Device, *, walks: Walks) -> FloatArray:
    """How walks cross a detector's view: 90 is straight across, 0 straight toward it or away.

    Parameters
    ----------
    site, catalogue, device : Site, Catalogue, Device
        As for `watch`.
    walks : Walks
        The walks, N points in all.

    Returns
    -------
    ndarray, shape (N,)
        Between the walk and the line to the detector; nan where the walk is outside its high-side shape or on
        another storey, or stands still. [deg]
    """
    placed = _placed(site, catalogue, device)
    shapes = _watched(placed, placed.level, "upright")
    angles = np.full(len(walks.points), np.nan)
    there = walks.rows.get(shapes.storey, np.zeros(0, dtype=np.int64))
    there = there[mask_at(shapes.grid, shapes.high, walks.points[there])]
    angles[there] = angles_to(walks.points[there], placed.eye[:2], steps=walks.steps[there])
    return angles


def detector_of(site: Site, catalogue: Catalogue, device: Device) -> Detector:
    """A movement detector in its place, at the usual room temperature, for walks on other things than floors.

    Parameters
    ----------
    site, catalogue, device : Site, Catalogue, Device
        As for `watch`.
    """
    return _detector(_placed(site, catalogue, device), None)


def _placed(site: Site, catalogue: Catalogue, device: Device, *, cell: float = CELL_M) -> _Placed:
    sheet = catalogue.sheet(device.sheet).movement
    if sheet is None:
        raise NotComputable(f"{device.name} ({device.id}) has no sheet of a movement detector")
    return _placed_in(site.bare, device, sheet=sheet, cell=cell)


@lru_cache(maxsize=1024)
def _placed_in(house: Site, device: Device, *, sheet: MovementSheet, cell: float) -> _Placed:
    at = standing(house, device)
    level = level_of(house, at.storey)
    heading = math.radians(at.heading_deg)
    x, y = clear_of_walls(level, (at.x_m, at.y_m), (math.cos(heading), math.sin(heading)))
    return _Placed(
        level,
        levels_by_stairs(house, at.storey),
        (x, y, level.floor_m + at.height_m),
        heading,
        math.radians(device.tilt_deg),
        sheet,
        (house.place.warm_room_c, house.place.usual_room_c),
        cell,
    )


@lru_cache(maxsize=256)
def _rays(placed: _Placed) -> tuple[Halves, FloatArray]:
    """Its rays, and the range at which something stops each with the leaves as told. [m]"""
    sheet, split = placed.sheet, math.radians(placed.sheet.pair_split_deg)
    halves = zone_halves(
        [(row.pairs, math.radians(row.depression_deg)) for row in sheet.rows],
        heading=placed.heading,
        angle=math.radians(sheet.angle_deg),
        split=split,
        tilt=placed.tilt,
    )
    about, rays = (placed.level, placed.others), (halves.azimuth, halves.rise)
    stops, through = sightlines.blockers_about(*about), sightlines.floors_about(*about)
    return halves, ray_ranges(placed.eye, rays, stops, through=through)


def _detector(placed: _Placed, room_c: float | None) -> Detector:
    sheet, split = placed.sheet, math.radians(placed.sheet.pair_split_deg)
    contrast = contrast_factor(placed.temperatures[1] if room_c is None else room_c, sheet.least_contrast_k)
    needs = Needs(sheet.edges_needed, sheet.window_s, split, contrast)
    return Detector(np.asarray(placed.eye), *_rays(placed), needs)


def _fan(placed: _Placed) -> Fan:
    half, split = np.radians((placed.sheet.angle_deg / 2.0, placed.sheet.pair_split_deg)).tolist()
    rows = tuple(math.radians(row.depression_deg) + placed.tilt for row in placed.sheet.rows)
    return Fan(placed.eye, placed.heading, half, rows, split)


@lru_cache(maxsize=256)
def _sight(placed: _Placed, level: Level, leaves: Leaves) -> Sight:
    """What the detector has in view on its own storey or on another."""
    own, about = placed.level, (placed.level, placed.others)
    is_own = level.storey.id == own.storey.id
    blockers = (sightlines.blockers_on if is_own else sightlines.blockers_about)(*about, leaves=leaves)
    reach = HIGH_REACH * placed.sheet.reach_m + 2.0 * BODY_RADIUS_M
    band = (min(level.floor_m, own.floor_m), max(level.ceiling_m, own.ceiling_m))
    through = () if is_own else sightlines.passages(own, level)
    if leaves == "away":
        told, apart = _sight(placed, level, "told"), sightlines.leaves_apart(*about, on_storey=is_own)
        return look_again(told, blockers, apart=apart, reach=reach, band=band, through=through)
    way, half = placed.heading, min(math.pi, math.radians(placed.sheet.angle_deg) / 2.0 + FAN_MARGIN_RAD)
    return look(placed.eye, blockers, heading=way, half_angle=half, reach=reach, band=band, through=through)


def _sensed(placed: _Placed, level: Level, points: FloatArray, *, ceiling: FloatArray, body: Body) -> Sensed:
    """Where walkers are sensed, at any places of a floor."""
    bottoms = np.full(len(points), level.floor_m)
    figures = Figures(points, bottoms, np.minimum(bottoms + body.height, ceiling), 2.0 * body.radius)
    told, away = (_sight(placed, level, leaves) for leaves in sightlines.LEAVES)
    warm, usual = (contrast_factor(air, placed.sheet.least_contrast_k) for air in placed.temperatures)
    return sensed_places(_fan(placed), figures, told=told, away=away, contrasts=(min(warm, usual), usual))


def _on_flights(placed: _Placed, level: Level, cells: FloorCells, *, body: Body) -> BoolArray:
    """Free cells where walkers are possibly sensed as high on a flight as they have climbed."""
    own, high = placed.level, np.zeros(len(cells.points()), dtype=np.bool_)
    rows, stood = cells_on_flights(level, (own, *placed.others), placed.cell)
    # Who comes up to the detector is seen through the well, and above the detector's own floor.
    for storey in (level, own) if level.floor_m < own.floor_m else (level,):
        top = np.minimum(stood + body.height, max(storey.ceiling_m, own.floor_m))
        who = Figures(cells.points()[rows], np.maximum(stood, storey.floor_m), top, 2.0 * body.radius)
        high[rows] |= possibly_sensed(_fan(placed), who, away=_sight(placed, storey, "away"))
    return high


@lru_cache(maxsize=256)
def _picture(placed: _Placed, level: Level, posture: Posture) -> tuple[FloorCells, Sensed]:
    """What is sensed over the free cells of one storey, its reach not yet applied."""
    cells, body = floor_cells(level, placed.cell), body_of(posture)
    sensed = _sensed(placed, level, cells.points(), ceiling=cells.ceiling[cells.free], body=body)
    high = sensed.high | _on_flights(placed, level, cells, body=body)
    high = widened(cells.mask_of(high), cells.free, by=body.radius, cell=placed.cell)
    return cells, sensed._replace(high=high[cells.free])


@lru_cache(maxsize=512)
def _watched(placed: _Placed, level: Level, posture: Posture) -> Watch:
    cells, picture = _picture(placed, level, posture)
    shapes = within_reach(picture, placed.sheet.reach_m, radius=body_of(posture).radius)
    seen, low, high = map(cells.mask_of, shapes)
    is_own = level.storey.id == placed.level.storey.id
    own = owner_before(cells.grid, cells.spaces, placed.eye[:2], heading=placed.heading) if is_own else -1
    leak = high & (cells.spaces != own) & (cells.spaces >= 0)
    core_of = partial(_core, placed, level, posture)
    return Watch("", level.storey.id, cells.grid, seen=seen, low=low, high=high, leak=leak, core_of=core_of)


@lru_cache(maxsize=512)
def _core(placed: _Placed, level: Level, posture: Posture) -> BoolArray:
    cells, body = floor_cells(level, placed.cell), body_of(posture)

    def is_low(points: FloatArray) -> BoolArray:
        ceiling = cells.ceiling[cells.grid.cells_of(points)]
        sensed = _sensed(placed, level, points, ceiling=ceiling, body=body)
        return within_reach(sensed, placed.sheet.reach_m, radius=body.radius)[1]

    low = _watched(placed, level, posture).low
    return core_cells(low, cells.free, entries=cells.entries, grid=cells.grid, is_low=is_low)
