"""PRG103: an entry time and an abort delay that together hold a message back for too long."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.limits import cited, limit_for, severity_of
from wardwright.rules.programme_times import SUBJECT, behaviours_used, told_time
from wardwright.rules.registry import exactly, rule, weakest


@rule(
    code="PRG103",
    name="entry-and-abort-together-too-long",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("ansi-sia-cp-01",),
)
def entry_and_abort_together_too_long(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Entry time and abort delay that together keep a message back longer than the standard allows.

    What it checks
        Where a zone both starts the entry time and has its message wait: the entry time and the abort delay together
        against 60 s, in the American rule pack. For the European one no figure is known, and the rule says so.
    Why it matters
        Both run one after the other: whoever comes by that door has all of it before anybody outside is told, and a
        control unit that is broken within it never tells.
    How to put it right
        Shorten the abort delay first, down to its own least; then the entry time. The finding carries the times.
    What it cannot know
        Whether the far end raises the alarm by itself when the entry starts and no unsetting follows. The figure was
        seen in a note only: check the standard that is claimed.

    Parameters
    ----------
    site : Site
        The house, its zones and its programme.
    catalogue : Catalogue
        The limits.

    Yields
    ------
    Finding
        One, with the two times together and their limit [s].

    Raises
    ------
    NotComputable
        If the rule pack has no figure, there is no zone, none starts the entry time, or nobody told the times.
    """
    this = entry_and_abort_together_too_long
    most = limit_for(catalogue, "entry-and-abort-most", site)
    starting = [behaviour for _, behaviour in behaviours_used(site) if behaviour.starts_entry]
    if not starting:
        raise NotComputable("no zone starts the entry time", cure="Say which door the household comes in by")
    if not any(behaviour.delays_message for behaviour in starting):
        return
    entry = told_time(site, "entry_time_s", words="entry time")
    abort = told_time(site, "abort_delay_s", words="abort delay")
    if abort == 0.0 or entry + abort <= most.value:
        return
    shortest = limit_for(catalogue, "abort-delay-least", site).value
    new_abort = max(most.value - entry, min(abort, shortest))
    new_entry = min(entry, most.value - new_abort)
    basis = weakest(*(site.programme.basis_of(name) for name in ("entry_time_s", "abort_delay_s")))
    yield this.finding(
        SUBJECT,
        f"The entry time of {entry:g} s and the abort delay of {abort:g} s together hold a message back for"
        f" {entry + abort:g} s, more than {most.value:g} s",
        cure=f"Set the entry time to {new_entry:g} s and the abort delay to {new_abort:g} s"
        f" ({cited(catalogue, most)})",
        severity=severity_of(most),
        estimate=exactly(entry + abort, "s", basis),
        limit=most.value,
        mends=(
            Mend(
                action="change-programme",
                subject=SUBJECT,
                values=(("entry_time_s", new_entry), ("abort_delay_s", new_abort)),
            ),
        ),
    )
