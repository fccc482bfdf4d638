"""Question 13, smoke, heat and CO alarms: what each brings to the pillow that hears least of it."""

from __future__ import annotations

from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.limits import Limit
from wardwright.model.site import Site
from wardwright.physics.sound.from_site import Sounding, sound_house
from wardwright.questions.answer import Answer, PartAnswer
from wardwright.questions.heard_at_pillows import NUMBER, verdict_over
from wardwright.questions.level_sketches import figure_at
from wardwright.questions.waking_notes import no_promise, who_sleeps_on
from wardwright.rules.finding import Mend
from wardwright.rules.limits import limit_for
from wardwright.rules.pillows import Pillow, pillows
from wardwright.rules.sound_heard import at_pillows, level_estimate, shut, steps_between
from wardwright.rules.sounder_mends import doors_left_open

MEASURE = "level at the pillow that hears least of it, doors shut"
DEFERS = "the local code and licensed practice say where fire and CO alarms go: this is no fire design"


def answers_of_fire_alarms(
    site: Site, catalogue: Catalogue, every: tuple[Sounding, ...], *, with_mends: bool
) -> tuple[Answer, ...]:
    """One answer for each alarm: alone, or with all that are linked to it."""
    heads = pillows(site)
    limit = limit_for(catalogue, "pillow-level", site)
    if not heads:
        return ()
    return tuple(
        _answer(site.bare, catalogue, every, one=one, heads=heads, limit=limit, with_mends=with_mends)
        for one in every
    )


def together(every: tuple[Sounding, ...], one: Sounding) -> tuple[Sounding, ...]:
    """All that sound when one alarm does: itself, and all linked ones where it is linked."""
    if not _is_linked(one):
        return (one,)
    return tuple(other for other in every if _is_linked(other))


def _is_linked(one: Sounding) -> bool:
    return one.sheet.fire is not None and one.sheet.fire.is_linked


def levels_of(
    site: Site, catalogue: Catalogue, some: tuple[Sounding, ...], *, heads: tuple[Pillow, ...]
) -> tuple[Estimate | None, ...]:
    """The level at each pillow when some alarms sound, doors shut."""
    house, states = sound_house(site, catalogue), shut(site, catalogue)
    energy = at_pillows(site, catalogue, some, heads=heads, states=states).sum(axis=1)
    found = []
    for index, head in enumerate(heads):
        room = house.room(head.space.id)
        steps = steps_between(house, states, room=room, every=[one.room for one in some])
        found.append(level_estimate(energy[:, index], house=house, catalogue=catalogue, steps=steps))
    return tuple(found)


@lru_cache(maxsize=256)
def _answer(
    site: Site,
    catalogue: Catalogue,
    every: tuple[Sounding, ...],
    *,
    one: Sounding,
    heads: tuple[Pillow, ...],
    limit: Limit,
    with_mends: bool,
) -> Answer:
    some = together(every, one)
    levels = levels_of(site, catalogue, some, heads=heads)
    worst = min(range(len(heads)), key=lambda i: (-1.0 if levels[i] is None else levels[i].value, i))  # type: ignore[union-attr]
    level = levels[worst]
    verdict = verdict_over(level, limit)
    mends: tuple[Mend, ...] = ()
    if with_mends and verdict != "good":
        mends = _mends(site, catalogue, every, one=one, heads=heads, worst=worst)
    sleepers = [person for head in heads for person in head.people]
    return Answer(
        question=NUMBER,
        subject=one.device.name,
        subject_id=one.device.id,
        measure=MEASURE,
        estimate=level,
        reason=None if level is not None else f"nothing of it is heard at the {heads[worst].name}",
        verdict=verdict,
        parts=tuple(
            PartAnswer(
                name=f"at the {head.name}" if head.name.startswith("pillow") else f"at {head.name}",
                estimate=found,
                reason=None if found is not None else "nothing of it is heard there",
            )
            for head, found in zip(heads, levels, strict=True)
        ),
        notes=(
            f"the {heads[worst].name} hears least of it",
            _linked_words(some, one),
            no_promise(catalogue, limit),
            *who_sleeps_on(catalogue, sleepers),
            DEFERS,
        ),
        mends=mends,
        sketches=tuple(
            figure_at(head.space.storey, head.at_m, found)
            for head, found in zip(heads, levels, strict=True)
            if found is not None
        ),
    )


def _linked_words(some: tuple[Sounding, ...], one: Sounding) -> str:
    if not _is_linked(one):
        return "it sounds alone: nothing links it to others"
    if len(some) == 1:
        return "it could sound with others, and there is none that is linked"
    return f"{len(some)} linked alarms sound together"


def _mends(
    site: Site,
    catalogue: Catalogue,
    every: tuple[Sounding, ...],
    *,
    one: Sounding,
    heads: tuple[Pillow, ...],
    worst: int,
) -> tuple[Mend, ...]:
    """Linking it to the others, and leaving a door open."""
    found = []
    rows = [row for row in catalogue.sheets if row.kind == one.sheet.kind and row.fire and row.fire.is_linked]
    if not _is_linked(one) and rows:
        row = min(rows, key=lambda sheet: sheet.cheapest_first)
        linked = one._replace(sheet=row)
        all_linked = tuple(linked if other is one else other for other in every)
        then = levels_of(site, catalogue, together(all_linked, linked), heads=heads)[worst]
        before = levels_of(site, catalogue, (one,), heads=heads)[worst]
        if then is not None and (before is None or then.value > before.value + 1.0):
            found.append(
                Mend(action="replace-device", subject=one.device.id, values=(("sheet", row.id),), gain=then)
            )
    return (*found, *doors_left_open(site, catalogue, together(every, one), heads=heads, index=worst))
