"""Strong light that falls straight on a detector's lens: headlamps on the road, rooflights. The sun is left out."""

from __future__ import annotations

import math
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.model.catalogue import Figure
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.estimate import Estimate
from wardwright.model.opening import Opening
from wardwright.model.placement import along, opening_line, standing
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.detector_spots import LOOKS_ALL_ROUND_DEG, half_centre_deg
from wardwright.rules.glass_ahead import view_from
from wardwright.rules.outdoors import outdoor_side

LAMP_UP_M = 0.7
"""Headlamps above the road, which is taken to lie level with the ground. [m] (assumption)"""
LAMP_HALF_DEG = 15.0
"""Headlamps shine this far to each side of where the car is heading. [deg] (assumption)"""
LAMP_FAR_M = 60.0
"""From farther off headlamps dazzle nothing. [m] (assumption)"""
ROAD_STEP_M = 1.0
"""Between places on the road that are tried. [m] (assumption)"""
GLASS_PASSES = 0.8
"""The share of light that a double pane lets through. [-] (common practice)"""
OPAQUE = ("wall", "fence", "shed", "flat-roof", "building")
"""What stands on the ground and hides headlamps; leaves and cars do not count on."""
OFF_WALL_M = 0.02
"""A rooflight is looked for this far inside its wall. [m]"""


class Light(NamedTuple):
    """A strong light on a lens."""

    opening: Opening
    """By which it comes in."""
    source: Point2
    """Where it is on the plan. [m]"""
    strength: Estimate
    """On the lens [lx], or how far off its axis a rooflight is [deg]."""


class Ray(NamedTuple):
    """A straight line from a lens to a lamp."""

    eye: FloatArray
    """Shape (3,). [m]"""
    lamp: FloatArray
    """Shape (3,). [m]"""

    @property
    def line(self) -> shapely.LineString:
        """On the plan. [m]"""
        return shapely.LineString([self.eye[:2], self.lamp[:2]])

    def height_at(self, point: Point2) -> float:
        """How high it passes over a point of its own on the plan, above the house's zero. [m]"""
        whole = math.hypot(self.lamp[0] - self.eye[0], self.lamp[1] - self.eye[1])
        share = math.hypot(point[0] - self.eye[0], point[1] - self.eye[1]) / whole
        return float(self.eye[2] + share * (self.lamp[2] - self.eye[2]))


def headlamps(site: Site, device: Device, sheet: MovementSheet, *, figure: Figure) -> Light | None:
    """The strongest headlamps that shine on a lens through an uncovered pane.

    Parameters
    ----------
    site : Site
        The house, its road and what stands on its ground.
    device : Device
        The detector.
    sheet : MovementSheet
        Its sheet.
    figure : Figure
        How strongly headlamps shine. [cd]

    Returns
    -------
    Light or None
        The strongest of all places on the road and both ways along it; None where none shine in.
    """
    return _headlamps(site.bare, device, sheet, figure=figure)


@lru_cache(maxsize=256)
def _headlamps(site: Site, device: Device, sheet: MovementSheet, *, figure: Figure) -> Light | None:
    place = standing(site, device)
    panes = _bare_panes(site, place.storey)
    eye = np.array([place.x_m, place.y_m, site.storey(place.storey).elevation_m + place.height_m])
    blockers = view_from(site, place.storey, (place.x_m, place.y_m)).blockers
    best: Light | None = None
    lamps, headings = _lamps(site)
    for lamp in lamps[_may_shine_on(eye, lamps, headings, sheet=sheet, heading_deg=place.heading_deg)]:
        way = eye - lamp
        share = GLASS_PASSES / float(way @ way)
        if best is not None and figure.value * share <= best.strength.value:
            continue
        opening = _let_in(site, panes, Ray(eye, lamp), blockers=blockers)
        if opening is not None:
            value, low, high = (one * share for one in (figure.value, figure.low, figure.high))
            strength = Estimate(value=value, low=low, high=high, unit="lx", basis="default")
            best = Light(opening, (float(lamp[0]), float(lamp[1])), strength)
    return best


def _may_shine_on(
    eye: FloatArray, lamps: FloatArray, headings: FloatArray, *, sheet: MovementSheet, heading_deg: float
) -> BoolArray:
    """Which headlamps are near enough, point toward a lens, and lie in its fan; what stands between apart."""
    east, north = (eye[axis] - lamps[:, axis] for axis in (0, 1))
    flat = np.hypot(east, north)
    kept: BoolArray = (flat > 0.0) & (flat <= LAMP_FAR_M)
    toward = np.degrees(np.arctan2(north, east))
    kept &= _between_deg(toward, headings) <= LAMP_HALF_DEG
    if sheet.angle_deg < LOOKS_ALL_ROUND_DEG:
        kept &= _between_deg(toward + 180.0, heading_deg) <= sheet.angle_deg / 2
    return kept


def rooflight(site: Site, device: Device, sheet: MovementSheet) -> Light | None:
    """The rooflight nearest to the axis of a detector, within the middle third of its fan.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        The detector.
    sheet : MovementSheet
        Its sheet.

    Returns
    -------
    Light or None
        None where none is so near, or the fan has no axis.
    """
    if sheet.angle_deg >= LOOKS_ALL_ROUND_DEG:
        return None
    place = standing(site, device)
    found = []
    for opening in site.openings:
        wall = site.wall(opening.wall)
        if opening.kind != "rooflight" or opening.covering != "none" or wall.storey != place.storey:
            continue
        rise = (opening.sill_m + opening.head_m) / 2 - place.height_m
        for sign in (1.0, -1.0):
            spot = along(wall.line_m, opening.offset_m, left_m=sign * (wall.thickness_m / 2 + OFF_WALL_M))
            x, y = spot[0] - place.x_m, spot[1] - place.y_m
            away = math.hypot(x, y, rise)
            turn = math.radians(float(_between_deg(math.degrees(math.atan2(y, x)), place.heading_deg)))
            # The axis is level.
            off = math.degrees(
                math.acos(max(-1.0, min(1.0, math.cos(turn) * math.hypot(x, y) / max(away, 1e-9))))
            )
            blockers = view_from(site, place.storey, (place.x_m, place.y_m)).blockers
            line = shapely.LineString([(place.x_m, place.y_m), spot])
            if off <= half_centre_deg(sheet) and away <= sheet.reach_m and not line.intersects(blockers):
                strength = Estimate(
                    value=off, low=off, high=off, unit="deg", basis=opening.basis_of("offset_m")
                )
                found.append(Light(opening, spot, strength))
    return min(found, key=lambda light: (light.strength.value, light.opening.id), default=None)


def sees_bare_pane(site: Site, device: Device, sheet: MovementSheet) -> bool:
    """Whether any uncovered pane to the outside lies in a detector's fan."""
    place = standing(site, device)
    view = view_from(site, place.storey, (place.x_m, place.y_m))
    panes = view.panes(place.heading_deg, half_deg=min(180.0, sheet.angle_deg / 2), reach_m=LAMP_FAR_M)
    bare = _bare_panes(site.bare, place.storey)
    return any(pane.opening in bare for pane in panes)


@lru_cache(maxsize=64)
def _bare_panes(house: Site, storey: str) -> dict[str, Opening]:
    """Uncovered panes of a storey to the outside, by id."""
    return {
        one.id: one
        for one in house.openings
        if _is_bare_pane(house, one) and house.wall(one.wall).storey == storey
    }


def _is_bare_pane(site: Site, opening: Opening) -> bool:
    is_pane = opening.glazing is not None and opening.covering == "none" and opening.kind != "rooflight"
    return is_pane and outdoor_side(site, opening) is not None


@lru_cache(maxsize=64)
def _lamps(site: Site) -> tuple[FloatArray, FloatArray]:
    """Places of headlamps on the road, shape (N, 3) [m], and where each car heads, both ways, shape (N,) [deg]."""
    road = site.ground.road_m or ()
    level = site.ground.level_m + LAMP_UP_M
    places, headings = [], []
    for start, end in pairwise(road):
        length = math.dist(start, end)
        heading = math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))
        for step in range(math.ceil(length / ROAD_STEP_M) + 1):
            share = min(1.0, step * ROAD_STEP_M / length) if length > 0.0 else 0.0
            x, y = (a + share * (b - a) for a, b in zip(start, end, strict=True))
            places += [(x, y, level)] * 2
            headings += [heading, heading + 180.0]
    return np.array(places, dtype=np.float64).reshape(-1, 3), np.array(headings, dtype=np.float64)


def _let_in(site: Site, panes: dict[str, Opening], ray: Ray, *, blockers: shapely.Geometry) -> Opening | None:
    """The pane that a straight line from a lens to a headlamp goes out by; None where something stops it."""
    if ray.line.intersects(blockers):
        return None
    crossed: Opening | None = None
    for opening in panes.values():
        wall = site.wall(opening.wall)
        hit = ray.line.intersection(shapely.LineString(opening_line(wall, opening)))
        if hit.is_empty:
            continue
        height = ray.height_at(hit.coords[0]) - site.storey(wall.storey).elevation_m
        if not opening.sill_m <= height <= opening.head_m:
            return None
        crossed = opening
    return None if crossed is None or _is_hidden(site, ray) else crossed


def _is_hidden(site: Site, ray: Ray) -> bool:
    """Whether something on the ground stands as high as the line where they meet."""
    for thing in site.ground.things:
        if thing.kind in OPAQUE:
            outline = thing.outline_m
            shape = shapely.Polygon(outline) if len(outline) > 2 else shapely.LineString(outline)
            top = site.ground.level_m + thing.height_m
            # Where it is lowest: at the end that is nearer to the lamp, or to the lens.
            ends = shapely.get_coordinates(ray.line.intersection(shape))
            if any(ray.height_at((float(x), float(y))) <= top for x, y in ends):
                return True
    return False


def _between_deg(a_deg: FloatArray | float, b_deg: FloatArray | float) -> FloatArray:
    return np.abs((np.asarray(a_deg) - b_deg + 180.0) % 360.0 - 180.0)
