"""The house as a campaign walks it: every leg between a way in, the control unit and the targets, as tables.

A leg is the fastest way on foot, with inside doors as the household said and, in a second scene, each of them the
other way. Along it stand the place where each movement detector notices, for some reaches, paces and room
temperatures, and the place where the design case takes it to notice: after 1.5 m inside its low-side shape.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.trials.campaign.legs import legs_between
from wardwright.trials.watchers import at_the_way_in
from wardwright.trials.ways_in import WayIn
from wardwright.trials.ways_on_foot import OnFoot

SCENES = 2
"""Inside doors as told, and each the other way. [-]"""


class Ground(NamedTuple):
    """Tables of L legs in 2 scenes, leg ``from * G + to``, ways in before goals; not to be written to."""

    starts: IntArray
    """Way in -> where it starts. [-]"""
    climbs: BoolArray
    """Way in -> whether the clock starts with climbing in."""
    at_once: BoolArray
    """Device at an opening, way in -> whether it notices at once."""
    goals: int
    """G. [-]"""
    unit: int | None
    """Which goal is the control unit. [-]"""
    rooms_c: tuple[float, ...]
    """The room temperatures that `noticed` knows. [deg C]"""
    first: IntArray
    """Scene, leg -> where its places begin in `flat`, `stairs` and `doors`; the last place is the goal. [-]"""
    last: IntArray
    """Scene, leg -> where they end; -1 where no way leads. [-]"""
    flat: FloatArray
    """Walked on the flat up to each place. [m]"""
    stairs: FloatArray
    """Walked on stairs. [m]"""
    doors: FloatArray
    """Doors opened. [-]"""
    entered: FloatArray
    """Scene, movement detector, leg -> walked before its high-side shape. [m]"""
    noticed: FloatArray
    """Scene, pace, room, movement detector, leg, reach -> walked before it notices, on the plan. [m]"""
    surely: FloatArray
    """Scene, movement detector, leg -> walked before the design case takes it to notice. [m]"""
    opened: IntArray
    """Scene, device at an opening, leg -> the place where it tells of an inside door; -1: never. [-]"""


@lru_cache(maxsize=32)
def ground_of(
    house: Site,
    catalogue: Catalogue,
    *,
    ways: tuple[WayIn, ...],
    goals: tuple[Spot, ...],
    unit: int | None,
    movement: tuple[Device, ...],
    at_openings: tuple[Device, ...],
    rooms_c: tuple[float, ...],
) -> Ground:
    """Work out the tables of a house.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets and figures.
    ways : tuple of WayIn
        The ways in.
    goals : tuple of Spot
        Where intruders go.
    unit : int, optional
        Which of them is the control unit.
    movement, at_openings : tuple of Device
        The detectors that are heard.
    rooms_c : tuple of float
        Room temperatures; a draw takes the nearest. [deg C]

    Returns
    -------
    Ground
        The tables.
    """
    spots: dict[Spot, int] = {}
    starts = [spots.setdefault(way_in_spot(house, way.opening), len(spots)) for way in ways]
    sources = (*spots, *goals)
    hurried, cautious = (catalogue.figure(name).value for name in ("pace-hurried", "pace-cautious"))
    scenes = [
        legs_between(
            scene,
            catalogue,
            between=(sources, goals),
            movement=movement,
            rooms_c=rooms_c,
            slower=hurried / cautious,
        )
        for scene in (house, doors_otherwise(house))
    ]
    houses = (house, doors_otherwise(house))
    told = [_opened(scene, one.legs, at_openings) for scene, one in zip(houses, scenes, strict=True)]
    opened = np.array(told, dtype=np.float64).reshape(SCENES, len(at_openings), len(sources) * len(goals), 3)
    is_told = np.isfinite(opened[..., 0])
    offsets = np.cumsum([0, *(len(one.flat) for one in scenes)])
    return Ground(
        starts=np.array(starts, dtype=np.int64),
        climbs=np.array([way.climbs for way in ways], dtype=np.bool_),
        at_once=np.array(
            [
                [bool(at_the_way_in(house, catalogue, (device,), way=way)) for way in ways]
                for device in at_openings
            ],
            dtype=np.bool_,
        ).reshape(len(at_openings), len(ways)),
        goals=len(goals),
        unit=unit,
        rooms_c=rooms_c,
        first=np.array([one.first + offset for one, offset in zip(scenes, offsets, strict=False)]),
        last=np.array(
            [np.where(one.last >= 0, one.last + off, -1) for one, off in zip(scenes, offsets, strict=False)]
        ),
        # After the places of the legs come those at which contacts tell: a leaf tells as it begins to open.
        flat=np.concatenate([*(one.flat for one in scenes), opened[is_told][:, 0]]),
        stairs=np.concatenate([*(one.stairs for one in scenes), opened[is_told][:, 1]]),
        doors=np.concatenate([*(one.doors for one in scenes), opened[is_told][:, 2]]),
        entered=np.array([one.entered for one in scenes]),
        noticed=np.array([one.noticed for one in scenes]),
        surely=np.array([one.surely for one in scenes]),
        opened=np.where(is_told, offsets[-1] + np.cumsum(is_told).reshape(is_told.shape) - 1, -1),
    )


@lru_cache(maxsize=16)
def doors_otherwise(house: Site) -> Site:
    """The house with each inside door the other way: what stands shut stands open, all else is shut."""

    def turned(opening: Opening) -> Opening:
        if opening.kind != "door" or is_way_in(house, opening):
            return opening
        basis = tuple(one for one in opening.basis if one[0] != "habit")
        habit = "open" if opening.habit == "shut" else "shut"
        return opening.model_copy(update={"habit": habit, "basis": basis})

    return house.model_copy(update={"openings": tuple(turned(one) for one in house.openings)}).bare


def _opened(
    house: Site, legs: Sequence[OnFoot | None], at_openings: Sequence[Device]
) -> list[list[tuple[float, float, float]]]:
    """How far along each leg each contact tells of an inside door: flat, stairs [m], doors [-]; nan: never."""
    found = []
    for device in at_openings:
        name = device.mount.opening if isinstance(device.mount, OpeningMount) else None
        opening = None if name is None else house.opening(name)
        is_told = opening is not None and not is_way_in(house, opening) and opening.habit == "shut"
        row = []
        for leg in legs:
            index = leg.passes.get(name) if leg is not None and name is not None and is_told else None
            if leg is None or index is None:
                row.append((np.nan, np.nan, np.nan))
            else:
                flat, stairs, doors, _ = leg.progress
                row.append((float(flat[index]), float(stairs[index]), float(doors[index])))
        found.append(row)
    return found
