"""How much room a movement detector leaves an animal: over draws of its height, its jump and the doors' habit."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.estimate import Estimate
from wardwright.model.placement import standing
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.rules.animal_reach import Reach, reach_of
from wardwright.rules.animal_tops import Top
from wardwright.rules.animals import Roaming
from wardwright.rules.perches import UnderZones, under_zones
from wardwright.trials.draws import Input, cases_of, estimate_of
from wardwright.trials.pets import OpenTo, open_to, tripped, ways_to

HEIGHT_SPREAD = {"measured": 0.05, "told": 0.1}
"""How far an animal's height may be off, as a share of it, by how it is known: it stretches, it is measured badly.
[-] (assumption)"""
HEIGHT_SPREAD_ELSE = 0.25
"""The same where nobody has said. [-] (assumption)"""
OPEN_FROM = 0.5
"""From this on a draw of the doors' state means open. [-]"""


class PetRoom(NamedTuple):
    """One animal before one detector."""

    animal: Roaming
    estimate: Estimate
    """Room between its top and the lowest zone over any place it gets to; below zero it stands in the zone. [m]"""
    passes_kg: float
    is_in_view: bool
    """Whether it may get to any place under a zone at all."""
    least_under: UnderZones | None
    """Where the zones leave it least room in the likely case; None: no zone passes over any place it gets to."""
    breaks: tuple[Top, ...]
    """Tops, of those it gets to in the likely case, where it stands in a zone, the worst first; each thing once."""
    trips_on: Top | None
    """Where it trips the detector soonest, at the sheet's reach: a thing rather than the floor."""
    trips_after: tuple[float, float, float] | None
    """Walked there until it does, at more, the sheet's and less reach. [s]"""
    lets_in: tuple[OpenTo, ...]
    """The way by which it gets where it is not told to be, if it has less room there than where it is."""
    reached: tuple[UnderZones, ...]
    """The tops under zones that it gets to in the likely case."""
    reach: Reach

    @property
    def least(self) -> Top | None:
        """The top of `least_under`."""
        return None if self.least_under is None else self.reach.tops[self.least_under.number]

    @property
    def needs_m(self) -> float:
        """The jump that gets it there. [m]"""
        return 0.0 if self.least_under is None else float(self.reach.needs()[self.least_under.number])

    @property
    def passes(self) -> bool:
        """Whether the sheet names its weight as one that it passes on the floor."""
        return self.animal.mass_kg <= self.passes_kg

    @property
    def is_enough(self) -> bool:
        """Whether it comes under no zone, or stays below them over the whole range, and the sheet passes it."""
        return not self.is_in_view or (self.passes and self.estimate.low > 0.0)


class _Left(NamedTuple):
    """What room is left, nobody having walked yet."""

    estimate: Estimate
    is_in_view: bool
    likely_m: float
    """Before the animal's height is taken off. [m]"""
    under: tuple[UnderZones, ...]
    told: Reach
    wide: Reach
    entered: tuple[OpenTo, ...]


def leaves_enough(house: Site, device: Device, *, sheet: MovementSheet, animal: Roaming) -> bool:
    """As `PetRoom.is_enough`, sooner: without letting the animal walk.

    Parameters
    ----------
    house, device, sheet, animal : Site, Device, MovementSheet, Roaming
        As for `room_for`.
    """
    left = _left(house, device, sheet=sheet, animal=animal, shut=frozenset(), without=frozenset())
    passes = animal.mass_kg <= sheet.passes_animals_up_to_kg
    return not left.is_in_view or (passes and left.estimate.low > 0.0)


@lru_cache(maxsize=1024)
def _left(
    house: Site,
    device: Device,
    *,
    sheet: MovementSheet,
    animal: Roaming,
    shut: frozenset[str],
    without: frozenset[str],
) -> _Left:
    under = under_zones(house, device, sheet)
    told = reach_of(house, animal.row, rooms=animal.rooms, without=without)
    entered = open_to(house, animal.rooms, shut)
    wide = reach_of(house, animal.row, rooms=animal.rooms | {one.space for one in entered}, without=without)
    cases = cases_of(_inputs(animal, has_doors=bool(entered)))
    eye = standing(house, device).height_m
    free = np.array([one.free_m for one in under])
    indexes = [one.number for one in under]
    jumps, heights = cases.rows[_key(animal, "jump")], cases.rows[_key(animal, "height")]
    room = _least(free, told.needs()[indexes], jumps, cap=eye)
    if entered:
        are_open = cases.rows[_key(animal, "doors")] > OPEN_FROM
        room = np.where(are_open, _least(free, wide.needs()[indexes], jumps, cap=eye), room)
    most = max(animal.row.jump_high_m, animal.row.jump_m)
    return _Left(
        estimate_of(room - heights, cases, unit="m"),
        bool((wide.needs()[indexes] <= most).any()),
        float(room[0]),
        under,
        told,
        wide,
        entered,
    )


@lru_cache(maxsize=1024)
def room_for(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    sheet: MovementSheet,
    animal: Roaming,
    shut: frozenset[str] = frozenset(),
    without: frozenset[str] = frozenset(),
) -> PetRoom:
    """How much room one detector leaves one animal.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets and figures.
    device : Device
        The detector.
    sheet : MovementSheet
        Its sheet.
    animal : Roaming
        The animal.
    shut : frozenset of str
        Ids of doors that are kept shut, whatever their habit.
    without : frozenset of str
        Ids of things that are taken out of the detector's view; from where they go the animal gets onto nothing.

    Returns
    -------
    PetRoom
        Its number is at most the detector's own height less the animal's: no zone is higher.
    """
    left = _left(house, device, sheet=sheet, animal=animal, shut=shut, without=without)
    under, told, wide = left.under, left.told, left.wide
    reached = tuple(one for one in under if told.needs()[one.number] <= animal.row.jump_m)
    inside = tuple(one for one in reached if one.free_m < animal.height_m)
    found = tripped(house, catalogue, device, animal=animal, under=inside) if inside else ()
    trips = [one for one in found if one.seconds[1] < np.inf]
    first = min(
        trips,
        key=lambda one: (told.tops[one.number].kind == "floor", one.seconds[1], one.number),
        default=None,
    )
    least = min(reached, key=lambda one: (one.free_m, one.number), default=None)
    breaks: dict[str, Top] = {}
    for one in sorted(inside, key=lambda one: (one.free_m, one.number)):
        top = told.tops[one.number]
        breaks.setdefault(top.thing or top.spaces[0], top)
    there = [one for one in under if wide.needs()[one.number] <= animal.row.jump_m]
    nearest = min(there, key=lambda one: (one.free_m, one.number), default=None)
    is_narrower = nearest is not None and nearest.free_m < left.likely_m
    return PetRoom(
        animal,
        left.estimate,
        sheet.passes_animals_up_to_kg,
        left.is_in_view,
        least,
        tuple(breaks.values()),
        None if first is None else told.tops[first.number],
        None if first is None else first.seconds,
        _ways(left.entered, wide.tops[nearest.number]) if nearest is not None and is_narrower else (),
        reached,
        told,
    )


def _ways(entered: tuple[OpenTo, ...], top: Top) -> tuple[OpenTo, ...]:
    return tuple(dict.fromkeys(way for space in top.spaces for way in ways_to(entered, space)))


def _least(free: FloatArray, needs: FloatArray, jumps: FloatArray, *, cap: float) -> FloatArray:
    """The least room above any top that each jump gets it to, at most the cap. [m]"""
    if not len(free):
        return np.full(len(jumps), cap)
    gets_there = needs[None, :] <= jumps[:, None]
    least: FloatArray = np.minimum(np.where(gets_there, free[None, :], np.inf).min(axis=1), cap)
    return least


def _inputs(animal: Roaming, *, has_doors: bool) -> tuple[Input, ...]:
    row, spread = animal.row, HEIGHT_SPREAD.get(animal.height_basis, HEIGHT_SPREAD_ELSE)
    height = animal.height_m
    tall = (height, height * (1 - spread), height * (1 + spread))
    rows: list[tuple[str, str, tuple[float, float, float], Basis]] = [
        ("height", "animal's height", tall, animal.height_basis),
        ("jump", "how high it jumps", (row.jump_m, row.jump_low_m, row.jump_high_m), "default"),
    ]
    if has_doors:
        rows.append(("doors", "doors left open", (0.0, 0.0, 1.0), "default"))
    return tuple(
        Input(_key(animal, key), name, _figure(key, name, values), basis) for key, name, values, basis in rows
    )


def _key(animal: Roaming, what: str) -> str:
    return f"{animal.pet.id}:{what}"


def _figure(key: str, name: str, values: tuple[float, float, float]) -> Figure:
    value, low, high = values
    unit = "-" if key == "doors" else "m"
    return Figure(
        id=key, name=name, value=value, low=low, high=high, unit=unit, source="own", mark="assumption"
    )
