"""The papers of an open job, written when somebody wants one: a class of copy at a time, and only of that class."""

from __future__ import annotations

from datetime import date
from functools import lru_cache

from wardwright.costing.quote import Quote
from wardwright.documents.content.page import page_of
from wardwright.documents.content.paper import CopyClass
from wardwright.documents.papers import (
    client_papers,
    fitter_papers,
    open_papers,
    quote_offered,
    quote_with_costs,
)
from wardwright.documents.press import Press, usual_size
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.compared import State
from wardwright.questions.worth_adding import worth_adding
from wardwright.server.desk import Desk
from wardwright.server.quoting import NOTHING, Offer
from wardwright.server.site_results import written_down
from wardwright.store.clock import today
from wardwright.store.fonts import font_folder
from wardwright.trials.campaign.results import CampaignReport
from wardwright.works.site_result import SiteResult

HELD = 6
"""Classes of copy that are held ready: two jobs' worth. [-]"""


def written(desk: Desk, copy: CopyClass, *, offer: Offer = NOTHING) -> dict[str, bytes]:
    """The papers of one class of copy of a job as it is now.

    Parameters
    ----------
    desk : Desk
        The open job.
    copy : str
        The class.
    offer : Offer, optional
        What the firm offers.

    Returns
    -------
    dict of bytes
        By name.
    """
    if copy == "open":
        return _open(desk.job.site(), desk.catalogue, today())
    state, day = desk.state(), today()
    sent_in = campaign_of(desk) if copy == "fitter" else None
    # A logo makes no other paper than a client's, so only these are written again for it.
    press = _press(state.site)._replace(logo=offer.logo if copy == "client" else None)
    # Nor does what was written down on site go anywhere but to the fitter's own.
    results = written_down(desk) if copy == "fitter" else ()
    found = _answered(state, desk.catalogue, copy, day=day, press=press, sent_in=sent_in, results=results)
    if offer.quote is None:
        return found
    return {**found, **_quoted(state, desk.catalogue, offer.quote, copy=copy, day=day, press=press)}


def campaign_of(desk: Desk) -> CampaignReport | None:
    """The last campaign, if it was sent into the house as it is now."""
    if desk.sent_in is None or desk.sent_in[0] != desk.job.newest:
        return None
    return desk.sent_in[1]


@lru_cache(maxsize=HELD)
def _open(site: Site, catalogue: Catalogue, day: date) -> dict[str, bytes]:
    return open_papers(site, catalogue, drawn_up=day, press=_press(site))


@lru_cache(maxsize=HELD)
def _answered(
    state: State,
    catalogue: Catalogue,
    copy: CopyClass,
    *,
    day: date,
    press: Press,
    sent_in: CampaignReport | None,
    results: tuple[SiteResult, ...],
) -> dict[str, bytes]:
    if copy == "client":
        return client_papers(state.site, catalogue, state.answers, drawn_up=day, press=press)
    page = page_of(
        state.site,
        catalogue,
        state.answers,
        state.findings,
        worth_adding=worth_adding(state.site, catalogue),
        campaign=sent_in,
    )
    return fitter_papers(
        state.site,
        catalogue,
        page=page,
        answers=state.answers,
        drawn_up=day,
        press=press,
        campaign=sent_in,
        results=results,
    )


@lru_cache(maxsize=HELD)
def _quoted(
    state: State, catalogue: Catalogue, quote: Quote, *, copy: CopyClass, day: date, press: Press
) -> dict[str, bytes]:
    if copy == "client":
        return quote_offered(quote, state.site, catalogue, drawn_up=day, press=press)
    return quote_with_costs(quote, drawn_up=day, press=press)


def _press(site: Site) -> Press:
    return Press(font_folder(), usual_size(site.place))
