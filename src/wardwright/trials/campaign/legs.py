"""The legs that intruders walk in one scene, and where along each of them who notices."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray, IntArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import Walks, noticed_along
from wardwright.physics.walking.from_site import Spot
from wardwright.trials.barriers import grids_of, watched_floor
from wardwright.trials.ways_on_foot import OnFoot, on_foot, walks_along

STEP_M = 0.05
"""Places along a leg are told apart by this; noticing is taken to the next one, so never too early. [m]"""
REACHES = (0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3)
"""Shares of a detector's reach; a draw takes the nearest. [-]"""
SURELY_M = 1.5
"""Walked inside the low-side shape before the design case takes it that somebody is noticed. [m] (assumption after
the European walk-test method)"""


class Legs(NamedTuple):
    """The legs of one scene, and the tables of their places one leg after another; as in `Ground`."""

    legs: list[OnFoot | None]
    first: IntArray
    last: IntArray
    flat: FloatArray
    stairs: FloatArray
    doors: FloatArray
    entered: FloatArray
    noticed: FloatArray
    surely: FloatArray


def legs_between(
    house: Site,
    catalogue: Catalogue,
    *,
    between: tuple[Sequence[Spot], Sequence[Spot]],
    movement: tuple[Device, ...],
    rooms_c: tuple[float, ...],
    slower: float,
) -> Legs:
    """Work out the legs of a house.

    Parameters
    ----------
    house : Site
        The bare house, its inside doors as they stand in the scene.
    catalogue : Catalogue
        Sheets and figures.
    between : tuple of two sequences of Spot
        Where legs begin, and where they end.
    movement : tuple of Device
        The movement detectors that are heard.
    rooms_c : tuple of float
        Room temperatures. [deg C]
    slower : float
        How many times as long a cautious intruder takes. [-]

    Returns
    -------
    Legs
        From each beginning to each end, end by end.
    """
    legs = [_leg(house, catalogue, start=start, goal=goal) for start in between[0] for goal in between[1]]
    known = [i for i, leg in enumerate(legs) if leg is not None]
    walks = walks_along(leg for leg in legs if leg is not None)
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
    return Legs(
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
