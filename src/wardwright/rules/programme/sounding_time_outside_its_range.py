"""PRG105: sounders that go on longer, or stop sooner, than the standard or the country allows."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.programme_times import out_of_range, told_time
from wardwright.rules.registry import rule


@rule(
    code="PRG105",
    name="sounding-time-outside-its-range",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("en-50131-1", "belgium-2007", "vde-0833-3", "uk-noise-1982", "nsw-noise-2017"),
)
def sounding_time_outside_its_range(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Sounders that go on longer, or stop sooner, than the standard or the country allows.

    What it checks
        The programmed sounding time against 90 to 900 s by the European standard and against what the country of
        the site allows outside, where that is known. Of several upper limits the smallest counts.
    Why it matters
        A sounder that goes on has neighbours complain and, in some places, lets the authorities come in and silence
        it. One that stops within a minute may not be heard at all.
    How to put it right
        Set the sounding time within the range; the finding carries the nearest time that is.
    What it cannot know
        Town and landlord rules; limits of countries that the program has no row for; how long a tampered sounder may
        go on. Most figures are kept from memory or restated: check them.

    Parameters
    ----------
    site : Site
        The house, its country and its programme.
    catalogue : Catalogue
        The limits.

    Yields
    ------
    Finding
        One, with the sounding time and the limit that it breaks [s]; one of severity `not run` where nobody told
        the country.

    Raises
    ------
    NotComputable
        If neither the rule pack nor the country has a figure, or nobody told the sounding time.
    """
    this = sounding_time_outside_its_range
    place = site.place
    least = catalogue.limits_in("sounding-time-least", place.rule_pack, place.country)
    most = catalogue.limits_in("sounding-time-most", place.rule_pack, place.country)
    told_time(site, "sounding_time_s", words="sounding time")
    if place.country is None:
        yield this.not_run(
            site.name,
            "The country is not told: it may have a limit of its own for sounders outside",
            cure="Tell the country that the house stands in",
            mends=(Mend(action="tell", subject=site.name, values=(("field", "country"),)),),
        )
    if not least and not most:
        raise NotComputable(
            f"no figure for sounding times is known in the rule pack {place.rule_pack}"
            + (f" or in {place.country}" if place.country else ""),
            cure="Ask the town how long a sounder may go on",
        )
    yield from out_of_range(
        this,
        site,
        catalogue,
        field="sounding_time_s",
        words="sounding time",
        least=max(least, key=lambda row: row.value, default=None),
        most=min(most, key=lambda row: row.value, default=None),
    )
