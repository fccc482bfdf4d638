"""Where an animal gets up to, and whether a detector's zones pass there."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.fixture import Fixture
from wardwright.model.flights import height_on
from wardwright.model.placement import fixture_outline
from wardwright.model.site import Site
from wardwright.rules.ahead import Ahead, ahead_of
from wardwright.rules.animals import Roaming

STEP_M = 0.1
"""Between places on a thing that are looked at. [m] (assumption)"""
NOT_STOOD_ON = ("curtain", "vent")
"""What no animal stands on."""


class InView(NamedTuple):
    """An animal in a detector's zones."""

    animal: Roaming
    on: str
    """What it is on, in words."""
    subject: str | None
    """Id of that; None: the floor."""
    top_m: float
    """Its own top above the storey's floor. [m]"""
    zone_m: float
    """The lowest zone there above the storey's floor. [m]"""
    place: tuple[float, float]
    """Where, on the plan. [m]"""

    @property
    def over_m(self) -> float:
        """How far it stands up into the zone. [m]"""
        return self.top_m - self.zone_m


def on_floor(site: Site, device: Device, sheet: MovementSheet, *, animal: Roaming) -> InView | None:
    """Where an animal that walks on the floor comes farthest into a detector's zones; None where it does not."""
    ahead = ahead_of(site, device, sheet)
    points = animal.floor_in(ahead)
    stood = np.full(len(points), ahead.level.floor_m)
    return _farthest_in(ahead, points, stood, sheet=sheet, animal=animal, on=("the floor", None))


def on_things(site: Site, device: Device, sheet: MovementSheet, *, animal: Roaming) -> InView | None:
    """Where an animal comes farthest into a detector's zones that jumps onto things or goes up stairs.

    Parameters
    ----------
    site : Site
        The house, its fixtures and stairs.
    device : Device
        The detector.
    sheet : MovementSheet
        Its sheet.
    animal : Roaming
        The animal.

    Returns
    -------
    InView or None
        None where no zone passes over any such place as low as the animal is high.
    """
    ahead = ahead_of(site, device, sheet)
    found = [
        _farthest_in(ahead, points, stood, sheet=sheet, animal=animal, on=on)
        for points, stood, on in _places(site, ahead, animal)
        if len(points)
    ]
    there = [one for one in found if one is not None]
    return max(there, key=lambda one: (round(one.over_m, 9), one.subject or ""), default=None)


def _places(
    site: Site, ahead: Ahead, animal: Roaming
) -> Iterator[tuple[FloatArray, FloatArray, tuple[str, str]]]:
    """Places on each thing, what is stood on there above the house's zero [m], and the thing's name and id."""
    storey, floor = ahead.level.storey, ahead.level.floor_m
    area = animal.area_on(storey.id)
    for fixture in ahead.level.parts.fixtures:
        top = fixture.base_m + fixture.height_m
        is_reached = animal.climbs or top <= animal.jump_m
        outline = shapely.Polygon(fixture_outline(fixture))
        if fixture.kind in NOT_STOOD_ON or not is_reached or not outline.intersects(area):
            continue
        points = _over(fixture)
        yield points, np.full(len(points), floor + top), (fixture.name, fixture.id)
    for stair in ahead.level.parts.stairs:
        line = shapely.LineString(stair.line_m)
        if stair.lower != storey.id or not line.buffer(stair.width_m / 2).intersects(area):
            continue
        steps = np.arange(0.0, line.length, STEP_M)
        points = shapely.get_coordinates(shapely.line_interpolate_point(line, steps))
        stood = height_on(stair, (storey, site.storey(stair.upper)), points)
        known = np.isfinite(stood)
        yield points[known], stood[known], (stair.name, stair.id)


def _over(fixture: Fixture) -> FloatArray:
    """Places all over the top of a box, shape (N, 2). [m]"""
    width, depth = fixture.size_m
    across = (np.arange(max(1, round(width / STEP_M))) + 0.5) / max(1, round(width / STEP_M)) - 0.5
    along = (np.arange(max(1, round(depth / STEP_M))) + 0.5) / max(1, round(depth / STEP_M)) - 0.5
    x, y = (axis.ravel() for axis in np.meshgrid(across * width, along * depth))
    cos, sin = math.cos(math.radians(fixture.turn_deg)), math.sin(math.radians(fixture.turn_deg))
    cx, cy = fixture.centre_m
    return np.stack([cx + x * cos - y * sin, cy + x * sin + y * cos], axis=1)


def _farthest_in(
    ahead: Ahead,
    points: FloatArray,
    stood: FloatArray,
    *,
    sheet: MovementSheet,
    animal: Roaming,
    on: tuple[str, str | None],
) -> InView | None:
    zones = ahead.lowest_zone(points, stood, reach_m=sheet.reach_m)
    over = stood + animal.height_m - zones
    if len(points) == 0 or not (over > 0.0).any():
        return None
    worst = int(np.argmax(np.round(over, 9)))
    floor = ahead.level.floor_m
    return InView(
        animal,
        *on,
        float(stood[worst]) + animal.height_m - floor,
        float(zones[worst]) - floor,
        (float(points[worst, 0]), float(points[worst, 1])),
    )
