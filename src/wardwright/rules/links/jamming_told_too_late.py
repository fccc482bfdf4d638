"""LNK106: a control unit that tells of jamming later than the standard asks."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.kit import some_of
from wardwright.rules.limits import cited, limit_for, severity_of
from wardwright.rules.registry import exactly, rule
from wardwright.rules.replacement import replaced


@rule(
    code="LNK106",
    name="jamming-told-too-late",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("en-50131-5-3",),
    follows="devices",
)
def jamming_told_too_late(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Control units that tell of jamming later than the standard asks.

    What it checks
        How long another sender may drown the devices before the control unit tells, by its sheet, against 30 s added
        up within any 60 s, from memory of EN 50131-5-3; by American practice 20 s without a break.
    Why it matters
        Whoever jams the radio walks in unheard. Only the control unit can notice, and only if it listens for it.
    How to put it right
        Turn the supervision of jamming on, or use a control unit that tells in time. Where jamming is feared, wire
        the devices that matter most.
    What it cannot know
        Whether the supervision is turned on, and how a clever sender stays below its threshold.

    Parameters
    ----------
    site : Site
        The control units, and the place whose rules apply.
    catalogue : Catalogue
        Their sheets, and the time.

    Yields
    ------
    Finding
        One for each such control unit, with its time [s]; one of severity `not run` for each whose sheet is silent.

    Raises
    ------
    NoneOfAKind
        If there is no control unit.
    NotComputable
        If the rule pack has no such time.
    """
    this = jamming_told_too_late
    limit = limit_for(catalogue, "jamming-told-after", site)
    for device, sheet in some_of(site, catalogue, "control-unit"):
        if sheet.link != "radio":
            continue
        told = None if sheet.radio is None else sheet.radio.jamming_told_s
        if told is None:
            yield this.not_run(
                device.id,
                f"{device.name}: its sheet does not say when it tells of jamming",
                cure="Add jamming_told_s to its [sheet.radio]",
            )
        elif told > limit.value:
            yield this.finding(
                device.id,
                f"{device.name}: it tells of jamming later than asked ({cited(catalogue, limit)})",
                cure="Use a control unit that tells in time",
                severity=severity_of(limit),
                estimate=exactly(told, "s", "told"),
                limit=limit.value,
                mends=replaced(
                    catalogue,
                    device,
                    fits=lambda other: (
                        other.radio is not None
                        and other.radio.jamming_told_s is not None
                        and other.radio.jamming_told_s <= limit.value
                    ),
                ),
            )
