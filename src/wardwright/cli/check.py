"""`wardwright check`: hold a site against the siting rules."""

from __future__ import annotations

import json
import textwrap
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from typing import TYPE_CHECKING

from wardwright.cli.command import FINE, MUST_MEND, Command, add_sheets, add_site, columns
from wardwright.cli.given import catalogue_from, site_from
from wardwright.cli.progress import progress

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.model.needs import Accepted
    from wardwright.model.validation import Problem


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    add_site(parser)
    parser.add_argument(
        "--strict",
        action="store_true",
        help="exit with 1 also where a rule could not be run, not only on a must-mend; not for what is accepted",
    )
    parser.add_argument("--json", action="store_true", help="print the findings as JSON")
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Check, and print the findings; 1 where something must be mended."""
    catalogue = catalogue_from(arguments.sheet)
    site = site_from(arguments.site, catalogue)
    from wardwright.model.validation import problems
    from wardwright.rules.acceptance import left_over
    from wardwright.rules.table import check

    with progress("checking the site"):
        findings, noted = check(site, catalogue), problems(site, catalogue)
    if arguments.json:
        rows = [finding.model_dump(mode="json", exclude={"sketches"}) for finding in findings]
        places = [{"where": one.where, "what": one.what, "cure": one.cure} for one in noted]
        print(json.dumps({"findings": rows, "noted": places}, indent=1))
    else:
        from wardwright.documents.writers.text import WIDTH, findings_text

        width = columns(WIDTH)
        print(findings_text(findings, site=site, catalogue=catalogue, width=width), end="")
        for one in left_over(site, findings):
            print(textwrap.fill(left_over_text(one), width, subsequent_indent="  "))
        if noted:
            print(textwrap.fill(noted_text(noted), width, subsequent_indent="  "))
    stops = {"must mend", "not run"} if arguments.strict else {"must mend"}
    return MUST_MEND if any(one.severity in stops and not one.accepted for one in findings) else FINE


def noted_text(noted: Sequence[Problem]) -> str:
    """How many imperfections of the site stand beside the findings, and the first of them."""
    first = noted[0]
    many = "1 imperfection of the drawing, which stops no answer"
    if len(noted) > 1:
        many = (
            f"{len(noted)} imperfections of the drawing, which stop no answer (--json lists them); the first"
        )
    return f"Noted: {many}: {first.where}: {first.what}. {first.cure}."


def left_over_text(accepted: Accepted) -> str:
    """An acceptance that no finding answers to: it is gone, or the code or the subject is written wrongly."""
    subject = f" {accepted.subject}" if accepted.subject else ""
    return f"Accepted, but not found: {accepted.rule}{subject}. Take it out, or mend its code or subject."


COMMAND = Command(
    name="check",
    summary="hold a site against the siting rules",
    description="Hold a site against the siting rules and print what they find, each with its cure. A rule that "
    "could not be run is listed with its reason; it never counts as passed. What the user accepts is listed apart, "
    "with the reason. Imperfections of the drawing that stop no answer are counted. Exit status 1 when something "
    "must be mended that is not accepted.",
    add_arguments=add_arguments,
    run=run,
)
