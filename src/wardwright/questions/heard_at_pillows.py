"""Question 13, pillows: what reaches each of them when the intruder alarm sounds, with doors shut."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.limits import Limit
from wardwright.model.opening import LeafState
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.sound.from_site import Sounding, sound_house
from wardwright.questions.answer import Answer, PartAnswer, Verdict
from wardwright.questions.level_sketches import figure_at, figures_of_rooms
from wardwright.questions.waking_notes import LOW_TONE_HZ, no_promise, who_sleeps_on
from wardwright.rules.limits import limit_for
from wardwright.rules.pillows import Pillow, pillows
from wardwright.rules.sound_heard import at_night, at_pillows, level_estimate, shut, steps_between
from wardwright.rules.sounder_mends import mends_for_pillow

NUMBER = 13
MEASURE = "level at the pillow when the intruder alarm sounds, doors shut"
AT_NIGHT = "with doors as they stand at night"


class Heard(NamedTuple):
    """What reaches one pillow."""

    level: Estimate | None
    night: Estimate | None
    alone: tuple[Estimate | None, ...]
    """From each sounder alone, doors shut."""


def verdict_over(estimate: Estimate | None, limit: Limit) -> Verdict:
    """Whether a level that is to be reached is."""
    if estimate is None or estimate.value < limit.value:
        return "bad"
    return "good" if estimate.low >= limit.value else "thin"


def answers_at_pillows(
    site: Site, catalogue: Catalogue, every: tuple[Sounding, ...], *, with_mends: bool
) -> tuple[Answer, ...]:
    """One answer for each pillow, all intruder sounders together."""
    heads = pillows(site)
    limit = limit_for(catalogue, "pillow-level", site)
    return tuple(
        _answer(site.bare, catalogue, every, heads=heads, index=index, limit=limit, with_mends=with_mends)
        for index in range(len(heads))
    )


@lru_cache(maxsize=256)
def _answer(
    site: Site,
    catalogue: Catalogue,
    every: tuple[Sounding, ...],
    *,
    heads: tuple[Pillow, ...],
    index: int,
    limit: Limit,
    with_mends: bool,
) -> Answer:
    plain = _plain(site, catalogue, every, heads=heads, index=index, limit=limit)
    if not with_mends or plain.verdict == "good":
        return plain
    mends = mends_for_pillow(site, catalogue, every, heads=heads, index=index)
    return plain.model_copy(update={"mends": mends})


@lru_cache(maxsize=256)
def _plain(
    site: Site,
    catalogue: Catalogue,
    every: tuple[Sounding, ...],
    *,
    heads: tuple[Pillow, ...],
    index: int,
    limit: Limit,
) -> Answer:
    """The answer without what would mend it: the same with and without."""
    head = heads[index]
    heard = heard_at(site, catalogue, every, heads=heads, index=index)
    is_low = any(_is_low(one) for one in every)
    return Answer(
        question=NUMBER,
        subject=head.name,
        subject_id=head.id,
        measure=MEASURE,
        estimate=heard.level,
        reason=None if heard.level is not None else "nothing of it is heard there",
        verdict=verdict_over(heard.level, limit),
        parts=_parts(every, heard),
        notes=(
            no_promise(catalogue, limit),
            *who_sleeps_on(catalogue, head.people, is_low_tone=is_low),
            *(() if head.is_drawn else ("no bed is drawn: its middle is taken",)),
        ),
        sketches=_sketches(site, catalogue, every, head=head, level=heard.level),
    )


def _is_low(one: Sounding) -> bool:
    tone = one.sheet.sounder.tone_hz if one.sheet.sounder is not None else None
    return tone is not None and tone <= LOW_TONE_HZ


def heard_at(
    site: Site, catalogue: Catalogue, every: tuple[Sounding, ...], *, heads: tuple[Pillow, ...], index: int
) -> Heard:
    """What reaches one pillow: from all sounders together with doors shut and as at night, and from each alone."""
    house = sound_house(site, catalogue)
    room = house.room(heads[index].space.id)

    def estimate(
        energy: FloatArray, states: tuple[LeafState, ...], some: tuple[Sounding, ...]
    ) -> Estimate | None:
        steps = steps_between(house, states, room=room, every=[one.room for one in some])
        return level_estimate(energy, house=house, catalogue=catalogue, steps=steps)

    closed, told = shut(site, catalogue), at_night(site, catalogue)
    here = at_pillows(site, catalogue, every, heads=heads, states=closed)[..., index]
    then = at_pillows(site, catalogue, every, heads=heads, states=told)[..., index]
    return Heard(
        estimate(here.sum(axis=1), closed, every),
        estimate(then.sum(axis=1), told, every),
        tuple(estimate(here[:, number], closed, (one,)) for number, one in enumerate(every)),
    )


def _parts(every: tuple[Sounding, ...], heard: Heard) -> tuple[PartAnswer, ...]:
    silent = "nothing of it is heard there"
    found = [PartAnswer(name=AT_NIGHT, estimate=heard.night, reason=None if heard.night else silent)]
    if len(every) > 1:
        found += [
            PartAnswer(
                name=f"from {one.device.name} alone",
                estimate=level,
                reason=None if level is not None else silent,
            )
            for one, level in zip(every, heard.alone, strict=True)
        ]
    return tuple(found)


def _sketches(
    site: Site, catalogue: Catalogue, every: tuple[Sounding, ...], *, head: Pillow, level: Estimate | None
) -> tuple[Sketch, ...]:
    rooms = figures_of_rooms(site, catalogue, every, states=shut(site, catalogue))
    others = tuple(sketch for space, sketch in rooms if space != head.space.id)
    if level is None:
        return others
    return (figure_at(head.space.storey, head.at_m, level, words="at the pillow"), *others)
