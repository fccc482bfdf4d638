"""PRG102: an exit time that is longer, or shorter, than the standard allows."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.limits import limit_for
from wardwright.rules.programme_times import out_of_range
from wardwright.rules.registry import rule


@rule(
    code="PRG102",
    name="exit-time-outside-its-range",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("ansi-sia-cp-01",),
)
def exit_time_outside_its_range(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Exit times longer, or shorter, than the standard of the place allows.

    What it checks
        The programmed exit time against the American range of 45 to 255 s. For the European rule pack no figure is
        known, and the rule says so instead of passing.
    Why it matters
        Who is still inside when it ends sets the alarm off on the way out: a common false alarm. Very long times
        leave the house unset behind whoever has gone.
    How to put it right
        Set it within the range, and long enough for the slowest who leaves last with both hands full.
    What it cannot know
        How long this household needs to leave; setting by the last door or by a button outside, which needs no time.
        The figures are kept from memory: check the standard that is claimed.

    Parameters
    ----------
    site : Site
        The house and its programme.
    catalogue : Catalogue
        The limits.

    Yields
    ------
    Finding
        One, with the exit time and the limit that it breaks [s].

    Raises
    ------
    NotComputable
        If the rule pack has no figure, or nobody told the exit time.
    """
    this = exit_time_outside_its_range
    yield from out_of_range(
        this,
        site,
        catalogue,
        field="exit_time_s",
        words="exit time",
        least=limit_for(catalogue, "exit-time-least", site),
        most=limit_for(catalogue, "exit-time-most", site),
    )
