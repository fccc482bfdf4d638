"""How much room a movement detector leaves an animal, over draws of its height, its jump and the doors' habit."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Figure
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.estimate import Estimate
from wardwright.model.placement import standing
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.rules.animal_reach import Reach, reach_of
from wardwright.rules.animals import Roaming
from wardwright.rules.perches import UnderZones, under_zones
from wardwright.trials.draws import Cases, Input, cases_of, estimate_of
from wardwright.trials.pets import OpenTo, open_to

HEIGHT_SPREAD = {"measured": 0.05, "told": 0.1}
"""How far an animal's height may be off, as a share of it, by how it is known: it stretches, it is measured badly.
[-] (assumption)"""
HEIGHT_SPREAD_ELSE = 0.25
"""The same where nobody has said. [-] (assumption)"""
OPEN_FROM = 0.5
"""From this on a draw of the doors' state means open. [-]"""


class Left(NamedTuple):
    """What room a detector leaves an animal, nobody having walked yet."""

    animal: Roaming
    estimate: Estimate
    """Room between its top and the lowest zone over any place it gets to; below zero it stands in the zone. [m]"""
    passes_kg: float
    """The weight up to which the sheet passes animals. [kg]"""
    in_view: tuple[UnderZones, ...]
    """The tops under zones that it may get to at all."""
    likely_m: float
    """Before the animal's height is taken off. [m]"""
    under: tuple[UnderZones, ...]
    """All tops under zones."""
    told: Reach
    """From the rooms where it is told to stay."""
    wide: Reach
    """From those that stand open to it as well."""
    entered: tuple[OpenTo, ...]
    """These."""

    @property
    def passes(self) -> bool:
        """Whether the sheet names its weight as one that it passes on the floor."""
        return self.animal.mass_kg <= self.passes_kg

    @property
    def is_in_view(self) -> bool:
        """Whether it may get to any place under a zone at all."""
        return bool(self.in_view)

    @property
    def is_enough(self) -> bool:
        """Whether it comes under no zone, or stays below them over the whole range, and the sheet passes it."""
        return not self.is_in_view or (self.passes and self.estimate.low > 0.0)

    @property
    def reached(self) -> tuple[UnderZones, ...]:
        """The tops under zones that it gets to in the likely case."""
        needs = self.told.needs()
        return tuple(one for one in self.under if needs[one.number] <= self.animal.row.jump_m)

    @property
    def inside(self) -> tuple[UnderZones, ...]:
        """Those of them where it stands in a zone."""
        return tuple(one for one in self.reached if one.free_m < self.animal.height_m)


@lru_cache(maxsize=1024)
def room_left(
    house: Site,
    device: Device,
    *,
    sheet: MovementSheet,
    animal: Roaming,
    shut: frozenset[str] = frozenset(),
    without: frozenset[str] = frozenset(),
) -> Left:
    """How much room one detector leaves one animal, as far as it is known before the animal walks.

    Parameters
    ----------
    house : Site
        The bare house.
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
    Left
        Its number is at most the detector's own height less the animal's: no zone is higher.
    """
    under = under_zones(house, device, sheet)
    told = reach_of(house, animal.row, rooms=animal.rooms, without=without)
    entered = open_to(house, animal.rooms, shut)
    wide = reach_of(house, animal.row, rooms=animal.rooms | {one.space for one in entered}, without=without)
    cases = _cases(animal, has_doors=bool(entered))
    eye = standing(house, device).height_m
    free = np.array([one.free_m for one in under])
    indexes = [one.number for one in under]
    jumps, heights = cases.rows[_key(animal, "jump")], cases.rows[_key(animal, "height")]
    room = _least(free, told.needs()[indexes], jumps, cap=eye)
    if entered:
        are_open = cases.rows[_key(animal, "doors")] > OPEN_FROM
        room = np.where(are_open, _least(free, wide.needs()[indexes], jumps, cap=eye), room)
    most = max(animal.row.jump_high_m, animal.row.jump_m)
    return Left(
        animal,
        estimate_of(room - heights, cases, unit="m"),
        sheet.passes_animals_up_to_kg,
        tuple(one for one in under if wide.needs()[one.number] <= most),
        float(room[0]),
        under,
        told,
        wide,
        entered,
    )


def _least(free: FloatArray, needs: FloatArray, jumps: FloatArray, *, cap: float) -> FloatArray:
    """The least room above any top that each jump gets it to, at most the cap. [m]"""
    order = np.argsort(needs)
    # The least over none of them, over the easiest one, over the two easiest ...
    least = np.minimum(np.minimum.accumulate(np.concatenate([[np.inf], free[order]])), cap)
    found: FloatArray = least[np.searchsorted(needs[order], jumps, side="right")]
    return found


@lru_cache(maxsize=256)
def _cases(animal: Roaming, *, has_doors: bool) -> Cases:
    return cases_of(_inputs(animal, has_doors=has_doors))


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
