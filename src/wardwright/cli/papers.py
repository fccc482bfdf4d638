"""`wardwright papers`: write the papers of a site."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from wardwright.cli.command import FINE, Command, add_sheets, add_site
from wardwright.cli.given import catalogue_from, site_from
from wardwright.cli.progress import progress

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.model.catalogue import Catalogue
    from wardwright.model.site import Site

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
    site = site_from(arguments.site, catalogue)
    folder = Path(arguments.output) / FITTER
    with progress("asking the house and drawing it"):
        files = fitter_files(site, catalogue)
    from wardwright.store.folders import write_folder

    write_folder(folder, files, stale="plan-*.svg")
    print(f"Written: {folder / PAGE}" + f", and {len(files) - 1} plans beside it" * (len(files) > 1))
    print("It is a plan of how to get into somebody's home: keep it on your own machine.")
    return FINE


def fitter_files(site: Site, catalogue: Catalogue) -> dict[str, bytes]:
    """Name and content of each file of the fitter's copy."""
    from wardwright.documents.content.page import page_of
    from wardwright.documents.writers.html import write_html
    from wardwright.questions.table import ask
    from wardwright.questions.worth_adding import worth_adding
    from wardwright.rules.table import check

    facts = worth_adding(site, catalogue)
    page = page_of(site, catalogue, ask(site, catalogue), check(site, catalogue), worth_adding=facts)
    return {PAGE: write_html(page)}


COMMAND = Command(
    name="papers",
    summary="write the papers of a site",
    description="Ask and check a site and write its papers. In this version that is the fitter's own page: plans, "
    "answers worst first, findings, what was guessed.",
    add_arguments=add_arguments,
    run=run,
)
