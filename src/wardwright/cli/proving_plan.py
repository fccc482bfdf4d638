"""`wardwright test-plan`: every test of a design, in walking order."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace

from wardwright.cli.command import FINE, Command, add_sheets, add_site, columns
from wardwright.cli.given import catalogue_from, results_from, site_from
from wardwright.cli.plan_files import HELP, refuse_ending, write_plan
from wardwright.cli.progress import progress


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    add_site(parser)
    parser.add_argument("--json", action="store_true", help="print the plan as JSON, numbers not rounded")
    parser.add_argument("-o", "--output", metavar="FILE", help=HELP)
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Plan, and print the plan."""
    refuse_ending(arguments.output)
    catalogue = catalogue_from(arguments.sheet)
    site = site_from(arguments.site, catalogue)
    from wardwright.documents.content.proving_plan_words import proving_plan_table
    from wardwright.documents.writers.proving_plan_text import proving_plan_json, proving_plan_text
    from wardwright.documents.writers.text import WIDTH
    from wardwright.questions.proving_plan import proving_plan

    with progress("laying out walks and their order"):
        plan = proving_plan(site, catalogue)
    if arguments.output:
        from wardwright.documents.content.forms.walk_tests import walk_tests

        results = results_from(arguments.site, site, catalogue)
        write_plan(
            arguments.output,
            place=site.place,
            table=lambda: proving_plan_table(plan, site, catalogue, results=results),
            paper=lambda day: walk_tests(plan, site, catalogue, drawn_up=day, results=results),
        )
    if arguments.json:
        print(proving_plan_json(plan), end="")
    else:
        print(proving_plan_text(plan, site, catalogue, width=columns(WIDTH)), end="")
    return FINE


COMMAND = Command(
    name="test-plan",
    summary="list every test of a design, in the shortest walking order",
    description="List what to prove before a system is handed over, in the shortest walking order: for each movement "
    "detector the walks where it is to notice (across and toward, slow and fast, in by each door) and where it is to "
    "stay quiet (next door, past panes), with paces, places on the plan, waiting times, and what the model expects.",
    add_arguments=add_arguments,
    run=run,
)
