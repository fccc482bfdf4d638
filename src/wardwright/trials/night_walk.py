"""A walk from bed at night: its clock, and when a movement detector possibly notices on it.

Whoever goes comes back, past the leaves that they opened. What is done at the goal takes no time on the clock.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fabric import Space
from wardwright.model.placement import opening_line, standing
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import BODY_RADIUS_M
from wardwright.trials.barriers import grids_of
from wardwright.trials.household_walk import noticed_on, walk, walked
from wardwright.trials.leaves_between import leaves_before, lines_to, possible_floor, seen_past
from wardwright.trials.leaves_opened import Leaves, doors_to_open, state_in
from wardwright.trials.trip_floor import Ends, room_floor


class Moment(NamedTuple):
    """When something happens on a walk there and back."""

    point: int
    """Of the walk."""
    is_back: bool = False
    """Whether on the way back."""


class Steps(NamedTuple):
    """What is walked up to each moment, shape (n,) each."""

    flat: FloatArray
    """[m]"""
    stairs: FloatArray
    """[m]"""
    doors: FloatArray
    """Leaves opened as they stand at night. [-]"""


@lru_cache(maxsize=1024)
def steps_on(house: Site, catalogue: Catalogue, ends: Ends) -> Steps | None:
    """What is walked up to each point of the way there; None where there is no way."""
    route = walk(house, catalogue, ends.start, goal=ends.goal)
    progress = walked(house, catalogue, ends.start, goal=ends.goal)
    if route is None or progress is None:
        return None
    doors = np.zeros(len(route.points))
    for point, _ in doors_to_open(house, route, "night"):
        # A leaf is open at the second of its points, or at its only one.
        last = next(leg.last for leg in route.legs if leg.kind == "door" and leg.first == point)
        doors[last:] += 1.0
    return Steps(progress.flat, progress.stairs, doors)


def walked_until(steps: Steps, moment: Moment) -> tuple[float, float, float]:
    """Metres on the flat, metres on stairs and leaves opened from getting up to a moment.

    Parameters
    ----------
    steps : Steps
        Of the way there.
    moment : Moment
        On the way there or back; on the way back the leaves stand open.

    Returns
    -------
    tuple of float
        [m], [m], [-]
    """
    flat, stairs, doors = (float(one[moment.point]) for one in steps)
    if not moment.is_back:
        return flat, stairs, doors
    ends = tuple(float(one[-1]) for one in steps)
    return 2.0 * ends[0] - flat, 2.0 * ends[1] - stairs, ends[2]


@lru_cache(maxsize=4096)
def first_noticed(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    ends: Ends,
    leaves: Leaves = "night",
    kept_shut: frozenset[str] = frozenset(),
) -> Moment | None:
    """The first moment at which a movement detector possibly notices somebody on a walk there and back.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        For its sheet.
    device : Device
        The detector.
    ends : Ends
        The walk.
    leaves : {"night", "most"}, default "night"
        How leaves stand that nobody opens.
    kept_shut : frozenset of str, default none
        Ids of openings whose leaves are taken to be shut whatever their habit.

    Returns
    -------
    Moment or None
        A whole room at an end counts as its end of the walk; None: it does not notice, or there is no way.
    """
    route = walk(house, catalogue, ends.start, goal=ends.goal)
    if route is None:
        return None
    opened = frozenset(door for _, door in doors_to_open(house, route, leaves, kept_shut=kept_shut))

    def in_room(number: int, doors: frozenset[str]) -> bool:
        return number < len(ends.rooms) and _noticed_in(
            house,
            catalogue,
            device,
            room=ends.rooms[number],
            opened=doors,
            leaves=leaves,
            kept_shut=kept_shut,
        )

    def on_way(*, is_way_back: bool) -> BoolArray:
        return noticed_on(
            house, catalogue, device, start=ends.start, goal=ends.goal, leaves=leaves, kept_shut=kept_shut,
            is_way_back=is_way_back,
        )  # fmt: skip

    if in_room(0, frozenset()):
        return Moment(0)
    there = on_way(is_way_back=False)
    if there.any():
        return Moment(int(there.argmax()))
    last = len(route.points) - 1
    if in_room(1, opened):
        return Moment(last)
    back = on_way(is_way_back=True)
    if back.any():
        return Moment(int(np.nonzero(back)[0][-1]), is_back=True)
    return Moment(0, is_back=True) if in_room(0, opened) else None


@lru_cache(maxsize=4096)
def _noticed_in(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    room: Space,
    opened: frozenset[str],
    leaves: Leaves,
    kept_shut: frozenset[str],
) -> bool:
    """Whether a movement detector possibly notices somebody anywhere in a room."""
    floors = possible_floor(house, catalogue, device, storeys=(room.storey,))
    if room.storey not in floors:
        return False
    cells = floors[room.storey] & room_floor(house, room)
    eye = standing(house, device)
    if not cells.any() or room.storey != eye.storey:
        return bool(cells.any())
    points, at = grids_of(house)[room.storey].centres()[cells], (eye.x_m, eye.y_m)
    between = leaves_before(house, room.storey, points, eye=at, passed=opened)
    if not between:
        return True
    # Nobody's middle is nearer to a shut leaf than half a body, whichever side they stand on.
    state = state_in(leaves, kept_shut)
    stand_shut = [opening_line(house.wall(one.wall), one) for one in between if state(one) != "open"]
    if stand_shut:
        near = shapely.distance(shapely.points(points), shapely.multilinestrings(stand_shut)) < BODY_RADIUS_M
        points = points[~near]
    if not len(points):
        return False
    lines = lines_to(house, room.storey, points, eye=at)
    return bool(seen_past(house, between, lines, state=state).any())


def noticed_in_room(
    house: Site, catalogue: Catalogue, device: Device, *, room: Space, leaves: Leaves = "night"
) -> bool:
    """Whether a movement detector possibly notices somebody who stays in a room, wherever in it they are."""
    return _noticed_in(
        house, catalogue, device, room=room, opened=frozenset(), leaves=leaves, kept_shut=frozenset()
    )
