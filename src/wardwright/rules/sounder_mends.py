"""What would make an alarm louder at a pillow: another sounder, or a door that is left open."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.estimate import Estimate
from wardwright.model.fabric import Space
from wardwright.model.site import Site
from wardwright.physics.sound.from_site import Sounding, sound_house
from wardwright.rules.finding import Mend
from wardwright.rules.pillows import Pillow
from wardwright.rules.sound_heard import at_night, at_pillows, level_estimate, shut, steps_between
from wardwright.rules.wall_spots import WallSpot, wall_spots

SOUNDER_HEIGHT_M = 2.2
"""Middle of a sounder on a wall. [m] (common practice)"""
FROM_THE_PILLOW_M = 1.5
"""A sounder in the room keeps so far from the pillow. [m] (assumption: an ear is no place for one)"""
WORTH_DB = 1.0
"""A mend is named if it brings at least this. [dB] (assumption: less is not to be heard)"""
MOST = 3
"""So many mends are named at most. [-]"""

Values = tuple[tuple[str, str | float | int | bool], ...]


class _Trial(NamedTuple):
    space: Space
    values: Values
    one: Sounding


def mends_for_pillow(
    site: Site, catalogue: Catalogue, every: tuple[Sounding, ...], *, heads: tuple[Pillow, ...], index: int
) -> tuple[Mend, ...]:
    """What would bring more to one pillow, most first.

    Parameters
    ----------
    site : Site
        The bare house.
    catalogue : Catalogue
        Sheets to choose from.
    every : tuple of Sounding
        The sounders there are.
    heads : tuple of Pillow
        All pillows.
    index : int
        Which of them.

    Returns
    -------
    tuple of Mend
        Each with the level at the pillow then: doors shut for a sounder more, the one door open and the others as at
        night for a door.
    """
    head, house = heads[index], sound_house(site, catalogue)
    now = at_pillows(site, catalogue, every, heads=heads, states=shut(site, catalogue))[..., index].sum(
        axis=1
    )
    room = house.room(head.space.id)
    found = []
    trials = _trials(site, catalogue, head)
    more = at_pillows(
        site, catalogue, tuple(t.one for t in trials), heads=heads, states=shut(site, catalogue)
    )
    for number, trial in enumerate(trials):
        together = (*every, trial.one)
        steps = steps_between(house, shut(site, catalogue), room=room, every=[one.room for one in together])
        gain = level_estimate(now + more[:, number, index], house=house, catalogue=catalogue, steps=steps)
        if gain is not None and _is_worth(gain, now):
            found.append(Mend(action="add-device", subject=trial.space.id, values=trial.values, gain=gain))
    found += doors_left_open(site, catalogue, every, heads=heads, index=index)
    found.sort(key=lambda mend: (-(mend.gain.value if mend.gain else 0.0), mend.action, mend.subject))
    return tuple(found[:MOST])


def _is_worth(gain: Estimate, now: FloatArray) -> bool:
    return float(now[0]) <= 0.0 or gain.value - 10.0 * math.log10(float(now[0])) >= WORTH_DB


def doors_left_open(
    site: Site, catalogue: Catalogue, every: tuple[Sounding, ...], *, heads: tuple[Pillow, ...], index: int
) -> list[Mend]:
    """Inside doors of the pillow's room that would bring more if they stood open at night."""
    head, house = heads[index], sound_house(site, catalogue)
    night = at_night(site, catalogue)
    now = at_pillows(site, catalogue, every, heads=heads, states=night)[..., index].sum(axis=1)
    room = house.room(head.space.id)
    ends = zip(house.openings, night, house.house.leaves.one, house.house.leaves.other, strict=True)
    found = []
    for opening, state, one, other in ends:
        is_inside_door = (
            opening is not None and opening.kind == "door" and room in (one, other) and other >= 0
        )
        if opening is None or not is_inside_door or state == "open":
            continue
        states = house.with_leaf(night, opening_id=opening.id, state="open")
        energy = at_pillows(site, catalogue, every, heads=heads, states=states)[..., index].sum(axis=1)
        steps = steps_between(house, states, room=room, every=[one.room for one in every])
        gain = level_estimate(energy, house=house, catalogue=catalogue, steps=steps)
        if gain is not None and _is_worth(gain, now):
            found.append(Mend(action="leave-open", subject=opening.id, gain=gain))
    return found


@lru_cache(maxsize=256)
def _trials(site: Site, catalogue: Catalogue, head: Pillow) -> tuple[_Trial, ...]:
    """A sounder in the pillow's own room, and in each room that its doors lead to."""
    rows = [row for row in catalogue.sheets if row.kind == "sounder" and not row.is_outside]
    if not rows:
        return ()
    row = min(rows, key=lambda one: one.cheapest_first)
    house = sound_house(site, catalogue)
    room = house.room(head.space.id)
    beside = {
        int(other if one == room else one)
        for one, other in zip(house.house.leaves.one, house.house.leaves.other, strict=True)
        if room in (one, other) and other >= 0
    }
    found = []
    for number in (room, *sorted(beside)):
        space = house.spaces[number]
        if space.belongs == "ours" and space.use not in ("bathroom", "toilet", "store", "garage"):
            trial = _trial(site, row, space, head=head, number=number)
            found += [trial] if trial is not None else []
    return tuple(found)


def _trial(site: Site, row: DeviceSheet, space: Space, *, head: Pillow, number: int) -> _Trial | None:
    spots = wall_spots(site, space, height_m=SOUNDER_HEIGHT_M)
    if space.id == head.space.id:
        spots = tuple(spot for spot in spots if _away(spot, head) >= FROM_THE_PILLOW_M)
    if not spots:
        return None
    # Along a wall before a corner, then nearest to the pillow.
    spot = min(spots, key=lambda one: (one.corner != 0, round(_away(one, head), 6), one.wall, one.offset_m))
    mount = WallMount(wall=spot.wall, side=spot.side, offset_m=spot.offset_m, height_m=SOUNDER_HEIGHT_M)
    device = Device(id=f"{space.id}-sounder-tried", name=f"{space.name} sounder", sheet=row.id, mount=mount)
    values: Values = (("sheet", row.id), ("name", device.name), *spot.values(SOUNDER_HEIGHT_M))
    return _Trial(space, values, Sounding(device, row, spot.standing(SOUNDER_HEIGHT_M), number))


def _away(spot: WallSpot, head: Pillow) -> float:
    return math.hypot(spot.x_m - head.at_m[0], spot.y_m - head.at_m[1])
