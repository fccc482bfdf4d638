"""Timely detection: is every way from an opening to a goal noticed while it still helps?

The design case: a hurried intruder, what a detector surely notices, the slow message path, all else as likely.
A device helps at a place where the least remaining time to the goal exceeds what its behaviour still needs. Whoever
walks 1.5 m on floor where it both surely notices and helps is caught in time; if the goal cannot be reached from the
opening otherwise, every way is caught.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

import numpy as np
from scipy import ndimage

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.programme import STANDARD_BEHAVIOURS, Behaviour, Programme
from wardwright.model.record import Ring
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, TimeMap, premises_network, time_maps, way_in_spot
from wardwright.rules.at_the_opening import notices_at_the_opening
from wardwright.trials.barriers import CELL_M, grids_of, standing_cells, watched_floor
from wardwright.trials.floors import nearest_cells, rings_of
from wardwright.trials.paces import paces_of
from wardwright.trials.stacked_floors import Floors, StackedFloors
from wardwright.trials.unnoticed import GuardedFloor, WatchedShape
from wardwright.trials.watchers import has_sounder, heard_in
from wardwright.trials.ways_in import WayIn

Need = Literal["message", "sounder"]
Zoned = tuple[tuple[Device, Behaviour], ...]
"""Devices with the behaviour of their zone."""


def still_needed(catalogue: Catalogue, programme: Programme, behaviour: Behaviour, *, need: Need) -> float:
    """Time that a behaviour still needs after its detector has noticed, in the design case. [s]"""
    wait = catalogue.figure("radio-delay").value
    if behaviour.starts_entry:
        wait += programme.entry_time_s
    if need == "sounder":
        return wait + catalogue.figure("sounder-start").value
    if behaviour.delays_message:
        wait += programme.abort_delay_s
    # The message may leave until the control unit is broken, not only until it is reached.
    return wait + catalogue.figure("message-time").high - catalogue.figure("break-control-unit").value


def is_every_way_caught(
    site: Site, catalogue: Catalogue, *, way: WayIn, goal: Spot, need: Need, part: str = "full"
) -> bool:
    """Whether every way from an opening to a goal is noticed in time, in the design case.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets and figures.
    way : WayIn
        Where the intruder comes in.
    goal : Spot
        Where the intruder wants to be.
    need : str
        `message`: it must have left before the control unit is broken; `sounder`: it must sound before the goal
        is reached.
    part : str, default "full"
        What is set.

    Returns
    -------
    bool
        True if no way is left that avoids all floor where somebody is surely noticed in time.
    """
    if need == "sounder" and not has_sounder(site, catalogue):
        return False
    zoned = _zoned(site, part)
    opened = [
        behaviour
        for device, behaviour in zoned
        if notices_at_the_opening(site.bare, catalogue, device, opening=way.opening, manner=way.manner)
    ]
    start = way_in_spot(site, way.opening)
    left = _remaining(site.bare, catalogue, goal)
    climb = catalogue.figure("climb-in").value if way.climbs else 0.0
    for behaviour in opened:
        limit = still_needed(catalogue, site.programme, behaviour, need=need)
        if _time_at(left, start) + climb > limit:
            return True
    if not len(standing_cells(site.bare, start)) or not len(standing_cells(site.bare, goal)):
        return False

    def reached(layer: Zoned) -> StackedFloors:
        guarded = _guarded(site.bare, catalogue, goal, zoned=layer, programme=site.programme, need=need)
        return guarded.unnoticed_from(start)

    # Once an entry time runs, the zones of the way in say nothing.
    running = tuple(pair for pair in zoned if not (pair[1].allowed_after_entry or pair[1].starts_entry))
    if any(behaviour.starts_entry for behaviour in opened):
        return not _holds(reached(running), goal, site.bare)
    before = reached(zoned)
    if _holds(before, goal, site.bare):
        return False
    return not _starts_entry(site, catalogue, zoned, floors=before) or not _holds(
        reached(running), goal, site.bare
    )


def _starts_entry(site: Site, catalogue: Catalogue, zoned: Zoned, *, floors: Floors) -> bool:
    """Whether somebody on some floor can start the entry time: an error only toward that they can."""
    for device, behaviour in zoned:
        if behaviour.starts_entry:
            for storey, mask in watched_floor(site.bare, catalogue, device, side="possibly").items():
                if (ndimage.binary_dilation(floors[storey], iterations=2) & mask).any():
                    return True
    return False


def timely_floor(site: Site, catalogue: Catalogue, *, goal: Spot, need: Need) -> dict[str, tuple[Ring, ...]]:
    """Outlines, by storey, of the floor where being noticed by an instant zone still helps. [m]"""
    return _timely_rings(site.bare, catalogue, goal, need=need)


@lru_cache(maxsize=64)
def _timely_rings(
    house: Site, catalogue: Catalogue, goal: Spot, *, need: Need
) -> dict[str, tuple[Ring, ...]]:
    limit = still_needed(catalogue, Programme(), STANDARD_BEHAVIOURS[0], need=need)
    left = _remaining(house, catalogue, goal)
    helps = {storey: np.nan_to_num(one.times, nan=-1.0) > limit for storey, one in left.items()}
    return rings_of(grids_of(house), helps)


@lru_cache(maxsize=64)
def _zoned(site: Site, part: str) -> Zoned:
    found = []
    heard = heard_in(site, part)
    for device in sorted(site.devices, key=lambda one: one.id):
        behaviour = heard.get(device.id)
        if behaviour is not None and behaviour.alarms:
            found.append((device, behaviour))
    return tuple(found)


@lru_cache(maxsize=64)
def _guarded(
    house: Site, catalogue: Catalogue, goal: Spot, *, zoned: Zoned, programme: Programme, need: Need
) -> GuardedFloor:
    """The floor with all that surely notices in time."""
    shapes, closed = [], []
    for device, behaviour in zoned:
        limit = still_needed(catalogue, programme, behaviour, need=need)
        if catalogue.sheet(device.sheet).kind == "movement-detector":
            shape = _timely_shape(house, catalogue, device, goal=goal, limit=limit)
            if shape is not None:
                shapes.append(shape)
        else:
            left = _remaining(house, catalogue, goal)
            doorway = watched_floor(house, catalogue, device, side="surely")
            closed.append({storey: mask & (left[storey].times > limit) for storey, mask in doorway.items()})
    return GuardedFloor(house, shapes, closed=closed)


@lru_cache(maxsize=512)
def _timely_shape(
    house: Site, catalogue: Catalogue, device: Device, *, goal: Spot, limit: float
) -> WatchedShape | None:
    """A detector's low-side shape where being noticed still helps."""
    left = _remaining(house, catalogue, goal)
    for storey, mask in watched_floor(house, catalogue, device, side="likely").items():
        helps = mask & (left[storey].times > limit)
        return WatchedShape(house, storey, helps) if helps.any() else None
    return None


def _holds(floors: Floors, spot: Spot, house: Site) -> bool:
    """Whether floor holds the place where somebody stands who lays hands on a thing at a spot."""
    if spot.storey not in floors:
        return False
    at = standing_cells(house, spot)
    return bool(floors[spot.storey][at[:, 0], at[:, 1]].any())


def _remaining(house: Site, catalogue: Catalogue, goal: Spot) -> dict[str, TimeMap]:
    network = premises_network(house)
    return time_maps(network, goal, paces=paces_of(catalogue), toward=True, cell=CELL_M)


def _time_at(maps: dict[str, TimeMap], spot: Spot) -> float:
    one = maps.get(spot.storey)
    if one is None:
        return 0.0
    at = nearest_cells(np.isfinite(one.times), one.grid, (spot.x, spot.y))
    return float(one.times[at[:, 0], at[:, 1]].min()) if len(at) else 0.0
