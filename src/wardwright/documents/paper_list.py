"""Which papers there are: their files by class of copy, and what each is."""

from __future__ import annotations

from wardwright.documents.content.copies import COPIES
from wardwright.documents.content.paper import CopyClass
from wardwright.model.record import Record
from wardwright.model.site import Site

PAGE = "page.html"
QUOTES: dict[CopyClass, str] = {"fitter": "quote-with-costs.xlsx", "client": "quote.pdf"}
QUOTED: dict[CopyClass, str] = {
    "fitter": "Quote with costs, as a spreadsheet",
    "client": "Quote, in options",
}
"""Where a firm offers it: with what it costs the firm, and without."""
CAMPAIGN = "campaign.pdf"
TITLES: dict[CopyClass, dict[str, str]] = {
    "fitter": {
        PAGE: "All answers, findings and plans on one page",
        "survey.pdf": "Enquiry and survey record",
        "plan.pdf": "Plan for fitting, at its scale",
        "schedule.xlsx": "Devices and zones, as a spreadsheet",
        "devices.csv": "Devices, as plain rows",
        "zones.csv": "Zones, as plain rows",
        "programming.pdf": "Programming sheet",
        "programming.html": "Programming sheet, for a screen",
        "job-pack.pdf": "Job pack: site risks, pick list, drilling and ladders",
        "pick-list.csv": "Pick list, as plain rows",
        "tests.pdf": "Radio and commissioning tests, expected beside read",
        "tests.xlsx": "The same as a spreadsheet to type readings into",
        "as-fitted-full.pdf": "As-fitted record, full",
        "records.pdf": "Service, activation, variation and complaint records",
        "dates.pdf": "Batteries and end dates",
        "dates.csv": "Batteries, as plain rows",
        "dates.ics": "Visits and end dates, for a calendar",
    },
    "client": {
        "risk.pdf": "Risk record",
        "proposal.pdf": "Design proposal, with what is not protected",
        "terms.pdf": "Terms, privacy, cancellation and maintenance",
        "handover.pdf": "Handover: completion, training, keyholders, cameras, updates",
        "leaving.pdf": "Takeover, release and removal",
    },
    "open": {
        "guide.pdf": "Your alarm, on one page",
        "logbook.pdf": "Logbook",
        "as-fitted.pdf": "As-fitted record",
        "as-fitted.csv": "As-fitted record, as plain rows",
        "labels.pdf": "Labels to cut out",
        "labels.csv": "Labels, as plain rows",
        "calendar.ics": "Visits and end dates, for a calendar of the household",
    },
}
"""Of every site, in the order of the job; the fitter's copy has a picture for each storey besides."""


class PaperLine(Record):
    """One paper that can be had."""

    name: str
    title: str


class PaperClass(Record):
    """The papers of one class of copy."""

    copy_class: CopyClass
    stamp: str
    """Whom it is for."""
    warning: str
    papers: tuple[PaperLine, ...]


def paper_classes(
    site: Site, *, has_campaign: bool = False, has_quote: bool = False
) -> tuple[PaperClass, ...]:
    """Which papers of a site can be had, by class of copy, before anything is worked out.

    A campaign's paper is the fitter's alone, and there only where intruders were sent; a quote is there only where a
    firm offers it.
    """
    quotes = (
        {copy: (PaperLine(name=QUOTES[copy], title=title),) for copy, title in QUOTED.items()}
        if has_quote
        else {}
    )
    campaign = (PaperLine(name=CAMPAIGN, title="What seeded intruders did"),) if has_campaign else ()
    pictures = tuple(
        PaperLine(name=picture_name(storey.id), title=f"Where anybody is noticed: {storey.name}")
        for storey in site.storeys
    )
    return tuple(
        PaperClass(
            copy_class=copy,
            stamp=COPIES[copy].stamp,
            warning=COPIES[copy].warning,
            papers=(
                *(PaperLine(name=name, title=title) for name, title in titles.items()),
                *quotes.get(copy, ()),
                *((*campaign, *pictures) if copy == "fitter" else ()),
            ),
        )
        for copy, titles in TITLES.items()
    )


def paper_names(site: Site, *, has_campaign: bool = False, has_quote: bool = False) -> tuple[str, ...]:
    """The files that a site's papers will be, each with its folder, before anything is worked out."""
    return tuple(
        f"{COPIES[one.copy_class].folder}/{paper.name}"
        for one in paper_classes(site, has_campaign=has_campaign, has_quote=has_quote)
        for paper in one.papers
    )


def picture_name(storey_id: str) -> str:
    """The file of a storey's picture.

    Examples
    --------
    >>> picture_name("ground")
    'plan-noticed-ground.svg'
    """
    return f"plan-noticed-{storey_id}.svg"
