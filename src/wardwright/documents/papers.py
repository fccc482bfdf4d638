"""All papers of a site, by the folder of their class of copy: the bytes of each."""

from __future__ import annotations

from datetime import date

from wardwright.costing.quote import Quote
from wardwright.documents.content.as_fitted import as_fitted, as_fitted_table
from wardwright.documents.content.campaign_paper import campaign_paper
from wardwright.documents.content.copies import COPIES
from wardwright.documents.content.discretion import discreet
from wardwright.documents.content.forms.aftercare import aftercare
from wardwright.documents.content.forms.as_built import as_built
from wardwright.documents.content.forms.contract import contract
from wardwright.documents.content.forms.dates import battery_table, dates_paper, events_of
from wardwright.documents.content.forms.guide import guide
from wardwright.documents.content.forms.handover import handover
from wardwright.documents.content.forms.job_pack import job_pack, pick_list
from wardwright.documents.content.forms.label_sheet import label_sheet
from wardwright.documents.content.forms.leaving import leaving
from wardwright.documents.content.forms.logbook import logbook
from wardwright.documents.content.forms.proposal import proposal
from wardwright.documents.content.forms.quote_paper import quote_office, quote_paper
from wardwright.documents.content.forms.readings import readings
from wardwright.documents.content.forms.risk import risk
from wardwright.documents.content.forms.survey import survey
from wardwright.documents.content.label_list import label_table
from wardwright.documents.content.page import Page
from wardwright.documents.content.plan_sheets import plan_sheets
from wardwright.documents.content.plans import whole_plans
from wardwright.documents.content.programming import programming_sheet
from wardwright.documents.content.schedule import device_table, schedule, zone_table
from wardwright.documents.paper_list import CAMPAIGN, PAGE, QUOTES
from wardwright.documents.press import Press
from wardwright.documents.writers.csv_rows import write_csv
from wardwright.documents.writers.html import write_html
from wardwright.documents.writers.ics import write_ics
from wardwright.documents.writers.paper_html import write_paper_html
from wardwright.documents.writers.svg import write_svg
from wardwright.documents.writers.xlsx import write_xlsx
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.trials.campaign.results import CampaignReport
from wardwright.works.site_result import SiteResult


def papers_of(
    site: Site,
    catalogue: Catalogue,
    *,
    page: Page,
    answers: tuple[Answer, ...],
    drawn_up: date,
    press: Press,
    campaign: CampaignReport | None = None,
    quote: Quote | None = None,
) -> dict[str, bytes]:
    """Write all papers of a site.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    page : Page
        The fitter's page, drawn.
    answers : tuple of Answer
        What the page was made from; the client's copy tells their mends in words.
    drawn_up : date
        The day that stands on the papers.
    press : Press
        Letters and size of PDF files.
    campaign : CampaignReport, optional
        What seeded intruders did, where they were sent: for the fitter's copy alone.
    quote : Quote, optional
        What a firm offers: with its costs for the fitter, without for the client.

    Returns
    -------
    dict of bytes
        By folder and name; nothing of one class of copy is in the folder of another.
    """
    written = {
        "fitter": fitter_papers(
            site,
            catalogue,
            page=page,
            answers=answers,
            drawn_up=drawn_up,
            press=press,
            campaign=campaign,
        )
        | quote_with_costs(quote, drawn_up=drawn_up, press=press),
        "client": client_papers(site, catalogue, answers, drawn_up=drawn_up, press=press)
        | quote_offered(quote, site, catalogue, drawn_up=drawn_up, press=press),
        "open": open_papers(site, catalogue, drawn_up=drawn_up, press=press),
    }
    return {
        f"{words.folder}/{name}": content
        for copy, words in COPIES.items()
        for name, content in written[copy].items()
    }


def fitter_papers(
    site: Site,
    catalogue: Catalogue,
    *,
    page: Page,
    answers: tuple[Answer, ...],
    drawn_up: date,
    press: Press,
    campaign: CampaignReport | None = None,
    results: tuple[SiteResult, ...] = (),
) -> dict[str, bytes]:
    """Write the fitter's own papers, by name: they hold all, what was written down on site too."""
    programming = programming_sheet(site, catalogue, drawn_up=drawn_up)
    plan = plan_sheets(site, catalogue, drawn_up=drawn_up, size=press.size)
    tests = readings(site, catalogue, answers, drawn_up=drawn_up, results=results)
    return {
        PAGE: write_html(page),
        "survey.pdf": press.pdf(survey(site, catalogue, answers, drawn_up=drawn_up)),
        "plan.pdf": press.pdf(plan),
        "schedule.xlsx": write_xlsx(schedule(site, catalogue, drawn_up=drawn_up), size=press.size),
        "devices.csv": write_csv(device_table(site, catalogue)),
        "zones.csv": write_csv(zone_table(site, catalogue)),
        "programming.pdf": press.pdf(programming),
        "programming.html": write_paper_html(programming),
        "job-pack.pdf": press.pdf(job_pack(site, catalogue, drawn_up=drawn_up)),
        "pick-list.csv": write_csv(pick_list(site, catalogue)),
        "tests.pdf": press.pdf(tests),
        "tests.xlsx": write_xlsx(tests, size=press.size),
        "as-fitted-full.pdf": press.pdf(
            as_built(site, catalogue, plan=plan, programming=programming, drawn_up=drawn_up)
        ),
        "records.pdf": press.pdf(aftercare(site, catalogue, answers, drawn_up=drawn_up, results=results)),
        "dates.pdf": press.pdf(dates_paper(site, catalogue, answers, drawn_up=drawn_up)),
        "dates.csv": write_csv(battery_table(site, answers, drawn_up=drawn_up)),
        "dates.ics": write_ics(
            f"{site.name}: alarm",
            events_of(site, catalogue, answers, drawn_up=drawn_up, is_open=False),
            drawn_up=drawn_up,
        ),
        **_campaign(site, catalogue, campaign, drawn_up=drawn_up, press=press),
        **{f"plan-{storey.drawing.key}.svg": write_svg(storey.drawing) for storey in page.storeys},
    }


def _campaign(
    site: Site, catalogue: Catalogue, campaign: CampaignReport | None, *, drawn_up: date, press: Press
) -> dict[str, bytes]:
    if campaign is None:
        return {}
    bases = whole_plans(site, catalogue)
    return {CAMPAIGN: press.pdf(campaign_paper(campaign, bases=bases, house=site.name, drawn_up=drawn_up))}


def quote_with_costs(quote: Quote | None, *, drawn_up: date, press: Press) -> dict[str, bytes]:
    """Write a quote for the firm alone, by name; none where nothing is offered."""
    if quote is None:
        return {}
    return {QUOTES["fitter"]: write_xlsx(quote_office(quote, drawn_up=drawn_up), size=press.size)}


def quote_offered(
    quote: Quote | None, site: Site, catalogue: Catalogue, *, drawn_up: date, press: Press
) -> dict[str, bytes]:
    """Write a quote for the client, by name; none where nothing is offered."""
    if quote is None:
        return {}
    return {QUOTES["client"]: press.pdf(quote_paper(quote, site, catalogue, drawn_up=drawn_up))}


def client_papers(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, drawn_up: date, press: Press
) -> dict[str, bytes]:
    """Write the client's confidential papers, by name."""
    return {
        "risk.pdf": press.pdf(risk(site, catalogue, answers, drawn_up=drawn_up)),
        "proposal.pdf": press.pdf(proposal(site, catalogue, answers, drawn_up=drawn_up)),
        "terms.pdf": press.pdf(contract(site, catalogue, drawn_up=drawn_up)),
        "handover.pdf": press.pdf(handover(site, catalogue, answers, drawn_up=drawn_up)),
        "leaving.pdf": press.pdf(leaving(site, catalogue, drawn_up=drawn_up)),
    }


def open_papers(site: Site, catalogue: Catalogue, *, drawn_up: date, press: Press) -> dict[str, bytes]:
    """Write the papers for the customer's files, by name."""
    return {
        "guide.pdf": press.pdf(guide(site, catalogue, drawn_up=drawn_up)),
        "as-fitted.pdf": press.pdf(as_fitted(site, catalogue, drawn_up=drawn_up)),
        "as-fitted.csv": write_csv(as_fitted_table(site, catalogue)),
        "logbook.pdf": press.pdf(logbook(site, catalogue, drawn_up=drawn_up)),
        "labels.pdf": press.pdf(label_sheet(site, catalogue, drawn_up=drawn_up)),
        "labels.csv": write_csv(label_table(site, catalogue)),
        "calendar.ics": write_ics(
            f"{discreet(site.name, site, catalogue)}: alarm",
            events_of(site, catalogue, (), drawn_up=drawn_up, is_open=True),
            drawn_up=drawn_up,
        ),
    }
