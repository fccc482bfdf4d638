"""LNK105: metal or coated glass in the way of a radio link that can ill afford it."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.limits import limit_for, severity_of
from wardwright.rules.radio_hops import linked_devices
from wardwright.rules.radio_links import MARGIN_LIMIT, Link, links_of
from wardwright.rules.radio_mends import link_mends
from wardwright.rules.radio_sketches import radio_sketches
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.thing_words import thing_words

OF_METAL = ("metal", "coated", "metal-thing", "garage-leaf")
"""Classes of wall losses that are of metal, or of a film of it."""
MUCH_DB = 6.0
"""What takes as much is worth going round: half the field. [dB] (derived here: 20 log10 2)"""


@rule(
    code="LNK105",
    name="metal-or-coated-glass-in-the-way",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
    follows="devices",
)
def metal_or_coated_glass_in_the_way(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Radio links without margin to spare that go through metal or coated glass.

    What it checks
        For each radio device whose margin may fall under 10 dB, doors shut: whether its straight path goes through
        sheet metal, foil, coated glass, a garage door, a boiler, a radiator or another large thing of metal, which
        takes 6 dB or more.
    Why it matters
        Metal lets nothing through, so that what arrives has gone round it, and changes with every door and person. A
        coated pane takes as much as three brick walls.
    How to put it right
        Hang the device where it looks past it, move the thing, or put a repeater on the other side.
    What it cannot know
        Mirrors, tiled stoves, foil behind plaster and what stands in cupboards, unless they are drawn.

    Parameters
    ----------
    site : Site
        The house, its devices and readings.
    catalogue : Catalogue
        The devices' sheets, materials and losses.

    Yields
    ------
    Finding
        One for each such link, with what the metal takes [dB].

    Raises
    ------
    NotComputable
        If there is no radio device, or no link can be worked out.
    """
    this = metal_or_coated_glass_in_the_way
    limit = limit_for(catalogue, MARGIN_LIMIT, site)
    reasons, done = [], 0
    for device, _ in linked_devices(site, catalogue):
        try:
            worst = links_of(site, catalogue, device)[0]
        except NotComputable as reason:
            reasons.append(reason)
            continue
        done += 1
        taken = _metal_db(worst)
        if worst.margin.low >= limit.value or taken < MUCH_DB:
            continue
        met = next(met for met in worst.weakest.path.met if met.thing.wall_class in OF_METAL)
        yield this.finding(
            device.id,
            f"{device.name}: its path to {worst.weakest.hop.receiver.name} goes through metal or coated glass: "
            f"{thing_words(site, met)}",
            cure="Hang it where it looks past that, or add a repeater",
            severity=severity_of(limit),
            estimate=exactly(taken, "dB", weakest(device.basis_of("mount"), "default")),
            limit=MUCH_DB,
            mends=link_mends(site, catalogue, device, link=worst, short_db=limit.value - worst.margin.low),
            sketches=radio_sketches(site, worst),
        )
    if not done:
        first = (
            reasons[0]
            if reasons
            else NotComputable("no radio device", cure="Add the devices that are planned")
        )
        raise NotComputable(str(first), cure=first.cure)


def _metal_db(link: Link) -> float:
    return sum(met.loss_db for met in link.weakest.path.met if met.thing.wall_class in OF_METAL)
