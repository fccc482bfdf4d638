"""PRG101: an entry time that is longer, or shorter, than the standard allows."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.limits import limit_for
from wardwright.rules.programme_times import behaviours_used, out_of_range
from wardwright.rules.registry import rule


@rule(
    code="PRG101",
    name="entry-time-outside-its-range",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("en-50131-1", "ansi-sia-cp-01"),
)
def entry_time_outside_its_range(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Entry times longer, or shorter, than the standard of the place allows.

    What it checks
        The programmed entry time against the rule pack: at most 45 s by the European standard; 30 to 240 s by the
        American one. Only where a zone starts the entry time.
    Why it matters
        Until the entry time is over nothing sounds: each second belongs to whoever forces that door. Too short a time
        has the household set it off every week, and then they leave it unset.
    How to put it right
        Set it within the range. Where the household cannot unset in that time, move the keypad nearer to the door
        or unset before coming in, by a keyfob or the lock.
    What it cannot know
        How long this household needs: that is another question. Editions differ, and both figures are kept from
        memory: check the standard that is claimed.

    Parameters
    ----------
    site : Site
        The house, its zones and its programme.
    catalogue : Catalogue
        The limits.

    Yields
    ------
    Finding
        One, with the entry time and the limit that it breaks [s].

    Raises
    ------
    NotComputable
        If there is no zone, none starts the entry time, or nobody told it.
    """
    this = entry_time_outside_its_range
    if not any(behaviour.starts_entry for _, behaviour in behaviours_used(site)):
        raise NotComputable("no zone starts the entry time", cure="Say which door the household comes in by")
    held = catalogue.limits_in("entry-time-least", site.place.rule_pack)
    yield from out_of_range(
        this,
        site,
        catalogue,
        field="entry_time_s",
        words="entry time",
        least=held[0] if held else None,
        most=limit_for(catalogue, "entry-time-most", site),
    )
