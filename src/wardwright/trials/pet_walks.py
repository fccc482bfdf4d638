"""Whether an animal that walks where a movement detector's zones leave it too little room trips that detector."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import detector_of, walks_of
from wardwright.physics.detection.noticing import noticed_at
from wardwright.physics.detection.walkers import Body
from wardwright.rules.animal_tops import tops_of
from wardwright.rules.animals import Roaming
from wardwright.rules.perches import UnderZones
from wardwright.trials.top_walks import POINTS_M, walks_over

REACH_SHARES = (1.2, 1.0, 0.8)
"""Shares of a detector's reach that an animal's walks are played at, the one that sees most first. [-] (the figure
`detector-reach`)"""


class Tripped(NamedTuple):
    """An animal that walks where a detector's zones leave it too little room."""

    number: int
    """Of the top that it walks on, in `tops_of`."""
    seconds: tuple[float, float, float]
    """From the start of its walk until the detector signals, at each of `REACH_SHARES`; inf: it does not. [s]"""


@lru_cache(maxsize=512)
def tripped(
    house: Site, catalogue: Catalogue, device: Device, *, animal: Roaming, under: tuple[UnderZones, ...]
) -> tuple[Tripped, ...]:
    """Let an animal walk over some tops, up and down, and watch one detector.

    A leap itself counts for nothing: it fills and leaves zones from below, which the engine has no rate for.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        For the detector's sheet.
    device : Device
        The detector.
    animal : Roaming
        Its height, width and pace.
    under : tuple of UnderZones
        The tops, each with the place where the zones leave least room.

    Returns
    -------
    tuple of Tripped
        One for each top that it can walk on, in their order.
    """
    (walked,) = _walked(house, catalogue, [(device, under)], animal=animal, shares=REACH_SHARES)
    found = []
    for number, distances in walked.items():
        most, usual, least = (distances / animal.row.pace_m_s).tolist()
        found.append(Tripped(number, (most, usual, least)))
    return tuple(found)


def trips(
    house: Site,
    catalogue: Catalogue,
    watched: Sequence[tuple[Device, tuple[UnderZones, ...]]],
    *,
    animal: Roaming,
) -> tuple[bool, ...]:
    """Whether an animal trips each of some detectors at its sheet's reach, on any of some tops under its zones.

    Sooner than asking `tripped` one by one: all detectors watch one pass of walks, first over one top each, then,
    for those that have not signalled, over the others.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        For the detectors' sheets.
    watched : sequence of (Device, tuple of UnderZones)
        Detectors of one sheet, and the tops that lie under the zones of each.
    animal : Roaming
        Its height, width and pace.

    Returns
    -------
    tuple of bool
        One for each detector.
    """
    tops = tops_of(house)
    found = [False] * len(watched)
    # A flight's walk is the same whoever watches it, and is remembered.
    inorder = [
        sorted(under, key=lambda one: (tops[one.number].kind != "stair", one.free_m)) for _, under in watched
    ]
    for some in (slice(0, 1), slice(1, None)):
        asked = [i for i, under in enumerate(inorder) if under[some] and not found[i]]
        tried = [(watched[i][0], tuple(inorder[i][some])) for i in asked]
        for i, walked in zip(
            asked, _walked(house, catalogue, tried, animal=animal, shares=(1.0,)), strict=True
        ):
            found[i] = any(bool(distances[0] < np.inf) for distances in walked.values())
    return tuple(found)


def _walked(
    house: Site,
    catalogue: Catalogue,
    watched: Sequence[tuple[Device, tuple[UnderZones, ...]]],
    *,
    animal: Roaming,
    shares: tuple[float, ...],
) -> list[dict[int, FloatArray]]:
    """For each detector: number of a top -> the least walked there until it notices, at shares of its reach. [m]"""
    if not watched:
        return []
    detectors = [detector_of(house, catalogue, device) for device, _ in watched]
    flat = [(i, one) for i, (_, under) in enumerate(watched) for one in under]
    laid, mine = walks_over(house, [(one, detectors[i].eye) for i, one in flat])
    found: list[dict[int, FloatArray]] = [{} for _ in watched]
    if not laid:
        return found
    step = POINTS_M / animal.row.pace_m_s
    route = walks_of(
        (walk.points, ("",) * len(walk.points), np.arange(len(walk.points), dtype=np.float64) * step)
        for walk in laid
    )
    # Hidden from the detectors that it is not meant for.
    floors = np.full((len(watched), len(route.points)), np.nan)
    for (i, _), numbers in zip(flat, mine, strict=True):
        for number in numbers:
            floors[i, route.parts[number]] = laid[number].stood
    sheet = catalogue.sheet(watched[0][0].sheet).movement
    walked = noticed_at(
        route,
        floors,
        detectors,
        reaches=np.array(shares) * (0.0 if sheet is None else sheet.reach_m),
        body=Body(animal.row.half_width_m, animal.height_m),
    )
    for (i, one), numbers in zip(flat, mine, strict=True):
        if numbers:
            found[i][one.number] = walked[i, numbers].min(axis=0)
    return found
