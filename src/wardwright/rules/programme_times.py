"""Times of the programme against what standards ask of them."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.limits import Limit
from wardwright.model.programme import Behaviour, Zone
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.limits import cited, severity_of
from wardwright.rules.registry import Rule, exactly

SUBJECT = "programme"
"""What findings about the programme as a whole are about."""


def told_time(site: Site, field: str, *, words: str) -> float:
    """A time of the programme that somebody decided [s]; NotComputable where nobody did."""
    if site.programme.basis_of(field) == "default":
        raise NotComputable(f"nobody told the {words}", cure=f"Tell the {words} that is to be programmed")
    value: float = getattr(site.programme, field)
    return value


def behaviours_used(site: Site) -> tuple[tuple[Zone, Behaviour], ...]:
    """Each zone with its behaviour, in the order of their numbers; NotComputable if there is no zone."""
    if not site.zones:
        raise NotComputable("no zone is programmed", cure="Add the zones that are planned")
    zones = sorted(site.zones, key=lambda zone: (zone.number, zone.id))
    return tuple((zone, site.behaviour(zone.behaviour)) for zone in zones)


def out_of_range(
    rule: Rule,
    site: Site,
    catalogue: Catalogue,
    *,
    field: str,
    words: str,
    least: Limit | None = None,
    most: Limit | None = None,
) -> Iterator[Finding]:
    """The finding about one time that is under its least or over its most, with the nearest time that is in range."""
    value = told_time(site, field, words=words)
    broken, how = None, ""
    if least is not None and value < least.value:
        broken, how = least, "shorter"
    elif most is not None and value > most.value:
        broken, how = most, "longer"
    if broken is None:
        return
    yield rule.finding(
        SUBJECT,
        f"The {words}, {value:g} s, is {how} than the limit of {broken.value:g} s",
        cure=f"Set it to {broken.value:g} s or {'more' if how == 'shorter' else 'less'}"
        f" ({cited(catalogue, broken)})",
        severity=severity_of(broken),
        estimate=exactly(value, "s", site.programme.basis_of(field)),
        limit=broken.value,
        mends=(Mend(action="change-programme", subject=SUBJECT, values=((field, broken.value),)),),
    )
