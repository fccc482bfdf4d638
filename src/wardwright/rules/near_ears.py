"""How loud a sounder is for who stands by it, and for who lies in its room."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.physics.sound.from_site import Sounding, place_of, sound_house, sources
from wardwright.physics.sound.levels import Ears, energy_at
from wardwright.rules.pillows import Pillow
from wardwright.rules.sound_heard import in_rooms, level_estimate, shut

STANDING_M = 1.6
"""Of an ear above the floor, standing. [m] (assumption)"""
BESIDE_M = 0.3
"""How near a sounder somebody stands, on the plan. [m] (assumption: the head of who works on it or walks past)"""


@lru_cache(maxsize=256)
def near_levels(
    site: Site, catalogue: Catalogue, one: Sounding, *, heads: tuple[Pillow, ...]
) -> tuple[tuple[str, Estimate], ...]:
    """The level for who stands by a sounder, and at each pillow of its room: words and level."""
    house = sound_house(site, catalogue)
    x, y, z = place_of(site, one.place)
    floor = site.storey(one.place.storey).elevation_m
    turn = math.radians(one.place.heading_deg)
    here = [head for head in heads if house.room(head.space.id) == one.room]
    places = [(x + BESIDE_M * math.cos(turn), y + BESIDE_M * math.sin(turn), min(z, floor + STANDING_M))]
    places += [(*head.at_m, floor + head.height_m) for head in here]
    ears = Ears(np.full(len(places), one.room, dtype=np.int64), np.asarray(places, dtype=np.float64))
    rooms = in_rooms(site, catalogue, (one,), states=shut(site, catalogue))
    energy = energy_at(rooms, sources(site, catalogue, (one,)), ears)[:, 0]
    words = ["somebody who stands by it", *(f"the {head.name}" for head in here)]
    found = []
    for index, name in enumerate(words):
        level = level_estimate(energy[:, index], house=house, catalogue=catalogue, steps=0.0)
        if level is not None:
            found.append((name, level))
    return tuple(found)
