"""SND105: a sounder that is too loud for an ear that comes or lies near it."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NoneOfAKind
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.model.sound_make import stated_level
from wardwright.physics.sound.from_site import Sounding
from wardwright.physics.sound.house import OUTSIDE
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.limits import cited, limit_for, severity_of
from wardwright.rules.near_ears import near_levels
from wardwright.rules.pillows import pillows
from wardwright.rules.registry import rule
from wardwright.rules.sound_heard import FIRE_KINDS, INTRUDER_KINDS, sounders


@rule(
    code="SND105",
    name="ear-too-near-a-sounder",
    since="0.1",
    stage="trial use",
    mark="published",
    severity="check with the standard",
    sources=("nfpa-72",),
    follows="nothing",
)
def ear_too_near_a_sounder(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Sounders that bring more than 110 dBA to who stands by them, or to a bed or a cot in their room.

    What it checks
        For each device inside that sounds: the likely level for an ear 0.3 m beside it at standing height, and at
        each pillow of its room, against 110 dBA.
    Why it matters
        Such a level hurts within seconds, and a child in a cot cannot move away.
    How to put it right
        Choose one of a lower level, which the finding carries where the catalogue has one; or hang it farther off.
    What it cannot know
        Where else people stand, play and sit; who works on it while it sounds.

    Parameters
    ----------
    site : Site
        The house, its beds and its devices.
    catalogue : Catalogue
        What they put out, and the figure.

    Yields
    ------
    Finding
        One for each such device, with the level at the nearest ear [dBA].

    Raises
    ------
    NoneOfAKind
        If nothing inside that sounds states its level.
    """
    this = ear_too_near_a_sounder
    every = [one for one in sounders(site, catalogue, (*INTRUDER_KINDS, *FIRE_KINDS)) if one.room != OUTSIDE]
    if not every:
        raise NoneOfAKind("no sounder inside", kind="sounder", cure="Add the sounders that are planned")
    limit = limit_for(catalogue, "ear-level", site)
    heads = pillows(site)
    for one in every:
        name, level = max(near_levels(site.bare, catalogue, one, heads=heads), key=lambda pair: pair[1].value)
        if level.value > limit.value:
            place = one.place
            yield this.finding(
                one.device.id,
                f"{one.device.name}: {level.value:.0f} dBA for {name}, over {limit.value:g} dBA",
                cure=f"Hang it farther off, or choose a quieter one ({cited(catalogue, limit)})",
                severity=severity_of(limit),
                estimate=level,
                limit=limit.value,
                mends=_quieter(catalogue, one, over=level.value - limit.value),
                sketches=(
                    Sketch(
                        role="fault",
                        storey=place.storey,
                        points=((place.x_m, place.y_m),),
                        label=one.device.name,
                    ),
                ),
            )


def _quieter(catalogue: Catalogue, one: Sounding, *, over: float) -> tuple[Mend, ...]:
    """The loudest of its kind that is quieter by as much as it is over."""
    now = stated_level(one.sheet)
    found = []
    for row in catalogue.sheets:
        stated = stated_level(row)
        is_alike = row.kind == one.sheet.kind and not row.is_outside and row.link == one.sheet.link
        # The same tone at the same distance: so much quieter on the sheet is so much quieter at the ear.
        if is_alike and stated and now and stated[1:] == now[1:] and now[0] - stated[0] >= over:
            found.append((-stated[0], *row.cheapest_first))
    if not found:
        return ()
    return (Mend(action="replace-device", subject=one.device.id, values=(("sheet", min(found)[-1]),)),)
