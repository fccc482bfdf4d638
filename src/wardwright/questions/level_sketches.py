"""Levels as figures on the plan: one for each room, and one for the place that an answer is about."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.opening import LeafState
from wardwright.model.record import Point2
from wardwright.model.room_shapes import floor_polygon
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.sound.from_site import Sounding, sound_house
from wardwright.rules.sound_heard import in_rooms

LEAST_DBA = 30.0
"""A room quieter than a bedroom at night has no figure. [dBA] (published: World Health Organization 1999)"""
NARROW_M2 = 2.0
"""A smaller room has no figure: no room for it. [m2] (assumption)"""


def figure_at(storey: str, at: Point2, level: Estimate, *, words: str = "") -> Sketch:
    """The level at the place that an answer is about."""
    return Sketch(role="level", storey=storey, points=(at,), label=f"{level.value:.0f} dBA {words}".strip())


@lru_cache(maxsize=256)
def figures_of_rooms(
    site: Site, catalogue: Catalogue, every: tuple[Sounding, ...], *, states: tuple[LeafState, ...]
) -> tuple[tuple[str, Sketch], ...]:
    """The diffuse level in each room, all the sounders together, by the room's id."""
    house = sound_house(site, catalogue)
    energy: FloatArray = in_rooms(site, catalogue, every, states=states)[0].sum(axis=(0, 1))
    found = []
    for number, space in enumerate(house.spaces):
        floor = floor_polygon(space)
        level = 10.0 * float(np.log10(max(energy[number], 1e-9)))
        if level >= LEAST_DBA and floor.area >= NARROW_M2:
            middle = floor.representative_point()
            at = (float(middle.x), float(middle.y))
            found.append(
                (space.id, Sketch(role="level", storey=space.storey, points=(at,), label=f"{level:.0f}"))
            )
    return tuple(found)
