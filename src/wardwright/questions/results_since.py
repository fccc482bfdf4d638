"""What was fitted or tested by an earlier state of a house, and does not hold for it as it is."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.between_states import became, both_states
from wardwright.questions.compared import State
from wardwright.questions.table import ask
from wardwright.questions.tests_due import ASKED, tests_due
from wardwright.rules.pillows import pillows
from wardwright.works.site_result import SiteResult

GONE = "it is not there any more"


def as_they_hold(
    results: Iterable[SiteResult], now: Site, catalogue: Catalogue, *, sites: Mapping[int, Site]
) -> tuple[SiteResult, ...]:
    """Hold what was written down on site against a house as it is.

    Parameters
    ----------
    results : iterable of SiteResult
        What was written down.
    now : Site
        The house as it is.
    catalogue : Catalogue
        Both states are answered from the same rows.
    sites : mapping of Site
        The house as it was, by revision.

    Returns
    -------
    tuple of SiteResult
        What does not hold says what is another since: of a device that it was moved, of a test that it is due again.
    """
    return tuple(_held(one, sites[one.revision], now, catalogue=catalogue) for one in results)


def _held(one: SiteResult, then: Site, now: Site, *, catalogue: Catalogue) -> SiteResult:
    if then == now:
        return one
    kind, about = ("", one.key) if one.step == "fit" else one.key.split("/")[:2]
    if about not in _there(now):
        return one.model_copy(update={"earlier": GONE})
    if one.step == "fit":
        return one.model_copy(update={"earlier": _others(then, now).get(about, "")})
    return one.model_copy(update={"earlier": _due(then, now, catalogue).get((kind, about), "")})


def _there(site: Site) -> frozenset[str]:
    """Ids of all that may be fitted or tested."""
    heads = (head.id for head in pillows(site))
    rows = (site.devices, site.openings, site.people, site.pets)
    return frozenset((*(row.id for some in rows for row in some), *heads))


@lru_cache(maxsize=16)
def _others(before: Site, after: Site) -> dict[str, str]:
    both = both_states(State(before, (), ()), State(after, (), ()))
    told = {device.id: became(both, device.id) for device in after.devices}
    return {device: why for device, why in told.items() if why}


@lru_cache(maxsize=16)
def _due(before: Site, after: Site, catalogue: Catalogue) -> dict[tuple[str, str], str]:
    old, new = (State(one, ask(one, catalogue, ASKED), ()) for one in (before, after))
    return {(test.kind, test.about): test.why for test in tests_due(old, new, catalogue)}
