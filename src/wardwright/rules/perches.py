"""Where an animal gets up to, and how far above it a detector's lowest zone passes."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.site import Site
from wardwright.rules.ahead import Ahead, ahead_of
from wardwright.rules.animal_reach import reach_of
from wardwright.rules.animal_tops import Top, tops_of
from wardwright.rules.animals import Roaming


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
    return _under_zones(site.bare, device, sheet)


@lru_cache(maxsize=512)
def _under_zones(house: Site, device: Device, sheet: MovementSheet) -> tuple[UnderZones, ...]:
    ahead = ahead_of(house, device, sheet)
    tops = [(i, one) for i, one in enumerate(tops_of(house)) if ahead.level.storey.id in one.storeys]
    places = [_places(ahead, one) for _, one in tops]
    if not tops:
        return ()
    points = np.concatenate(places)
    stood = np.concatenate(
        [np.full(len(some), one.top_m) for (_, one), some in zip(tops, places, strict=True)]
    )
    free = np.round(ahead.lowest_zone(points, stood, reach_m=sheet.reach_m) - stood, 9)
    ends = np.cumsum([len(some) for some in places]).tolist()
    found = []
    for (index, one), some, end in zip(tops, places, ends, strict=True):
        mine = free[end - len(some) : end]
        if len(some) and np.isfinite(mine).any():
            least = int(np.argmin(mine))
            x, y = some[least].tolist()
            found.append(UnderZones(index, one.top_m, float(mine[least]), (x, y)))
    return tuple(found)


def _places(ahead: Ahead, top: Top) -> FloatArray:
    """Places on one top, shape (N, 2). [m]"""
    if top.kind != "floor":
        return top.points
    cells = ahead.cells
    names = [space.id for space in ahead.level.parts.spaces]
    mine: FloatArray = cells.points()[cells.spaces[cells.free] == names.index(top.spaces[0])]
    return mine


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
    inside = [
        _in_view(
            reach.tops[one.number], one, animal=animal, floor=ahead_of(site, device, sheet).level.floor_m
        )
        for one in under_zones(site, device, sheet)
        if (reach.tops[one.number].kind == "floor") == is_floor
        and reach.needs()[one.number] <= animal.row.jump_m
        and one.free_m < animal.height_m
    ]
    return max(inside, key=lambda one: (round(one.over_m, 9), one.subject or ""), default=None)


def _in_view(top: Top, under: UnderZones, *, animal: Roaming, floor: float) -> InView:
    stood = under.stood_m - floor
    return InView(animal, top.name, top.thing, stood + animal.height_m, stood + under.free_m, under.place)
