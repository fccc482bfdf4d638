"""SND104: a pillow that the intruder alarm hardly reaches with doors shut."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NoneOfAKind, NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.sound.from_site import sound_house
from wardwright.rules.finding import Finding
from wardwright.rules.limits import cited, limit_for, severity_of
from wardwright.rules.pillows import pillows
from wardwright.rules.registry import rule
from wardwright.rules.sound_heard import (
    INTRUDER_KINDS,
    at_pillows,
    level_estimate,
    shut,
    sounders,
    steps_between,
)
from wardwright.rules.sounder_mends import mends_for_pillow
from wardwright.rules.suggestion import suggestions


@rule(
    code="SND104",
    name="pillow-that-hears-too-little",
    since="0.1",
    stage="trial use",
    mark="published",
    severity="check with the standard",
    sources=("nfpa-72", "bs-5839-1"),
    follows="nothing",
)
def pillow_that_hears_too_little(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Pillows at which the intruder alarm is likely under the figure of fire practice, doors shut.

    What it checks
        For each bed, and for each bedroom without a drawn bed: the likely level of all sounders together, all doors
        shut, against 75 dBA of the rule pack.
    Why it matters
        A shut bedroom door takes about 20 dB. Who hears little sleeps on, and the rest of the household counts on
        having been woken.
    How to put it right
        Add a sounder on the landing or in the room: the finding carries where, and what it would bring. Or leave the
        door open at night.
    What it cannot know
        Whether anybody wakes: the figure is borrowed from fire practice and promises nothing; who hears badly, is a
        child, or has drunk; how tight the doors really shut.

    Parameters
    ----------
    site : Site
        The house, its beds and its sounders.
    catalogue : Catalogue
        What sounders put out, what walls and doors keep back, the figure.

    Yields
    ------
    Finding
        One for each such pillow, with its level [dBA]: to be checked where the pack's figure is disputed.

    Raises
    ------
    NotComputable
        If nobody is told to sleep anywhere.
    NoneOfAKind
        If nothing that sounds states its level.
    """
    this = pillow_that_hears_too_little
    every = sounders(site, catalogue, INTRUDER_KINDS)
    if not every:
        raise NoneOfAKind("no sounder", kind="sounder", cure="Add the sounders that are planned")
    heads = pillows(site)
    if not heads:
        raise NotComputable("no bed and no bedroom", cure="Draw the beds, or tell who sleeps where")
    limit = limit_for(catalogue, "pillow-level", site)
    house, states = sound_house(site, catalogue), shut(site, catalogue)
    energy = at_pillows(site.bare, catalogue, every, heads=heads, states=states).sum(axis=1)
    for index, head in enumerate(heads):
        room = house.room(head.space.id)
        steps = steps_between(house, states, room=room, every=[one.room for one in every])
        level = level_estimate(energy[:, index], house=house, catalogue=catalogue, steps=steps)
        if level is not None and level.value >= limit.value:
            continue
        # A door left open helps with doors as they stand only: question 13 tells it.
        mends = tuple(
            mend
            for mend in mends_for_pillow(site.bare, catalogue, every, heads=heads, index=index)
            if mend.action == "add-device" and mend.gain is not None and mend.gain.value >= limit.value
        )
        new = suggestions(site, tuple(mend.model_copy(update={"action": "move-device"}) for mend in mends))
        yield this.finding(
            head.id,
            f"{head.name}: with doors shut the intruder alarm "
            + ("is not heard" if level is None else f"likely brings {level.value:.0f} dBA")
            + f", under {limit.value:g} dBA",
            cure="Add a sounder or leave the door open at night"
            f" ({cited(catalogue, limit)}; borrowed from fire practice, no promise of waking)",
            severity=severity_of(limit),
            estimate=level,
            limit=limit.value,
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=head.space.storey, points=(head.at_m,), label=head.name),
                *new,
            ),
        )
