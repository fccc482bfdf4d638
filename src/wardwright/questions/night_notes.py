"""What goes with the number of a trip from bed: facts, times on the way, and what to draw."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

import numpy as np

from wardwright.geometry.raster import Grid, outlines
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import PartAnswer
from wardwright.questions.night_numbers import NightCase, nearest_detector, unset_estimate
from wardwright.trials.barriers import grids_of
from wardwright.trials.household_walk import stretches_on, walk
from wardwright.trials.night_walk import Moment
from wardwright.trials.stacked_floors import Floors
from wardwright.trials.stretches import Stretch
from wardwright.trials.trip_floor import Ends, floor_seen, trip_floor

CLOSE_M = 0.05
"""Less clearance than this is none: half a cell. [m] (derived here)"""


def night_parts(site: Site, catalogue: Catalogue, case: NightCase) -> tuple[PartAnswer, ...]:
    """The numbers behind the answer about a trip: when the alarm would be unset in the morning."""
    if case.trip.control is None:
        return ()
    estimate = unset_estimate(site, catalogue, case)
    return (PartAnswer(name=f"unset at {case.trip.control.name} after", estimate=estimate),)


def night_notes(site: Site, catalogue: Catalogue, case: NightCase) -> tuple[str, ...]:
    """Facts that go with a trip.

    Parameters
    ----------
    site : Site
        The house, its devices and its zones.
    catalogue : Catalogue
        Sheets and figures.
    case : NightCase
        The trip, and how it goes.

    Returns
    -------
    tuple of str
        Which device rings, where one is then, and how it behaves; or what keeps it silent.
    """
    notes = []
    ring = case.ring
    if ring is not None:
        where = _where(site, catalogue, case, moment=ring.moment)
        back = " on the way back" if ring.moment.is_back else ""
        notes.append(f"{ring.device.name} ({ring.behaviour.name}) notices{where}{back}")
        if ring.waits_s > 0.0:
            notes.append(f"it starts the entry time of {ring.waits_s:g} s, and nobody unsets the alarm")
        if case.leaves == "most":
            notes.append("only with a leaf standing as it does at times, not as it usually stands at night")
        return tuple(notes)
    nearest = nearest_detector(site, catalogue, case)
    if nearest is not None:
        metres, device = nearest
        name = site.device(device).name
        if metres >= CLOSE_M:
            notes.append(f"{name} is the nearest that is active")
        elif case.trip.control is None:
            notes.append(f"only a leaf that is kept shut is between the trip and {name}")
    if case.trip.control is not None and case.trip.goal == "out":
        notes.append(
            f"by way of {case.trip.control.name}, where the alarm is unset before any door is opened"
        )
    return tuple(notes)


def _where(site: Site, catalogue: Catalogue, case: NightCase, *, moment: Moment) -> str:
    """In which space somebody is at a moment."""
    route = walk(site.bare, catalogue, case.ends.start, goal=case.ends.goal)
    if route is None:
        return ""
    x, y = route.points[moment.point].tolist()
    space = space_at(site, route.storeys[moment.point], (x, y))
    return "" if space is None else f" in {space.name}"


def night_sketches(site: Site, catalogue: Catalogue, case: NightCase) -> tuple[Sketch, ...]:
    """What to draw of a trip: its floor and its walk; the device that rings, what it sees of it, and the spot.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets and figures.
    case : NightCase
        The trip, and how it goes.

    Returns
    -------
    tuple of Sketch
        Storey by storey. Where nothing rings, what the nearest device sees of it, with every leaf away.
    """
    ring = case.ring
    nearest = nearest_detector(site, catalogue, case) if ring is None else None
    device = ring.device if ring is not None else None if nearest is None else site.device(nearest[1])
    found = list(_floor(site.bare, catalogue, case.ends))
    if device is not None:
        found += _seen(site.bare, catalogue, case.ends, device=device)
    if ring is not None:
        at = standing(site, ring.device)
        # The plan names its devices itself.
        found.append(Sketch(role="fault", storey=at.storey, points=((at.x_m, at.y_m),)))
    route = walk(site.bare, catalogue, case.ends.start, goal=case.ends.goal)
    if ring is not None and route is not None:
        x, y = route.points[ring.moment.point].tolist()
        label = f"{case.trip.person.name} here"
        found.append(
            Sketch(role="notice", storey=route.storeys[ring.moment.point], points=((x, y),), label=label)
        )
    return tuple(found)


@lru_cache(maxsize=256)
def _floor(house: Site, catalogue: Catalogue, ends: Ends) -> tuple[Sketch, ...]:
    """The floor of a trip, and its walk on each storey."""
    found = _drawn(house, "trip", dict(sorted(trip_floor(house, catalogue, ends).items())))
    walked = (_walked(stretch) for stretch in stretches_on(house, catalogue, ends.start, goal=ends.goal))
    return (*found, *(one for one in walked if len(one.points) > 1))


@lru_cache(maxsize=256)
def _walked(stretch: Stretch) -> Sketch:
    """A walk on one storey, its points a little apart."""
    places = [(x, y) for x, y in stretch.points().tolist()]
    return Sketch(role="walk", storey=stretch.storey, points=(*places[:-1:4], places[-1]))


@lru_cache(maxsize=256)
def _seen(house: Site, catalogue: Catalogue, ends: Ends, *, device: Device) -> tuple[Sketch, ...]:
    """The part of a trip's floor that a movement detector possibly sees, every leaf away."""
    if catalogue.sheet(device.sheet).kind != "movement-detector":
        return ()
    return tuple(_drawn(house, "trip-seen", floor_seen(house, catalogue, device, ends=ends)))


def _drawn(house: Site, role: Literal["trip", "trip-seen"], floors: Floors) -> list[Sketch]:
    """The floor of each storey; trips that are alike on one storey have its sketch in common."""
    grids = grids_of(house)
    each = [
        _outlined(grids[storey], cells.tobytes(), role=role, storey=storey)
        for storey, cells in floors.items()
    ]
    return [one for one in each if one.rings]


@lru_cache(maxsize=256)
def _outlined(grid: Grid, cells: bytes, *, role: Literal["trip", "trip-seen"], storey: str) -> Sketch:
    mask = np.frombuffer(cells, dtype=np.bool_).reshape(grid.shape)
    return Sketch(role=role, storey=storey, rings=outlines(grid, mask, tolerance=grid.cell))
