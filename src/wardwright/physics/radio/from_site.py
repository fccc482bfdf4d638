"""Radio paths of a site: the only file of this engine that knows the model.

What hangs on the house alone (boxes, floors, losses by angle) is worked out once for it; each path is remembered by
its two ends, and new ones are worked out together. Moving one device works out its own paths only.

Limits: the direct path only, no reflections; roofs, things outside and people take nothing; a wall counts by its line
and thickness; what floors are made of is not known.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from functools import cache, lru_cache
from typing import Literal, NamedTuple

import numpy as np
import shapely

from wardwright.geometry.crossings import Boxes
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.fabric import Wall
from wardwright.model.fixture import Fixture
from wardwright.model.flights import well
from wardwright.model.opening import Opening
from wardwright.model.placement import (
    FACE_GAP_M,
    along,
    direction,
    is_way_in,
    sides_of_opening,
    standing,
)
from wardwright.model.record import Point3
from wardwright.model.site import Site
from wardwright.model.wall_classes import class_of_opening, class_of_wall, layers_as_drawn
from wardwright.physics.constants import LIGHT_M_S
from wardwright.physics.radio.free_space import free_space_loss
from wardwright.physics.radio.paths import Floors, Obstacles, Taken, met_on_the_way
from wardwright.physics.radio.walls import layers_by, wall_losses

METAL_THINGS = ("radiator", "stove", "boiler", "fire", "heater", "appliance")
"""Kinds of fixtures that are of metal. (assumption)"""
USUAL_UNKNOWN_M = 0.12
"""A wall of unknown make takes what its class does at this thickness, and by its thickness else. [m] (assumption)"""
UNKNOWN_SHARES = (0.3, 2.0)
"""But never less or more than these shares. [-] (assumption)"""
FLOOR_EDGE_M = 0.3
"""How far a floor reaches beyond the rooms that are drawn on it: into the walls about them. [m] (assumption)"""
MOST_KNOWN = 20_000
"""Paths that are remembered for one house and band. [-]"""

ThingKind = Literal["wall", "opening", "fixture", "floor"]


class Thing(NamedTuple):
    """One thing that may stand in the way."""

    kind: ThingKind
    ident: str
    """Of the record; for a floor, of the storey above it."""
    wall_class: str
    """The row of the wall losses that it counts as; empty: it takes nothing."""


class Met(NamedTuple):
    """One thing on a path, and what it takes there."""

    thing: Thing
    loss_db: float
    at_m: Point3
    """Where the path goes through it, above the house's zero. [m]"""


class RadioPath(NamedTuple):
    """What one straight path loses, leaves shut and as they usually stand."""

    length_m: float
    free_space_db: float
    walls_db: float
    walls_told_db: float
    counts: tuple[float, ...]
    counts_told: tuple[float, ...]
    """How many things of each class it meets, in the order of the catalogue's wall losses. [-]"""
    met: tuple[Met, ...]
    """What takes most first."""


def radio_place(site: Site, device: Device) -> Point3:
    """Where a device's antenna is.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        In it; one on a door or window hangs on the side that is ours.

    Returns
    -------
    tuple of float
        x, y and height above the house's zero. [m]
    """
    return _radio_place(site.bare, device)


@lru_cache(maxsize=4096)
def _radio_place(house: Site, device: Device) -> Point3:
    at = standing(house, device)
    x, y = at.x_m, at.y_m
    if isinstance(device.mount, OpeningMount):
        x, y = _beside(house, house.opening(device.mount.opening))
    return (x, y, house.storey(at.storey).elevation_m + at.height_m)


def _beside(house: Site, opening: Opening) -> tuple[float, float]:
    """On the room's face of a door or window: of the two sides the one that is ours, else the one it opens to."""
    wall, (left, right) = house.wall(opening.wall), sides_of_opening(house, opening)
    ours = [side is not None and house.space(side).is_protected for side in (left, right)]
    sign = 1.0 if opening.swing == "left" else -1.0
    if is_way_in(house, opening) and ours[0] != ours[1]:
        sign = 1.0 if ours[0] else -1.0
    return along(wall.line_m, opening.offset_m, left_m=sign * (wall.thickness_m / 2 + FACE_GAP_M))


def radio_paths(
    site: Site, catalogue: Catalogue, ways: Sequence[tuple[Point3, Point3]], *, frequency: float
) -> tuple[RadioPath, ...]:
    """What straight paths lose.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Materials, constructions and losses.
    ways : sequence of (Point3, Point3)
        Both ends of each, above the house's zero; which is first does not matter. [m]
    frequency : float
        Carrier frequency. [Hz]

    Returns
    -------
    tuple of RadioPath
        One for each way.
    """
    return _paths_of(site.bare, catalogue, frequency).of(ways)


def path_losses(
    site: Site, catalogue: Catalogue, ways: Sequence[tuple[Point3, Point3]], *, frequency: float
) -> tuple[FloatArray, FloatArray]:
    """What many straight paths lose, leaves shut: sums only, for many places tried at once.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Materials, constructions and losses.
    ways : sequence of (Point3, Point3)
        Both ends of each of N paths. [m]
    frequency : float
        Carrier frequency. [Hz]

    Returns
    -------
    tuple of ndarray
        Loss of each path, shape (N,) [dB], and how many things of each class it meets, shape (N, C). [-]
    """
    return _paths_of(site.bare, catalogue, frequency).sums(ways)


class _House(NamedTuple):
    obstacles: Obstacles
    floors: Floors
    things: tuple[Thing, ...]
    walls: tuple[Wall | None, ...]
    """Of each thing that is a wall, its record."""


class _Paths:
    """The paths of one house in one band: new ones are worked out together."""

    def __init__(self, house: Site, catalogue: Catalogue, frequency: float) -> None:
        self._frequency, self._house = frequency, _house(house, catalogue)
        self._losses = _losses(self._house, catalogue, frequency)
        self._kinds = len(catalogue.wall_losses)
        self._found: dict[tuple[Point3, Point3], RadioPath] = {}

    def of(self, ways: Iterable[tuple[Point3, Point3]]) -> tuple[RadioPath, ...]:
        # The same path whichever end is named first, to the last digit.
        keys = [(one, other) if one <= other else (other, one) for one, other in ways]
        if len(self._found) > MOST_KNOWN:
            self._found.clear()
        new = [key for key in dict.fromkeys(keys) if key not in self._found]
        if new:
            self._work_out(new)
        return tuple(self._found[key] for key in keys)

    def sums(self, ways: Sequence[tuple[Point3, Point3]]) -> tuple[FloatArray, FloatArray]:
        starts, ends = (np.array([way[i] for way in ways], dtype=np.float64).reshape(-1, 3) for i in (0, 1))
        taken = self._taken(starts, ends)
        return self._spread(starts, ends) + taken.total, taken.counts

    def _taken(self, starts: FloatArray, ends: FloatArray) -> Taken:
        house = self._house
        ways, losses = (starts, ends), self._losses
        return met_on_the_way(ways, house.obstacles, house.floors, losses=losses, kinds=self._kinds)

    def _spread(self, starts: FloatArray, ends: FloatArray) -> FloatArray:
        lengths = np.linalg.norm(ends - starts, axis=1)
        return free_space_loss(np.maximum(lengths, LIGHT_M_S / self._frequency), self._frequency)

    def _work_out(self, new: list[tuple[Point3, Point3]]) -> None:
        starts, ends = (np.array([key[i] for key in new], dtype=np.float64) for i in (0, 1))
        house, taken = self._house, self._taken(starts, ends)
        lengths, spread = np.linalg.norm(ends - starts, axis=1), self._spread(starts, ends)
        for i, key in enumerate(new):
            there = np.flatnonzero(taken.loss[i] > 0.0)
            met = [
                Met(
                    house.things[k],
                    float(taken.loss[i, k]),
                    _point(starts[i] + taken.at[i, k] * (ends[i] - starts[i])),
                )
                for k in there[np.argsort(-taken.loss[i, there], kind="stable")].tolist()
            ]
            self._found[key] = RadioPath(
                float(lengths[i]),
                float(spread[i]),
                float(taken.total[i]),
                float(taken.total_told[i]),
                tuple(taken.counts[i].tolist()),
                tuple(taken.counts_told[i].tolist()),
                tuple(met),
            )


def _point(place: FloatArray) -> Point3:
    x, y, z = place.tolist()
    return (x, y, z)


@lru_cache(maxsize=32)
def _paths_of(house: Site, catalogue: Catalogue, frequency: float) -> _Paths:
    return _Paths(house, catalogue, frequency)


class _Box(NamedTuple):
    thing: Thing
    origin: tuple[float, float]
    along: tuple[float, float]
    length: float
    half: float
    low: float
    high: float
    within: int = -1
    stands_open: bool = False
    wall: Wall | None = None


def _by_id(record: Wall | Opening | Fixture) -> str:
    return record.id


@lru_cache(maxsize=64)
def _house(house: Site, catalogue: Catalogue) -> _House:
    boxes = [*_walls(house, catalogue)]
    index = {box.wall.id: i for i, box in enumerate(boxes) if box.wall is not None}
    boxes += [
        _opening(house, catalogue, one, within=index[one.wall]) for one in sorted(house.openings, key=_by_id)
    ]
    boxes += [_fixture(house, one) for one in sorted(house.fixtures, key=_by_id) if one.kind in METAL_THINGS]
    order = {row.id: i for i, row in enumerate(catalogue.wall_losses)}
    obstacles = Obstacles(
        Boxes(
            np.array([box.origin for box in boxes]).reshape(-1, 2),
            np.array([box.along for box in boxes]).reshape(-1, 2),
            *(np.array([getattr(box, name) for box in boxes]) for name in ("length", "half", "low", "high")),
        ),
        np.array([box.within for box in boxes], dtype=np.int64),
        np.array([order.get(box.thing.wall_class, -1) for box in boxes], dtype=np.int64),
        np.array([int(box.stands_open) for box in boxes], dtype=np.int64),
        np.array([int(box.thing.kind == "fixture") for box in boxes], dtype=np.int64),
    )
    floors, of_floors = _floors(house, order)
    things = (*(box.thing for box in boxes), *of_floors)
    return _House(obstacles, floors, things, (*(box.wall for box in boxes), *(None for _ in of_floors)))


def _walls(house: Site, catalogue: Catalogue) -> Iterable[_Box]:
    made = {row.id: row for row in catalogue.constructions}
    classes = {row.id: row.wall_class for row in catalogue.radio_materials}
    for wall in sorted(house.walls, key=_by_id):
        storey = house.storey(wall.storey)
        low = storey.elevation_m + wall.base_m
        high = (
            low + wall.height_m if wall.height_m is not None else storey.elevation_m + _highest(house, wall)
        )
        way, _, length = direction(wall.line_m)
        kind = class_of_wall(made.get(wall.construction), classes)
        thing = Thing("wall", wall.id, kind)
        yield _Box(thing, wall.line_m[0], way, length, wall.thickness_m / 2, low, high, wall=wall)


def _highest(house: Site, wall: Wall) -> float:
    storey = house.storey(wall.storey)
    own = [space.height_m for space in house.spaces if space.storey == wall.storey and space.height_m]
    return max([storey.height_m, *own, *(z for slope in storey.slopes for _, _, z in slope.corners_m)])


def _opening(house: Site, catalogue: Catalogue, opening: Opening, *, within: int) -> _Box:
    wall = house.wall(opening.wall)
    way, _, _ = direction(wall.line_m)
    floor = house.storey(wall.storey).elevation_m
    thing = Thing("opening", opening.id, class_of_opening(catalogue, opening))
    is_open = opening.kind == "gap" or (
        opening.habit != "shut" and opening.kind in ("door", "garage-door", "hatch")
    )
    return _Box(
        thing,
        along(wall.line_m, opening.offset_m - opening.width_m / 2),
        way,
        opening.width_m,
        wall.thickness_m / 2,
        floor + opening.sill_m,
        floor + opening.head_m,
        within,
        stands_open=is_open,
    )


def _fixture(house: Site, fixture: Fixture) -> _Box:
    width, depth = fixture.size_m
    # Its shorter side is its thickness, however it is turned.
    turn = math.radians(fixture.turn_deg + (90.0 if depth > width else 0.0))
    width, depth = max(fixture.size_m), min(fixture.size_m)
    way = (math.cos(turn), math.sin(turn))
    origin = (fixture.centre_m[0] - way[0] * width / 2, fixture.centre_m[1] - way[1] * width / 2)
    low = house.storey(fixture.storey).elevation_m + fixture.base_m
    thing = Thing("fixture", fixture.id, "metal-thing")
    return _Box(thing, origin, way, width, depth / 2, low, low + fixture.height_m)


def _floors(house: Site, order: dict[str, int]) -> tuple[Floors, tuple[Thing, ...]]:
    """The floor of every storey that has rooms, stairwells cut out; the ground under the house is none."""
    storeys = sorted(house.storeys, key=lambda one: (one.elevation_m, one.id))
    levels, areas, things = [], [], []
    for storey in storeys:
        rooms = [
            shapely.Polygon(one.outline_m)
            for one in house.spaces
            if one.storey == storey.id and not one.is_outdoors
        ]
        if not rooms:
            continue
        wells = [shapely.Polygon(well(one)).buffer(0) for one in house.stairs if one.upper == storey.id]
        area = shapely.union_all(rooms).buffer(FLOOR_EDGE_M, join_style="mitre")
        area = area.difference(shapely.union_all(wells))
        shapely.prepare(area)
        levels.append(storey.elevation_m)
        areas.append(area)
        things.append(Thing("floor", storey.id, "unknown-floor"))
    classes = np.full(len(levels), order.get("unknown-floor", -1), dtype=np.int64)
    return Floors(np.array(levels), tuple(areas), classes), tuple(things)


def _losses(house: _House, catalogue: Catalogue, frequency: float) -> FloatArray:
    """What each thing takes at each angle, shape (things, 5). [dB]"""
    judged = {row.id: row for row in catalogue.wall_losses}
    made = {row.id: row for row in catalogue.constructions}
    layers_at = layers_by(
        {
            row.id: (
                (row.permittivity, row.permittivity_power),
                (row.conductivity_s_m, row.conductivity_power),
            )
            for row in catalogue.radio_materials
        }
    )

    @cache
    def of(kind: str, layers: tuple[tuple[str, float], ...]) -> FloatArray:
        row = judged[kind]
        usual = layers_at(row.layers) if row.layers else None
        build = layers_at(layers) if layers else None
        return wall_losses(row.value_db, build, usual, frequency=frequency)

    found = np.zeros((len(house.things), 5))
    for i, (thing, wall) in enumerate(zip(house.things, house.walls, strict=True)):
        if thing.wall_class not in judged:
            continue
        layers = () if wall is None else layers_as_drawn(made.get(wall.construction), wall)
        found[i] = of(thing.wall_class, layers)
        if wall is not None and thing.wall_class == "unknown":
            found[i] *= min(max(wall.thickness_m / USUAL_UNKNOWN_M, UNKNOWN_SHARES[0]), UNKNOWN_SHARES[1])
    return found
