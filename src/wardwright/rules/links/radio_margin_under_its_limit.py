"""LNK104: a radio device that is likely to be heard too weakly."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.limits import limit_for, severity_of
from wardwright.rules.radio_hops import linked_devices
from wardwright.rules.radio_links import MARGIN_LIMIT, links_of
from wardwright.rules.radio_mends import link_mends
from wardwright.rules.radio_sketches import costly_on, radio_sketches
from wardwright.rules.registry import rule
from wardwright.rules.thing_words import thing_words


@rule(
    code="LNK104",
    name="radio-margin-under-its-limit",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
    follows="devices",
)
def radio_margin_under_its_limit(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Radio devices whose likely margin is under 10 dB with all doors shut.

    What it checks
        For each radio device the best way to what hears it, straight or by a repeater: what its radio sends, less
        distance, walls, floors, shut doors and things of metal, against what the receiver needs or the noise there. A
        keyfob is checked before each entry door and at the boundary. The weaker way counts where both talk.
    Why it matters
        A link without margin works on the day of fitting and is lost with a cold cell, a wet wall or a person before
        the device: check-ins are missed, cells die early, an alarm comes late or not at all.
    How to put it right
        Hang the device or the control unit elsewhere, put a repeater at the place given, or use a device that sends
        more. Read the level on site with all doors shut, and tell it: the model learns from it.
    What it cannot know
        Reflections, foil that is not drawn, what else sends nearby, and what is behind plaster. Losses below 1 GHz
        are judged, since most published tables begin there: 8 dB either way are usual without readings.

    Parameters
    ----------
    site : Site
        The house, its devices and readings.
    catalogue : Catalogue
        The devices' sheets, materials and losses.

    Yields
    ------
    Finding
        One for each device under the limit, with its margin and range [dB]. One of severity `not run` for each that
        cannot be worked out, with the reason.

    Raises
    ------
    NotComputable
        If there is no radio device.
    """
    this = radio_margin_under_its_limit
    limit = limit_for(catalogue, MARGIN_LIMIT, site)
    found = linked_devices(site, catalogue)
    if not found:
        raise NotComputable("no radio device", cure="Add the devices that are planned")
    for device, _ in found:
        try:
            worst = links_of(site, catalogue, device)[0]
        except NotComputable as reason:
            yield this.not_run(device.id, f"{device.name}: {reason}", cure=reason.cure)
            continue
        if worst.margin.value >= limit.value:
            continue
        costly = [thing_words(site, met) for met in costly_on(worst.weakest)[:1]]
        through = f", mostly for {costly[0]}" if costly else ""
        yield this.finding(
            device.id,
            f"{device.name}: it is likely to be heard too weakly by {worst.weakest.hop.receiver.name}{through}",
            cure="Hang it or the control unit elsewhere, or add a repeater",
            severity=severity_of(limit),
            estimate=worst.margin,
            limit=limit.value,
            mends=link_mends(site, catalogue, device, link=worst, short_db=limit.value - worst.margin.value),
            sketches=radio_sketches(site, worst),
            related=tuple(
                hop.hop.receiver.ident for hop in worst.hops if hop.hop.receiver.ident in _ids(site)
            ),
        )


def _ids(site: Site) -> frozenset[str]:
    return frozenset(one.id for one in site.devices)
