"""`wardwright papers`: write the papers of a site."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from wardwright.cli.campaign import MOST_TRIALS, whole
from wardwright.cli.command import FINE, Command, add_sheets, add_site
from wardwright.cli.given import catalogue_from, report_from, site_from
from wardwright.cli.progress import progress
from wardwright.cli.quote import add_firm, firm_from, logo_from, prices_from

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.costing.firm import Firm
    from wardwright.costing.price_list import PriceList
    from wardwright.costing.quote import Quote
    from wardwright.documents.content.paper import Logo, PaperSize
    from wardwright.intake.report import IntakeReport
    from wardwright.model.catalogue import Catalogue
    from wardwright.model.site import Site
    from wardwright.questions.answer import Answer
    from wardwright.rules.finding import Finding
    from wardwright.trials.campaign.results import CampaignReport

CAMPAIGN_TRIALS = 20_000
"""Seeded intruders for the papers, where no other number is asked for. [-]"""


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    add_site(parser)
    parser.add_argument(
        "-o",
        "--output",
        metavar="FOLDER",
        required=True,
        help="where to; each class of copy goes into a folder of its own under it",
    )
    parser.add_argument(
        "--paper",
        choices=("a4", "letter"),
        help="the size that is in the printer; left out: what is usual where the house stands",
    )
    parser.add_argument(
        "--campaign",
        metavar="N",
        type=trials_or_none,
        default=CAMPAIGN_TRIALS,
        help=f"seeded intruders that are sent in for the fitter's copy; {CAMPAIGN_TRIALS} by default, which take a "
        "second or so and some 20 MB more on an ordinary house; 0: none",
    )
    add_firm(parser)
    add_sheets(parser)


def trials_or_none(written: str) -> int:
    """Read how many intruders, none among them."""
    return whole(written, least=0, most=MOST_TRIALS)


def run(arguments: Namespace) -> int:
    """Ask, check, and write the papers of each class of copy."""
    catalogue = catalogue_from(arguments.sheet)
    site, report = site_from(arguments.site, catalogue), report_from(arguments.site)
    folder = Path(arguments.output)
    firm, prices = firm_from(arguments.firm), prices_from(arguments.prices)
    check_folder(folder, site, has_campaign=arguments.campaign > 0, has_quote=firm is not None)
    from wardwright.questions.table import ask
    from wardwright.rules.table import check

    with progress("asking the house and drawing it"):
        campaign, why_none = sent_in(site, catalogue, trials=arguments.campaign)
        answers = ask(site, catalogue)
        files = papers(
            site,
            catalogue,
            answers=answers,
            findings=check(site, catalogue),
            report=report,
            size=arguments.paper,
            campaign=campaign,
            offer=(
                offered(site, catalogue, answers, firm=firm, prices=prices),
                logo_from(arguments.firm, firm),
            ),
        )
    print(f"Written: {write(folder, files)}, and beside it:")
    print(told(folder, files))
    if why_none:
        print(f"  No seeded intruders were sent in: {why_none}.")
    return FINE


def sent_in(site: Site, catalogue: Catalogue, *, trials: int) -> tuple[CampaignReport | None, str]:
    """What seeded intruders did; or why none were sent, empty where none were wanted."""
    if not trials:
        return None, ""
    from wardwright.errors import NotComputable
    from wardwright.trials.campaign.report import report_of
    from wardwright.trials.campaign.run import campaign

    try:
        return report_of(campaign(site, catalogue, trials=trials), catalogue), ""
    except NotComputable as reason:
        return None, str(reason)


def offered(
    site: Site,
    catalogue: Catalogue,
    answers: tuple[Answer, ...],
    *,
    firm: Firm | None,
    prices: PriceList | None,
) -> Quote | None:
    """What a firm offers; None where none is given, or nothing is to be fitted."""
    if firm is None:
        return None
    from wardwright.errors import NotComputable
    from wardwright.questions.quoted import quote_of

    try:
        return quote_of(site, catalogue, answers=answers, firm=firm, prices=prices)
    except NotComputable:
        return None


def check_folder(folder: Path, site: Site, *, has_campaign: bool = False, has_quote: bool = False) -> None:
    """Refuse a folder that the papers of a site cannot go to, before they are worked out."""
    from wardwright.documents.paper_list import paper_names
    from wardwright.store.copies import check_place

    check_place(folder, paper_names(site, has_campaign=has_campaign, has_quote=has_quote))


def papers(
    site: Site,
    catalogue: Catalogue,
    *,
    answers: tuple[Answer, ...],
    findings: tuple[Finding, ...],
    report: IntakeReport | None = None,
    size: PaperSize | None = None,
    campaign: CampaignReport | None = None,
    offer: tuple[Quote | None, Logo | None] = (None, None),
) -> dict[str, bytes]:
    """Name, with its folder, and content of every paper of a site."""
    from wardwright.documents.content.page import page_of
    from wardwright.documents.papers import papers_of
    from wardwright.documents.press import Press, usual_size
    from wardwright.questions.worth_adding import worth_adding
    from wardwright.store.clock import today
    from wardwright.store.fonts import font_folder

    page = page_of(
        site,
        catalogue,
        answers,
        findings,
        report=report,
        worth_adding=worth_adding(site, catalogue),
        campaign=campaign,
    )
    press = Press(font_folder(), size or usual_size(site.place), offer[1])
    return papers_of(
        site,
        catalogue,
        page=page,
        answers=answers,
        drawn_up=today(),
        press=press,
        campaign=campaign,
        quote=offer[0],
    )


def write(folder: Path, files: dict[str, bytes]) -> Path:
    """Write the papers, all or none; where the fitter's page is."""
    from wardwright.documents.content.copies import COPIES
    from wardwright.documents.paper_list import PAGE
    from wardwright.store.copies import write_copies

    write_copies(folder, files)
    return folder / COPIES["fitter"].folder / PAGE


def told(folder: Path, files: dict[str, bytes]) -> str:
    """Say which folders there are, and whom each is for."""
    from wardwright.documents.content.copies import COPIES

    lines = []
    for words in COPIES.values():
        count = sum(name.startswith(f"{words.folder}/") for name in files)
        lines.append(
            f"  {folder / words.folder}: {count} {'file' if count == 1 else 'files'}. {words.stamp}."
        )
        lines.append(f"    {words.warning}")
    return "\n".join(lines).replace("\u2019", "'")


COMMAND = Command(
    name="papers",
    summary="write the papers of a site",
    description="Ask and check a site and write its papers, each class of copy into a folder of its own. The "
    "fitter's: the page, survey, plan at its scale, schedule, job pack, programming sheet, tests, records, dates. "
    "The client's, confidential: risk record and proposal, with what is not protected, in words; terms and "
    "handover. The open one: the guide, the logbook, the as-fitted list, labels and a calendar. A file that this "
    "program did not write, or that was changed since, is never overwritten.",
    add_arguments=add_arguments,
    run=run,
)
