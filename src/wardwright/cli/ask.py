"""`wardwright ask`: put the questions to a site."""

from __future__ import annotations

import json
from argparse import ArgumentParser, Namespace
from typing import TYPE_CHECKING

from wardwright.cli.command import FINE, Command, add_sheets, add_site
from wardwright.cli.given import catalogue_from, site_from
from wardwright.cli.progress import progress

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.questions.answer import Answer


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
    if arguments.json:
        print(
            json.dumps({"answers": [answer_row(answer) for answer in answers]}, indent=1, ensure_ascii=False)
        )
        return FINE
    from wardwright.documents.writers.text import answers_text

    print(answers_text(answers))
    return FINE


def answer_row(answer: Answer) -> dict[str, object]:
    """One answer as plain data; its numbers are null, and `reason` says why, where it could not be computed."""
    estimate = answer.estimate
    drivers = () if estimate is None else estimate.drivers
    return {
        "question": answer.question,
        "subject": answer.subject,
        "value": None if estimate is None else estimate.value,
        "low": None if estimate is None else estimate.low,
        "high": None if estimate is None else estimate.high,
        "unit": None if estimate is None else estimate.unit,
        "drivers": [{"name": one.name, "swing": one.swing, "basis": one.basis} for one in drivers],
        "basis": None if estimate is None else estimate.basis,
        "reason": answer.reason,
        "subject_id": answer.subject_id,
        "measure": answer.measure,
        "verdict": answer.verdict,
        "chance": answer.chance,
    }


COMMAND = Command(
    name="ask",
    summary="put the questions to a site",
    description="Put the questions to a site and print the answers, worst first: each with its range, what moves "
    "it most and how that is known, and what would mend it.",
    add_arguments=add_arguments,
    run=run,
)
