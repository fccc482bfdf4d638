"""`wardwright fit-plan`: in which order a job is fitted, how each device is fixed, and how far it may be moved."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace

from wardwright.cli.command import FINE, Command, add_sheets, add_site, columns
from wardwright.cli.given import catalogue_from, site_from
from wardwright.cli.plan_files import HELP, refuse_ending, write_plan
from wardwright.cli.progress import progress


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    add_site(parser)
    parser.add_argument(
        "--quick", action="store_true", help="leave out how far each device may be moved: that takes time"
    )
    parser.add_argument("--json", action="store_true", help="print the plan as JSON, numbers not rounded")
    parser.add_argument("-o", "--output", metavar="FILE", help=HELP)
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Plan, and print the plan."""
    refuse_ending(arguments.output)
    catalogue = catalogue_from(arguments.sheet)
    site = site_from(arguments.site, catalogue)
    from wardwright.documents.content.fit_plan_words import fit_plan_table
    from wardwright.documents.writers.fit_plan_text import fit_plan_json, fit_plan_text
    from wardwright.documents.writers.text import WIDTH
    from wardwright.questions.fit_plan import fit_plan

    with progress("trying how far each device may be moved"):
        plan = fit_plan(site, catalogue, is_quick=arguments.quick)
    if arguments.output:
        from wardwright.documents.content.forms.fitting_plan import fitting_plan

        write_plan(
            arguments.output,
            place=site.place,
            table=lambda: fit_plan_table(plan, site, catalogue),
            paper=lambda day: fitting_plan(plan, site, catalogue, drawn_up=day),
        )
    if arguments.json:
        print(fit_plan_json(plan), end="")
    else:
        print(fit_plan_text(plan, site, catalogue, width=columns(WIDTH)), end="")
    return FINE


COMMAND = Command(
    name="fit-plan",
    summary="say in which order to fit, where exactly, and what may give way",
    description="Put the fitting in order, ladder and steps work together, and print a sheet for each device: how "
    "far from which corner, how high, held by what on what, what to beware of, and how far it may be moved or turned "
    "before an answer fails, tried on the model.",
    add_arguments=add_arguments,
    run=run,
)
