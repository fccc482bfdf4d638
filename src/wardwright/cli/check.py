"""`wardwright check`: hold a site against the siting rules."""

from __future__ import annotations

import json
from argparse import ArgumentParser, Namespace

from wardwright.cli.command import FINE, MUST_MEND, Command, add_sheets, add_site
from wardwright.cli.given import catalogue_from, site_from
from wardwright.cli.progress import progress


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    add_site(parser)
    parser.add_argument(
        "--strict",
        action="store_true",
        help="exit with 1 also where a rule could not be run, not only on a must-mend",
    )
    parser.add_argument("--json", action="store_true", help="print the findings as JSON")
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Check, and print the findings; 1 where something must be mended."""
    catalogue = catalogue_from(arguments.sheet)
    site = site_from(arguments.site, catalogue)
    from wardwright.rules.table import check

    with progress("checking the site"):
        findings = check(site, catalogue)
    if arguments.json:
        rows = [finding.model_dump(mode="json", exclude={"sketches"}) for finding in findings]
        print(json.dumps({"findings": rows}, indent=1, ensure_ascii=False))
    else:
        from wardwright.documents.writers.text import findings_text

        print(findings_text(findings, site=site, catalogue=catalogue), end="")
    stops = {"must mend", "not run"} if arguments.strict else {"must mend"}
    return MUST_MEND if any(finding.severity in stops for finding in findings) else FINE


COMMAND = Command(
    name="check",
    summary="hold a site against the siting rules",
    description="Hold a site against the siting rules and print what they find, each with its cure. A rule that "
    "could not be run is listed with its reason; it never counts as passed. Exit status 1 when something must "
    "be mended.",
    add_arguments=add_arguments,
    run=run,
)
