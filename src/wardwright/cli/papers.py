"""`wardwright papers`: write the papers of a site."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from wardwright.cli.command import FINE, Command, add_sheets, add_site
from wardwright.cli.given import catalogue_from, report_from, site_from
from wardwright.cli.progress import progress

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.intake.report import IntakeReport
    from wardwright.model.catalogue import Catalogue
    from wardwright.model.site import Site
    from wardwright.questions.answer import Answer
    from wardwright.rules.finding import Finding

FITTER = "fitter"
"""The folder of the fitter's own copy: it holds all, and is for nobody else."""
PAGE = "page.html"


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    add_site(parser)
    parser.add_argument(
        "-o",
        "--output",
        metavar="FOLDER",
        required=True,
        help="where to; the fitter's copy goes into FOLDER/fitter",
    )
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Ask, check, and write the page and its plans."""
    catalogue = catalogue_from(arguments.sheet)
    site, report = site_from(arguments.site, catalogue), report_from(arguments.site)
    from wardwright.questions.table import ask
    from wardwright.rules.table import check

    with progress("asking the house and drawing it"):
        files = fitter_files(
            site, catalogue, answers=ask(site, catalogue), findings=check(site, catalogue), report=report
        )
    page = write_fitter_copy(Path(arguments.output), files)
    plans = len(files) - 1
    print(f"Written: {page}, and {plans} {'plan' if plans == 1 else 'plans'} beside it")
    print("It is a plan of how to get into somebody's home: keep it on your own machine.")
    return FINE


def fitter_files(
    site: Site,
    catalogue: Catalogue,
    *,
    answers: tuple[Answer, ...],
    findings: tuple[Finding, ...],
    report: IntakeReport | None = None,
) -> dict[str, bytes]:
    """Name and content of each file of the fitter's copy: the page, and each storey's plan for itself."""
    from wardwright.documents.content.page import page_of
    from wardwright.documents.writers.html import write_html
    from wardwright.documents.writers.svg import write_svg
    from wardwright.questions.worth_adding import worth_adding

    page = page_of(
        site, catalogue, answers, findings, report=report, worth_adding=worth_adding(site, catalogue)
    )
    plans = {f"plan-{storey.drawing.key}.svg": write_svg(storey.drawing) for storey in page.storeys}
    return {PAGE: write_html(page), **plans}


def write_fitter_copy(folder: Path, files: dict[str, bytes]) -> Path:
    """Write the fitter's copy into its own folder under this one; where its page is."""
    from wardwright.store.folders import write_folder

    write_folder(folder / FITTER, files, stale="plan-*.svg")
    return folder / FITTER / PAGE


COMMAND = Command(
    name="papers",
    summary="write the papers of a site",
    description="Ask and check a site and write its papers. In this version that is the fitter's own page: plans, "
    "answers worst first, findings, what was guessed. The report that `intake` left beside the site document "
    "goes into it.",
    add_arguments=add_arguments,
    run=run,
)
