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

from wardwright.errors import NotComputable
from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import Walks, noticed_along, walks_of
from wardwright.physics.walking.from_site import BODY_RADIUS_M, Spot, way_in_spot
from wardwright.trials.barriers import grids_of, watched_floor
from wardwright.trials.watchers import at_the_way_in
from wardwright.trials.ways_in import WayIn
from wardwright.trials.ways_on_foot import OnFoot, on_foot

STEP_M = 0.05
"""Places along a leg are told apart by this; noticing is taken to the next one, so never too early. [m]"""
REACHES = (0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3)
"""Shares of a detector's reach; a draw takes the nearest. [-]"""
SURELY_M = 1.5
"""Walked inside the low-side shape before the design case takes it that somebody is noticed. [m] (assumption after
the European walk-test method)"""
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
    """Scene, device at an opening, leg -> place at which it tells of an inside door; -1: never. [-]"""


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
        _scene(
            scene,
            catalogue,
            between=(sources, goals),
            movement=movement,
            rooms_c=rooms_c,
            slower=hurried / cautious,
        )
        for scene in (house, doors_otherwise(house))
    ]
    opened = [
        _opened(scene, legs, at_openings)
        for scene, legs in zip((house, doors_otherwise(house)), (one.legs for one in scenes), strict=True)
    ]
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
        flat=np.concatenate([one.flat for one in scenes]),
        stairs=np.concatenate([one.stairs for one in scenes]),
        doors=np.concatenate([one.doors for one in scenes]),
        entered=np.array([one.entered for one in scenes]),
        noticed=np.array([one.noticed for one in scenes]),
        surely=np.array([one.surely for one in scenes]),
        opened=np.array(opened, dtype=np.int64).reshape(SCENES, len(at_openings), len(sources) * len(goals)),
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


class _Scene(NamedTuple):
    legs: list[OnFoot | None]
    first: IntArray
    last: IntArray
    flat: FloatArray
    stairs: FloatArray
    doors: FloatArray
    entered: FloatArray
    noticed: FloatArray
    surely: FloatArray


def _scene(
    house: Site,
    catalogue: Catalogue,
    *,
    between: tuple[Sequence[Spot], Sequence[Spot]],
    movement: tuple[Device, ...],
    rooms_c: tuple[float, ...],
    slower: float,
) -> _Scene:
    legs = [_leg(house, catalogue, start=start, goal=goal) for start in between[0] for goal in between[1]]
    known = [i for i, leg in enumerate(legs) if leg is not None]
    walks = walks_of(
        (leg.route.points, leg.route.storeys, leg.route.clock) for leg in legs if leg is not None
    )
    entered = np.full((len(movement), len(legs)), np.inf)
    surely = np.full_like(entered, np.inf)
    noticed = np.full((2, len(rooms_c), len(movement), len(legs), len(REACHES)), np.inf)
    paced = (walks, walks._replace(clock=walks.clock * slower))
    for pace, at_pace in enumerate(paced):
        for room, room_c in enumerate(rooms_c):
            found = noticed_along(
                house, catalogue, movement, walks=at_pace, reach_shares=REACHES, room_c=room_c
            )
            for number, each in enumerate(found):
                entered[number, known] = [one.entered_m for one in each]
                noticed[pace, room, number, known] = np.array([one.noticed_m for one in each]).reshape(
                    len(known), len(REACHES)
                )
    for number, device in enumerate(movement):
        surely[number, known] = _surely(house, catalogue, device, walks=walks)
    tables = [_places(leg) for leg in legs]
    sizes = np.array([len(one[0]) for one in tables], dtype=np.int64)
    ends = np.cumsum(sizes)
    return _Scene(
        legs,
        ends - sizes,
        np.where(sizes > 0, ends - 1, -1),
        np.concatenate([np.zeros(0), *(one[0] for one in tables)]),
        np.concatenate([np.zeros(0), *(one[1] for one in tables)]),
        np.concatenate([np.zeros(0), *(one[2] for one in tables)]),
        np.minimum(entered, noticed.min(axis=(0, 1, 4))),
        noticed,
        surely,
    )


def _leg(house: Site, catalogue: Catalogue, *, start: Spot, goal: Spot) -> OnFoot | None:
    """The way between two places; None from a place to itself, and where nobody can stand."""
    if start == goal:
        return None
    try:
        return on_foot(house, catalogue, start=start, goal=goal)
    except NotComputable:
        return None


def _places(leg: OnFoot | None) -> tuple[FloatArray, FloatArray, FloatArray]:
    """How far along a leg each of its places is: on the flat, on stairs [m], doors opened [-]."""
    if leg is None:
        return np.zeros(0), np.zeros(0), np.zeros(0)
    walked = leg.progress.plan
    steps = np.arange(int(np.ceil(walked[-1] / STEP_M - 1e-9)) + 1) * STEP_M
    index = np.minimum(np.searchsorted(walked, steps - 1e-9), len(walked) - 1)
    for door in leg.doors:
        # Nobody is noticed through a leaf: by a body that only reaches into a shut door, it is after it opens.
        reaches_in = (index <= door.first) & (walked[index] > walked[door.first] - BODY_RADIUS_M)
        index[reaches_in] = door.last
    index[-1] = len(walked) - 1
    return leg.progress.flat[index], leg.progress.stairs[index], leg.progress.doors[index]


def _surely(house: Site, catalogue: Catalogue, device: Device, *, walks: Walks) -> FloatArray:
    """Walked on each walk before it has gone on for 1.5 m inside a detector's low-side shape. [m]"""
    inside = np.zeros(len(walks.points), dtype=np.bool_)
    for storey, mask in watched_floor(house, catalogue, device, side="likely").items():
        there = walks.rows.get(storey, np.zeros(0, dtype=np.int64))
        inside[there] = mask[grids_of(house)[storey].cells_of(walks.points[there])]
    found = []
    for part in walks.parts:
        walked, within = walks.walked[part], inside[part]
        outside = np.maximum.accumulate(np.where(within, -np.inf, walked))
        since = np.where(np.isfinite(outside), outside, walked[:1])
        deep = within & (walked - since >= SURELY_M)
        found.append(float(walked[deep.argmax()]) if deep.any() else np.inf)
    return np.array(found)


def _opened(house: Site, legs: Sequence[OnFoot | None], at_openings: Sequence[Device]) -> list[list[int]]:
    """The place on each leg at which each contact tells of an inside door; -1: never."""
    found = []
    for device in at_openings:
        name = device.mount.opening if isinstance(device.mount, OpeningMount) else None
        opening = None if name is None else house.opening(name)
        is_told = opening is not None and not is_way_in(house, opening) and opening.habit == "shut"
        row = []
        for leg in legs:
            index = leg.passes.get(name) if leg is not None and name is not None and is_told else None
            row.append(-1 if leg is None or index is None else int(leg.progress.plan[index] / STEP_M + 1e-6))
        found.append(row)
    return found
