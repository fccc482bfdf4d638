"""`wardwright ask`: put the questions to a site."""

from __future__ import annotations

from argparse import ArgumentParser, ArgumentTypeError, Namespace

from wardwright.cli.command import FINE, Command, add_sheets, add_site, columns
from wardwright.cli.given import catalogue_from, site_from
from wardwright.cli.progress import progress

ASKED = (
    (1, "the race through each way in"),
    (2, "where the control unit should go"),
    (3, "entry and exit time, door by door"),
    (4, "which zone behaviour each device is to have"),
    (5, "how far somebody moves undetected"),
    (6, "whether each radio device will be heard"),
    (8, "whether people get about at night with part of the alarm set"),
    (9, "when sun, warm things and headlights disturb a detector"),
    (11, "what a movement detector really sees"),
    (12, "what still works when one thing is lost"),
    (13, "what is heard at each pillow and outside"),
    (14, "which upper windows and roofs are reached, and how"),
    (15, "when each battery ends"),
    (16, "what the job takes and costs"),
    (17, "which detectors can stay with the pets in"),
    (18, "whether fire and water devices keep the published distances"),
    (19, "what a camera shows, and how much beyond the boundary"),
    (20, "what fails since something changed, and what to test again"),
)
"""Number and short name of each question, for the help; a test holds them to the table of questions."""


def question(written: str) -> int:
    """Read the number of a question."""
    try:
        return int(written)
    except ValueError:
        raise ArgumentTypeError(f"'{written}' is not the number of a question, such as 1") from None


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    add_site(parser)
    parser.add_argument(
        "question",
        metavar="QUESTION",
        nargs="*",
        type=question,
        default=[],
        help="numbers of questions, all of them by default: " + ", ".join(f"{n} {what}" for n, what in ASKED),
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
    from wardwright.documents.writers.text import WIDTH, answers_json, answers_text

    if arguments.json:
        print(answers_json(answers), end="")
    else:
        print(answers_text(answers, site=site, catalogue=catalogue, width=columns(WIDTH)), end="")
    return FINE


COMMAND = Command(
    name="ask",
    summary="put the questions to a site",
    description="Put the questions to a site and print the answers, worst first: each with its range, what moves "
    "it most and how that is known, and what would mend it.",
    add_arguments=add_arguments,
    run=run,
)
