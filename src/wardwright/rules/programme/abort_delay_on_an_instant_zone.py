"""PRG104: an instant zone whose message waits for the abort delay."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import is_instant
from wardwright.rules.programme_times import behaviours_used, told_time
from wardwright.rules.registry import exactly, rule


@rule(
    code="PRG104",
    name="abort-delay-on-an-instant-zone",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def abort_delay_on_an_instant_zone(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Zones that alarm at once, though their message waits for the abort delay.

    What it checks
        Each zone whose behaviour alarms of an intruder at once: whether that behaviour has its message wait, while
        the programme has an abort delay.
    Why it matters
        The abort delay is for the household that comes in and is slow. Nobody comes in by an instant zone but an
        intruder: the delay only gives them time to find the control unit and break it before any message leaves.
    How to put it right
        Give the zone an instant behaviour without the wait; leave the wait to the entry doors.
    What it cannot know
        How often this household sets the zone off itself, through a window left open or a pet, and what a false
        call costs here.

    Parameters
    ----------
    site : Site
        The house, its zones and its programme.
    catalogue : Catalogue
        Not used.

    Yields
    ------
    Finding
        One for each such zone, with the abort delay [s]; its limit is none.

    Raises
    ------
    NotComputable
        If there is no zone, none alarms of an intruder at once, or one of them waits and nobody told how long.
    """
    del catalogue
    this = abort_delay_on_an_instant_zone
    instant = [(zone, behaviour) for zone, behaviour in behaviours_used(site) if is_instant(behaviour)]
    if not instant:
        raise NotComputable("no zone alarms of an intruder at once", cure="Add the zones that are planned")
    waiting = [(zone, behaviour) for zone, behaviour in instant if behaviour.delays_message]
    delay = told_time(site, "abort_delay_s", words="abort delay") if waiting else 0.0
    for zone, behaviour in waiting if delay > 0.0 else ():
        better = sorted(
            (other.id != "instant", other.id)
            for other in site.behaviours
            if is_instant(other)
            and not other.delays_message
            and other.is_always_active == behaviour.is_always_active
        )
        mends = tuple(
            Mend(action="change-behaviour", subject=zone.id, values=(("behaviour", name),))
            for _, name in better[:1]
        )
        yield this.finding(
            zone.id,
            f"{zone.name}: it alarms at once, but its message waits {delay:g} s for the abort delay",
            cure="Give the zone a behaviour that alarms at once and tells at once"
            if mends
            else f"Take the wait for the abort delay out of the behaviour {behaviour.name}",
            estimate=exactly(delay, "s", site.programme.basis_of("abort_delay_s")),
            limit=0.0,
            mends=mends,
            related=zone.devices,
        )
