"""PRG109: an abort delay that is longer, or shorter, than the standard allows."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.limits import limit_for
from wardwright.rules.programme_times import out_of_range, told_time
from wardwright.rules.registry import rule


@rule(
    code="PRG109",
    name="abort-delay-outside-its-range",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("ansi-sia-cp-01",),
)
def abort_delay_outside_its_range(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Abort delays longer, or shorter, than the standard of the place allows.

    What it checks
        The programmed abort delay, where there is one, against the American range of 15 to 45 s. For the European
        rule pack no figure is known, and the rule says so.
    Why it matters
        Too short and nobody can call off a false alarm before it is sent; too long and an intruder has that time to
        break the control unit before any message leaves.
    How to put it right
        Set it within the range, or to 0 s where messages are to leave at once.
    What it cannot know
        Whether the receiving end waits as well. The figures are kept from memory: check the standard that is claimed.

    Parameters
    ----------
    site : Site
        The house and its programme.
    catalogue : Catalogue
        The limits.

    Yields
    ------
    Finding
        One, with the abort delay and the limit that it breaks [s]. No delay at all is no fault.

    Raises
    ------
    NotComputable
        If the rule pack has no figure, or nobody told the abort delay.
    """
    this = abort_delay_outside_its_range
    least = limit_for(catalogue, "abort-delay-least", site)
    most = limit_for(catalogue, "abort-delay-most", site)
    if told_time(site, "abort_delay_s", words="abort delay") > 0.0:
        yield from out_of_range(
            this, site, catalogue, field="abort_delay_s", words="abort delay", least=least, most=most
        )
