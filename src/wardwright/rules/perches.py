"""Where an animal gets up to, and how far above it a detector's lowest zone passes."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.floor_cells import floor_cells
from wardwright.model.site import Site
from wardwright.model.surfaces import level_of
from wardwright.rules.ahead import CELL_M
from wardwright.rules.animal_reach import reach_of
from wardwright.rules.animal_tops import Top, tops_of
from wardwright.rules.animals import Roaming
from wardwright.rules.hung import Hung, InSight, depressions_of, hung_of, in_sight, in_sight_there, sight_from


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


class UnderZones(NamedTuple):
    """How much room a detector's zones leave above one top, where they leave least."""

    number: int
    """Of the top, in `tops_of`."""
    stood_m: float
    """What is stood on there, above the house's zero. [m]"""
    free_m: float
    """From there up to the lowest zone in sight and in reach; inf where none passes over the top. [m]"""
    place: tuple[float, float]
    """Where, on the plan. [m]"""


def under_zones(site: Site, device: Device, sheet: MovementSheet) -> tuple[UnderZones, ...]:
    """How much room a detector's zones leave above all that an animal may stand on, on its own storey.

    Parameters
    ----------
    site : Site
        The house, its fixtures and stairs.
    device : Device
        The detector.
    sheet : MovementSheet
        Its sheet.

    Returns
    -------
    tuple of UnderZones
        One for each top over which a zone passes, in the order of `tops_of`.
    """
    hung = hung_of(site.bare, device, sheet)
    return _under_zones(site.bare, hung, depressions=depressions_of(device, sheet), reach_m=sheet.reach_m)


@lru_cache(maxsize=512)
def _under_zones(
    house: Site, hung: Hung, *, depressions: tuple[float, ...], reach_m: float
) -> tuple[UnderZones, ...]:
    """Remembered by where its zones lie: rules and questions try like sheets in its place, each by another name."""
    there = _places_seen(house, hung)
    if not there.tops:
        return ()
    zone = there.seen.lowest_zone(depressions, there.stood, reach_m=reach_m)
    free = np.round(zone - there.stood, 9)
    is_under = np.isfinite(np.minimum.reduceat(free, [first for _, first, _ in there.tops]))
    found = []
    for index in np.flatnonzero(is_under).tolist():
        number, first, end = there.tops[index]
        least = first + int(np.argmin(free[first:end]))
        x, y = there.points[least].tolist()
        found.append(UnderZones(number, float(there.stood[least]), float(free[least]), (x, y)))
    return tuple(found)


class _Places(NamedTuple):
    """All places on a storey that an animal may stand at, N of them; shared, not to be written to."""

    tops: tuple[tuple[int, int, int], ...]
    """The number of each top that has any, in `tops_of`, its first place, and the place after its last. [-]"""
    points: FloatArray
    """Where they are, shape (N, 2). [m]"""
    stood: FloatArray
    """What is stood on there, above the house's zero, shape (N,). [m]"""


def still_under(
    house: Site, device: Device, sheet: MovementSheet, *, before: Device, under: tuple[UnderZones, ...]
) -> tuple[UnderZones, ...]:
    """The tops of some over which a zone passes still, in the place where one did before: perhaps not the least.

    Parameters
    ----------
    house : Site
        The bare house.
    device : Device
        A detector as it hangs now.
    sheet : MovementSheet
        Its sheet.
    before : Device
        The same as it hung before, on the same storey.
    under : tuple of UnderZones
        Tops under its zones then.

    Returns
    -------
    tuple of UnderZones
        With the room that is left there now.
    """
    hung = hung_of(house, device, sheet)
    places, stood = np.array([one.place for one in under]), np.array([one.stood_m for one in under])
    if not under:
        return ()
    # As it hung before all is known; elsewhere it looks nowhere but there.
    if hung == hung_of(house, before, sheet):
        seen = in_sight(sight_from(house, hung), places, heading=hung.heading, half=hung.half)
    else:
        seen = in_sight_there(house, hung, places)
    zone = seen.lowest_zone(depressions_of(device, sheet), stood[seen.rows], reach_m=sheet.reach_m)
    free = np.round(zone - stood[seen.rows], 9).tolist()
    return tuple(
        under[row]._replace(free_m=room)
        for row, room in zip(seen.rows.tolist(), free, strict=True)
        if np.isfinite(room)
    )


class _Seen(NamedTuple):
    """Those of the places of a storey that a detector sees anything over, K of them."""

    tops: tuple[tuple[int, int, int], ...]
    """As `_Places.tops`, of these alone. [-]"""
    points: FloatArray
    """Shape (K, 2). [m]"""
    stood: FloatArray
    """Shape (K,). [m]"""
    seen: InSight
    """What is visible over them."""


@lru_cache(maxsize=512)
def _places_seen(house: Site, hung: Hung) -> _Seen:
    """The same whatever the detector's sheet, and however it is tilted."""
    there = _places_on(house, hung.storey)
    sight = sight_from(house, hung)
    seen = in_sight(sight, there.points, heading=hung.heading, half=hung.half)
    bounds = [(first, end) for _, first, end in there.tops]
    kept = np.searchsorted(seen.rows, np.array(bounds, dtype=np.int64).reshape(-1, 2)).tolist()
    numbers = [number for number, _, _ in there.tops]
    tops = tuple(
        (number, first, end) for number, (first, end) in zip(numbers, kept, strict=True) if first < end
    )
    return _Seen(tops, there.points[seen.rows], there.stood[seen.rows], seen)


@lru_cache(maxsize=64)
def _places_on(house: Site, storey: str) -> _Places:
    """What hangs on the house alone of `_under_zones`: every detector that is tried asks for it."""
    level = level_of(house, storey)
    cells, names = floor_cells(level, CELL_M), [space.id for space in level.parts.spaces]
    floor, owner = cells.points(), cells.spaces[cells.free]
    tops, points, stood, end = [], [np.zeros((0, 2))], [np.zeros(0)], 0
    for number, top in enumerate(tops_of(house)):
        if storey not in top.storeys:
            continue
        mine = floor[owner == names.index(top.spaces[0])] if top.kind == "floor" else top.points
        if len(mine):
            tops.append((number, end, end + len(mine)))
            points.append(mine)
            stood.append(np.full(len(mine), top.top_m))
            end += len(mine)
    return _Places(tuple(tops), np.concatenate(points), np.concatenate(stood))


def on_floor(site: Site, device: Device, sheet: MovementSheet, *, animal: Roaming) -> InView | None:
    """Where an animal that walks on the floor comes farthest into a detector's zones; None where it does not."""
    return _farthest_in(site, device, sheet, animal=animal, is_floor=True)


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
    return _farthest_in(site, device, sheet, animal=animal, is_floor=False)


def _farthest_in(
    site: Site, device: Device, sheet: MovementSheet, *, animal: Roaming, is_floor: bool
) -> InView | None:
    reach = reach_of(site.bare, animal.row, rooms=animal.rooms)
    floor = site.storey(hung_of(site.bare, device, sheet).storey).elevation_m
    inside = [
        _in_view(reach.tops[one.number], one, animal=animal, floor=floor)
        for one in under_zones(site, device, sheet)
        if (reach.tops[one.number].kind == "floor") == is_floor
        and reach.needs()[one.number] <= animal.row.jump_m
        and one.free_m < animal.height_m
    ]
    return max(inside, key=lambda one: (round(one.over_m, 9), one.subject or ""), default=None)


def _in_view(top: Top, under: UnderZones, *, animal: Roaming, floor: float) -> InView:
    stood = under.stood_m - floor
    return InView(animal, top.name, top.thing, stood + animal.height_m, stood + under.free_m, under.place)
