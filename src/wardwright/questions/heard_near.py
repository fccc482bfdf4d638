"""Question 13, ears near a sounder: how loud it is for who stands by it, and for who lies nearest."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.limits import Limit
from wardwright.model.site import Site
from wardwright.physics.sound.from_site import Sounding, place_of, sound_house, sources
from wardwright.physics.sound.house import OUTSIDE
from wardwright.physics.sound.levels import Ears, energy_at
from wardwright.questions.answer import Answer, PartAnswer, Verdict
from wardwright.questions.heard_at_pillows import NUMBER
from wardwright.questions.level_sketches import figure_at
from wardwright.rules.limits import cited, limit_for
from wardwright.rules.pillows import Pillow, pillows
from wardwright.rules.sound_heard import in_rooms, level_estimate, shut

MEASURE = "margin below what no ear should get, at the nearest ear"
STANDING_M = 1.6
"""Of an ear above the floor, standing. [m] (assumption)"""
BESIDE_M = 0.3
"""How near a sounder somebody stands, on the plan. [m] (assumption: the head of who works on it or walks past)"""
SHORT_BED_M = 1.45
"""A shorter bed is a cot. [m] (assumption)"""


def answers_near(site: Site, catalogue: Catalogue, every: tuple[Sounding, ...]) -> tuple[Answer, ...]:
    """One answer for each sounder inside."""
    limit = limit_for(catalogue, "ear-level", site)
    heads = pillows(site)
    beds = frozenset(
        fixture.id for fixture in site.fixtures if fixture.kind == "bed" and max(fixture.size_m) < SHORT_BED_M
    )
    return tuple(
        _answer(site.bare, catalogue, one, heads=heads, cots=beds, limit=limit)
        for one in every
        if one.room != OUTSIDE
    )


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


@lru_cache(maxsize=256)
def _answer(
    site: Site,
    catalogue: Catalogue,
    one: Sounding,
    *,
    heads: tuple[Pillow, ...],
    cots: frozenset[str],
    limit: Limit,
) -> Answer:
    levels = near_levels(site, catalogue, one, heads=heads)
    name, level = max(levels, key=lambda pair: pair[1].value)
    margin = Estimate(
        value=limit.value - level.value,
        low=limit.value - level.high,
        high=limit.value - level.low,
        unit="dB",
        drivers=tuple(Driver(name=d.name, swing=d.swing, basis=d.basis) for d in level.drivers),
        basis=level.basis,
    )
    verdict: Verdict = "bad" if margin.value < 0.0 else "thin" if margin.low < 0.0 else "good"
    notes = [f"the nearest ear is that of {name}", f"{limit.value:g} dBA: {cited(catalogue, limit)}"]
    house = sound_house(site, catalogue)
    notes += [
        f"a cot stands in its room: {head.name}"
        for head in heads
        if head.id in cots and house.room(head.space.id) == one.room
    ]
    if verdict == "bad":
        notes.insert(0, f"over {limit.value:g} dBA: whoever works on it wears hearing protection")
    return Answer(
        question=NUMBER,
        subject=one.device.name,
        subject_id=one.device.id,
        measure=MEASURE,
        estimate=margin,
        verdict=verdict,
        parts=tuple(PartAnswer(name=f"level for {words}", estimate=found) for words, found in levels),
        notes=tuple(notes),
        sketches=(figure_at(one.place.storey, (one.place.x_m, one.place.y_m), level, words="at the ear"),),
    )
