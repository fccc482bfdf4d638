"""Timely detection: is every way from an opening to a goal noticed while it still helps?

The design case: the quickest paces, what a detector surely notices, the slow message. A device helps at a place
where the least remaining time to the goal exceeds what its behaviour still needs; the floor where it both surely
notices and helps is a wall that no undetected way may cross. If such walls part the opening from the goal, every
way is caught.
"""

from __future__ import annotations

from typing import Literal

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray, painted
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.placement import opening_footprint
from wardwright.model.programme import Behaviour
from wardwright.model.record import Ring
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import watch
from wardwright.physics.walking.from_site import Spot, TimeMap, premises_network, time_maps, way_in_spot
from wardwright.trials.floors import Floors, free_floors, hanging_together, nearest_cell, on_grid, rings_of
from wardwright.trials.paces import quickest_paces
from wardwright.trials.watchers import behaviour_of, has_sounder, opens_contact
from wardwright.trials.ways_in import WayIn

Need = Literal["message", "sounder"]


def still_needed(site: Site, catalogue: Catalogue, behaviour: Behaviour, *, need: Need) -> float:
    """Time that a behaviour still needs after its detector has noticed, in the design case. [s]"""
    wait = catalogue.figure("radio-delay").high
    if behaviour.starts_entry:
        wait += site.programme.entry_time_s
    if need == "sounder":
        return wait + catalogue.figure("sounder-start").high
    if behaviour.delays_message:
        wait += site.programme.abort_delay_s
    # The message may leave until the control unit is broken, not only until it is reached.
    return wait + catalogue.figure("message-time").high - catalogue.figure("break-control-unit").low


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
    maps = _remaining(site, catalogue, goal)
    start = way_in_spot(site, way.opening)
    free = free_floors(maps)
    if need == "sounder" and not has_sounder(site, catalogue):
        return False
    entry_runs = False
    for device in site.devices:
        behaviour = behaviour_of(site, device, part)
        if behaviour is None or not behaviour.alarms or not opens_contact(device, way):
            continue
        entry_runs = entry_runs or behaviour.starts_entry
        climb = catalogue.figure("climb-in").low if way.climbs else 0.0
        if _time_at(maps, start) + climb > still_needed(site, catalogue, behaviour, need=need):
            return True
    walls = {storey: np.zeros_like(mask) for storey, mask in free.items()}
    for device in site.devices:
        behaviour = behaviour_of(site, device, part)
        if behaviour is None or not behaviour.alarms:
            continue
        if entry_runs and (behaviour.allowed_after_entry or behaviour.starts_entry):
            continue
        limit = still_needed(site, catalogue, behaviour, need=need)
        for storey, mask in _sure_floor(site, catalogue, device, maps=maps).items():
            walls[storey] |= mask & (maps[storey].times > limit)
    open_floor = {storey: mask & ~walls[storey] for storey, mask in free.items()}
    reached = hanging_together(site, maps, open_floor, start=start)
    return goal.storey not in reached or not _holds(reached, maps, goal)


def timely_floor(site: Site, catalogue: Catalogue, *, goal: Spot, need: Need) -> dict[str, tuple[Ring, ...]]:
    """Outlines, by storey, of the floor where being noticed by an instant zone still helps. [m]"""
    maps = _remaining(site, catalogue, goal)
    limit = still_needed(site, catalogue, Behaviour(id="instant", name="instant"), need=need)
    helps = {storey: np.nan_to_num(one.times, nan=-1.0) > limit for storey, one in maps.items()}
    return rings_of(maps, helps)


def _remaining(site: Site, catalogue: Catalogue, goal: Spot) -> dict[str, TimeMap]:
    return time_maps(premises_network(site), goal, paces=quickest_paces(catalogue), toward=True)


def _time_at(maps: dict[str, TimeMap], spot: Spot) -> float:
    one = maps.get(spot.storey)
    if one is None:
        return 0.0
    at = nearest_cell(np.isfinite(one.times), one.grid, (spot.x, spot.y))
    return 0.0 if at is None else float(one.times[at])


def _holds(floors: Floors, maps: dict[str, TimeMap], spot: Spot) -> bool:
    grid = maps[spot.storey].grid
    everywhere = np.isfinite(maps[spot.storey].times)
    at = nearest_cell(everywhere, grid, (spot.x, spot.y))
    return at is not None and bool(floors[spot.storey][at])


def _sure_floor(
    site: Site, catalogue: Catalogue, device: Device, *, maps: dict[str, TimeMap]
) -> dict[str, BoolArray]:
    """The floor that nobody crosses unnoticed: a detector's core, or the doorway of a contact."""
    kind = catalogue.sheet(device.sheet).kind
    if kind == "movement-detector":
        seen = watch(site, catalogue, device)
        if seen.storey not in maps:
            return {}
        return {seen.storey: on_grid(seen.core, of=seen.grid, onto=maps[seen.storey].grid)}
    if kind == "opening-contact":
        return doorway_floor(site, device, maps=maps)
    return {}


def doorway_floor(site: Site, device: Device, *, maps: dict[str, TimeMap]) -> dict[str, BoolArray]:
    """The floor of the doorway that an opening contact is on, if its leaf is usually shut and walked through."""
    if not isinstance(device.mount, OpeningMount):
        return {}
    opening = site.opening(device.mount.opening)
    wall = site.wall(opening.wall)
    if opening.kind == "gap" or opening.habit != "shut" or wall.storey not in maps:
        return {}
    doorway = shapely.Polygon(opening_footprint(wall, opening)).buffer(0.05, join_style="mitre")
    return {wall.storey: painted(maps[wall.storey].grid, doorway)}
