"""What standards and public guidance ask where a site stands, and how sure one may be of it."""

from __future__ import annotations

from functools import lru_cache

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.limits import Limit
from wardwright.model.site import Site
from wardwright.rules.finding import Severity

SURENESS = {
    "from memory": ", kept from memory",
    "published": ", as restated in public",
    "common practice": "common practice, no published source",
}
"""What is said after a source, by the mark of the row."""


def limit_for(catalogue: Catalogue, limit_id: str, site: Site) -> Limit:
    """The limit that a site's rule pack has; NotComputable, in words that many rules share, if it has none."""
    found = _of_a_pack(catalogue, limit_id, site.place.rule_pack)
    if found is None:
        raise NotComputable(
            f"no figure for it is known in the rule pack {site.place.rule_pack}",
            cure="Ask whether a standard that binds here has one",
        )
    return found


def limit_by_grade(catalogue: Catalogue, limit_id: str, site: Site, *, what: str) -> Limit:
    """The limit for the grade that is aimed at; NotComputable, naming what is asked, if the pack has none."""
    limits = catalogue.limits_in(limit_id, site.place.rule_pack)
    if not limits:
        raise NotComputable(
            f"these rules know no {what} by grade", cure="Drop the need, or choose other rules"
        )
    return limits[0]


@lru_cache(maxsize=256)
def _of_a_pack(catalogue: Catalogue, limit_id: str, pack: str) -> Limit | None:
    return next((row for row in catalogue.limits_in(limit_id, pack) if row.country is None), None)


def severity_of(*limits: Limit) -> Severity:
    """How a finding that rests on these is to be taken: never more than advice."""
    return "check with the standard" if any(row.is_to_be_checked for row in limits) else "advise"


def cited(catalogue: Catalogue, limit: Limit) -> str:
    """Where a limit is from and how sure it is, to stand in brackets.

    Parameters
    ----------
    catalogue : Catalogue
        For the titles of its sources.
    limit : Limit
        The row.

    Returns
    -------
    str
        Such as ``EN 50131-1 2006, kept from memory; the American standard allows 240 s``.
    """
    titles = {source.id: source.title.partition(",")[0] for source in catalogue.sources}
    known = SURENESS.get(limit.mark, "")
    if limit.source == "own":
        words = known.removeprefix(", ")
    else:
        words = f"{titles.get(limit.source, limit.source)} {limit.edition}".strip() + known
    return f"{words}; {limit.note}" if limit.note and limit.is_disputed else words
