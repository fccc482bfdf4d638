"""How much room a movement detector leaves an animal, and whether it trips it where that is too little."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.rules.animal_tops import Top
from wardwright.rules.animals import Roaming
from wardwright.rules.perches import UnderZones
from wardwright.trials.pet_walks import Tripped, tripped
from wardwright.trials.pets import OpenTo, ways_to
from wardwright.trials.room_left import Left, room_left


class PetRoom(NamedTuple):
    """One animal before one detector."""

    left: Left
    """What is known of it before it walks."""
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

    @property
    def animal(self) -> Roaming:
        """The animal."""
        return self.left.animal

    @property
    def estimate(self) -> Estimate:
        """As `Left.estimate`. [m]"""
        return self.left.estimate

    @property
    def least(self) -> Top | None:
        """The top of `least_under`."""
        return None if self.least_under is None else self.left.told.tops[self.least_under.number]

    @property
    def needs_m(self) -> float:
        """The jump that gets it there. [m]"""
        return 0.0 if self.least_under is None else float(self.left.told.needs()[self.least_under.number])


@lru_cache(maxsize=1024)
def room_for(
    house: Site, catalogue: Catalogue, device: Device, *, sheet: MovementSheet, animal: Roaming
) -> PetRoom:
    """How much room one detector leaves one animal, and whether it trips it.

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

    Returns
    -------
    PetRoom
        It walks only where it stands in a zone in the likely case.
    """
    left = room_left(house, device, sheet=sheet, animal=animal)
    told, wide, reached, inside = left.told, left.wide, left.reached, left.inside
    first = _first_tripped(house, catalogue, device, left=left)
    least = min(reached, key=lambda one: (one.free_m, one.number), default=None)
    breaks: dict[str, Top] = {}
    for one in sorted(inside, key=lambda one: (one.free_m, one.number)):
        top = told.tops[one.number]
        breaks.setdefault(top.thing or top.spaces[0], top)
    there = [one for one in left.under if wide.needs()[one.number] <= animal.row.jump_m]
    nearest = min(there, key=lambda one: (one.free_m, one.number), default=None)
    is_narrower = nearest is not None and nearest.free_m < left.likely_m
    return PetRoom(
        left,
        least,
        tuple(breaks.values()),
        None if first is None else told.tops[first.number],
        None if first is None else first.seconds,
        _ways(left.entered, wide.tops[nearest.number]) if nearest is not None and is_narrower else (),
    )


def _first_tripped(house: Site, catalogue: Catalogue, device: Device, *, left: Left) -> Tripped | None:
    """Where it trips the detector soonest: it is let walk on floors only where it does so on no thing."""
    things = tuple(one for one in left.inside if left.told.tops[one.number].kind != "floor")
    floors = tuple(one for one in left.inside if left.told.tops[one.number].kind == "floor")
    for under in (things, floors):
        found = tripped(house, catalogue, device, animal=left.animal, under=under) if under else ()
        if trips := [one for one in found if one.seconds[1] < np.inf]:
            return min(trips, key=lambda one: (one.seconds[1], one.number))
    return None


def _ways(entered: tuple[OpenTo, ...], top: Top) -> tuple[OpenTo, ...]:
    return tuple(dict.fromkeys(way for space in top.spaces for way in ways_to(entered, space)))
