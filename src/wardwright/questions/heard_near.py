"""Question 13, ears near a sounder: how loud it is for who stands by it, and for who lies nearest."""

from __future__ import annotations

from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.limits import Limit
from wardwright.model.site import Site
from wardwright.physics.sound.from_site import Sounding, sound_house
from wardwright.physics.sound.house import OUTSIDE
from wardwright.questions.answer import Answer, PartAnswer, Verdict
from wardwright.questions.heard_at_pillows import NUMBER
from wardwright.questions.level_sketches import figure_at
from wardwright.rules.limits import cited, limit_for
from wardwright.rules.near_ears import near_levels
from wardwright.rules.pillows import Pillow, pillows

MEASURE = "margin below what no ear should get, at the nearest ear"
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
        drivers=level.drivers,
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
