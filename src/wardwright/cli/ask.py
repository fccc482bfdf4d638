"""`wardwright ask`: put the questions to a site."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace

from wardwright.cli.command import FINE, Command, add_sheets, add_site
from wardwright.cli.given import catalogue_from, site_from
from wardwright.cli.progress import progress


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    add_site(parser)
    parser.add_argument(
        "question",
        metavar="QUESTION",
        nargs="*",
        type=int,
        default=[],
        help="numbers of questions; all of them by default",
    )
    parser.add_argument("--json", action="store_true", help="print the answers as JSON")
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Ask, and print the answers."""
    catalogue = catalogue_from(arguments.sheet)
    site = site_from(arguments.site, catalogue)
    from wardwright.questions.table import ask

    with progress("asking the house"):
        answers = ask(site, catalogue, arguments.question or None)
    from wardwright.documents.writers.text import answers_json, answers_text

    text = answers_json(answers) if arguments.json else answers_text(answers, site=site, catalogue=catalogue)
    print(text, end="")
    return FINE


COMMAND = Command(
    name="ask",
    summary="put the questions to a site",
    description="Put the questions to a site and print the answers, worst first: each with its range, what moves "
    "it most and how that is known, and what would mend it.",
    add_arguments=add_arguments,
    run=run,
)
