"""Water detectors, where their contacts are, and what may leak."""

from __future__ import annotations

from typing import NamedTuple

import shapely

from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import WaterSheet
from wardwright.model.fabric import Space
from wardwright.model.fixture import Fixture, FixtureKind
from wardwright.model.floor import solid_walls, storey_parts
from wardwright.model.placement import Standing, fixture_outline, space_at, standing
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.kit import some_of

LEAKING: tuple[FixtureKind, ...] = ("sanitary", "appliance", "boiler")
"""Kinds of fixture that water comes to. (common practice)"""
THROUGH_WALL_M = 0.02
"""A straight line that is in walls for longer than this passes through one. [m] (assumption)"""


class WaterDetector(NamedTuple):
    """A water detector in its place."""

    device: Device
    sheet: WaterSheet
    place: Standing
    space: Space | None

    @property
    def point(self) -> Point2:
        """Where it is on the plan. [m]"""
        return (self.place.x_m, self.place.y_m)


def water_detectors(site: Site, catalogue: Catalogue) -> tuple[WaterDetector, ...]:
    """All water detectors with their sheets, by id; NoneOfAKind if there is none."""
    found = []
    for device, row in some_of(site, catalogue, "water-detector"):
        if row.water is None:
            raise CatalogueError(
                "a water detector without a table 'water'",
                where=f"catalogue, sheet '{row.id}'",
                cure="Add [sheet.water] to it",
            )
        place = standing(site, device)
        space = space_at(site, place.storey, (place.x_m, place.y_m))
        found.append(WaterDetector(device, row.water, place, space))
    return tuple(found)


def to_water_m(site: Site, storey: str, point: Point2) -> tuple[float, Fixture] | None:
    """How far it is on the plan to the nearest thing that may leak, with no wall between; None if none is. [m]"""
    walls = solid_walls(storey_parts(site, storey))
    place = shapely.Point(point)
    found = []
    for fixture in site.fixtures:
        if fixture.storey != storey or fixture.kind not in LEAKING:
            continue
        outline = shapely.Polygon(fixture_outline(fixture))
        free = outline.difference(walls)
        seen = free if not free.is_empty else outline
        if shapely.shortest_line(place, seen).intersection(walls).length <= THROUGH_WALL_M:
            found.append((float(seen.distance(place)), fixture.id, fixture))
    if not found:
        return None
    distance, _, fixture = min(found)
    return distance, fixture
