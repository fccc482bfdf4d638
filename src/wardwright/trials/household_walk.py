"""A walk of the household past its own detectors: where each possibly notices, and which leaves are opened."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache, partial
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.opening import LeafState, Opening
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import (
    BODY_RADIUS_M,
    Paces,
    Route,
    Spot,
    fastest_route,
    premises_network,
)
from wardwright.trials.barriers import grids_of
from wardwright.trials.leaves_between import (
    Lines,
    leaves_before,
    lines_to,
    possible_floor,
    seen_past,
)
from wardwright.trials.leaves_opened import Leaves, doors_to_open, state_in
from wardwright.trials.stacked_floors import Floors
from wardwright.trials.stretches import Stretch, floor_about, stretches_of
from wardwright.trials.ways_on_foot import Progress, progress_of


@lru_cache(maxsize=1024)
def walk(house: Site, catalogue: Catalogue, start: Spot, *, goal: Spot) -> Route | None:
    """The household's way between two places: the fastest at an ordinary pace; None where there is none.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        For the pace.
    start, goal : Spot
        From where, and where to.

    Returns
    -------
    Route or None
        Its arrays are shared; not to be written to.
    """
    paces = Paces(*(catalogue.figure(name).value for name in ("pace-normal", "stairs-share", "pass-door")))
    return fastest_route(premises_network(house), start, goal, paces=paces)


@lru_cache(maxsize=1024)
def walked(house: Site, catalogue: Catalogue, start: Spot, *, goal: Spot) -> Progress | None:
    """How far along the household's way between two places each of its points is; None where there is no way."""
    route = walk(house, catalogue, start, goal=goal)
    return None if route is None else progress_of(route)


@lru_cache(maxsize=1024)
def _stretches(
    house: Site, catalogue: Catalogue, start: Spot, *, goal: Spot
) -> tuple[tuple[Stretch, IntArray], ...]:
    route = walk(house, catalogue, start, goal=goal)
    return () if route is None else stretches_of(house, route)


class _Band(NamedTuple):
    """Floor about a walk on one storey."""

    cells: BoolArray
    """On the house's own grid."""
    points: FloatArray
    """Their middles, shape (n, 2). [m]"""
    nearest: IntArray
    """The point of the stretch that each is nearest to, shape (n,). [-]"""


@lru_cache(maxsize=256)
def _band(house: Site, stretch: Stretch) -> _Band:
    cells = floor_about(house, stretch)
    points = grids_of(house)[stretch.storey].centres()[cells]
    (x, y), (to_x, to_y) = points.T, stretch.points().T
    gaps = np.hypot(np.subtract.outer(x, to_x), np.subtract.outer(y, to_y))
    return _Band(cells, points, gaps.argmin(axis=1))


def stretches_on(house: Site, catalogue: Catalogue, start: Spot, *, goal: Spot) -> tuple[Stretch, ...]:
    """The household's way between two places, storey by storey; none where there is none."""
    return tuple(one for one, _ in _stretches(house, catalogue, start, goal=goal))


def band_on(house: Site, catalogue: Catalogue, start: Spot, *, goal: Spot) -> Floors:
    """The floor about the household's way between two places, by storey; empty where there is none."""
    stretches = stretches_on(house, catalogue, start, goal=goal)
    return {stretch.storey: floor_about(house, stretch) for stretch in stretches}


@lru_cache(maxsize=2048)
def noticed_on(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    start: Spot,
    goal: Spot,
    leaves: Leaves = "usual",
    kept_shut: frozenset[str] = frozenset(),
    is_way_back: bool = False,
) -> BoolArray:
    """At which points of a walk a movement detector possibly notices somebody who may stray 0.6 m to each side.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        For its sheet.
    device : Device
        The detector.
    start, goal : Spot
        The walk's ends.
    leaves : {"usual", "night", "most"}, default "usual"
        How leaves stand that nobody opens.
    kept_shut : frozenset of str, default none
        Ids of openings whose leaves are taken to be shut whatever their habit, but where the walk opens them.
    is_way_back : bool, default False
        Whether the leaves on the way were opened before: else each is opened as it is come to.

    Returns
    -------
    ndarray of bool, shape (N,)
        For each point of the walk; shared, not to be written to. None of them where there is no walk.
    """
    route, progress = (
        walk(house, catalogue, start, goal=goal), walked(house, catalogue, start, goal=goal)
    )  # fmt: skip
    if route is None or progress is None:
        return np.zeros(0, dtype=np.bool_)
    noticed: BoolArray = np.zeros(len(route.storeys), dtype=np.bool_)
    for stretch, numbers in _stretches(house, catalogue, start, goal=goal):
        floor = _in_sight(house, catalogue, device, stretch=stretch)
        nearest = numbers[floor.nearest]
        if floor.lines is not None:
            is_seen = _seen_in_turn(
                house,
                partial(_seen_so, house, catalogue, device, stretch=stretch),
                (floor.leaves, nearest, progress.plan),
                opened=doors_to_open(house, route, leaves, kept_shut=kept_shut),
                habit=state_in(leaves, kept_shut),
                is_way_back=is_way_back,
            )
            nearest = nearest[is_seen]
        noticed[nearest] = True
    return noticed


class _InSight(NamedTuple):
    """Floor about a walk on one storey where a detector notices somebody with every leaf away."""

    nearest: IntArray
    """The point of the stretch that each of its cells is nearest to, shape (n,). [-]"""
    leaves: list[Opening]
    """What may stand between."""
    lines: Lines | None
    """From the detector to its cells; None where no leaf is between."""


@lru_cache(maxsize=128)
def _in_sight(house: Site, catalogue: Catalogue, device: Device, *, stretch: Stretch) -> _InSight:
    """The floor about a walk that a detector has in sight: however leaves stand, it is asked for again."""
    storey, eye = stretch.storey, standing(house, device)
    mask = possible_floor(house, catalogue, device, storeys=(storey,)).get(storey)
    if mask is None:
        return _InSight(np.zeros(0, dtype=np.int64), [], None)
    band = _band(house, stretch)
    seen, at = mask[band.cells], (eye.x_m, eye.y_m)
    points = band.points[seen]
    is_own = storey == eye.storey
    leaves = leaves_before(house, storey, points, eye=at) if is_own and len(points) else []
    lines = lines_to(house, storey, points, eye=at) if leaves else None
    return _InSight(band.nearest[seen], leaves, lines)


@lru_cache(maxsize=512)
def _seen_so(
    house: Site, catalogue: Catalogue, device: Device, *, stretch: Stretch, states: tuple[LeafState, ...]
) -> BoolArray:
    """Whether each place in sight is seen while the leaves between stand so: walks and habits differ in few."""
    floor = _in_sight(house, catalogue, device, stretch=stretch)
    if floor.lines is None:
        return np.ones(len(floor.nearest), dtype=np.bool_)
    stands = dict(zip((one.id for one in floor.leaves), states, strict=True))
    return seen_past(house, floor.leaves, floor.lines, state=lambda one: stands[one.id])


def _seen_in_turn(
    house: Site,
    seen_so: Callable[..., BoolArray],
    known: tuple[list[Opening], IntArray, FloatArray],
    *,
    opened: tuple[tuple[int, str], ...],
    habit: Callable[[Opening], LeafState],
    is_way_back: bool,
) -> BoolArray:
    """Whether places are seen when somebody comes by them: a shut leaf on the way is looked through once opened."""
    leaves, nearest, plan = known
    open_by_now: set[str] = {door for _, door in opened} if is_way_back else set()

    def state(one: Opening) -> LeafState:
        return "open" if one.id in open_by_now else habit(one)

    seen: BoolArray = np.zeros(len(nearest), dtype=np.bool_)
    first = 0
    for last, door in (*opened, (len(plan) - 1, None)):
        chosen = (nearest >= first) & (nearest <= last)
        if door is not None and not is_way_back and habit(house.opening(door)) == "shut":
            # A body that only reaches into a shut leaf is noticed after it opens; past one that is ajar it is seen.
            chosen &= plan[nearest] <= plan[last] - BODY_RADIUS_M
        if chosen.any():
            seen[chosen] = seen_so(states=tuple(state(one) for one in leaves))[chosen]
        if door is not None:
            open_by_now.add(door)
        first = last + 1
    return seen


def opened_on(route: Route) -> tuple[tuple[int, str], ...]:
    """The shut leaves that are opened on a walk, with the point at which each is."""
    return tuple(
        (leg.first, leg.subject)
        for leg in route.legs
        if leg.kind == "door" and leg.last > leg.first and leg.subject is not None
    )


def leaf_of(device: Device) -> str | None:
    """The opening that a device is fixed to."""
    return device.mount.opening if isinstance(device.mount, OpeningMount) else None
