"""`wardwright rule`: what a siting rule says, why, and how to put it right."""

from __future__ import annotations

import textwrap
from argparse import ArgumentParser, Namespace
from typing import TYPE_CHECKING

from wardwright.cli.command import FINE, Command, columns

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.rules.registry import Rule

WIDTH = 88
"""Letters in a line of the terminal."""


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    parser.add_argument(
        "code", metavar="CODE", nargs="?", help="a rule's code or name; without it, all are listed"
    )


def run(arguments: Namespace) -> int:
    """Print one rule, or the list of them."""
    from wardwright.rules.table import RULES, rule

    if arguments.code is None:
        print("\n".join(f"{one.code}  {one.name}" for one in RULES))
        return FINE
    print(rule_text(rule(arguments.code)))
    return FINE


def rule_text(rule: Rule) -> str:
    """All that a rule says of itself, as lines for the terminal."""
    from wardwright.rules.page import rule_sections

    width = columns(WIDTH)
    lines = [
        f"{rule.code} {rule.name}",
        *textwrap.wrap(rule.summary, width),
        "",
        f"Severity: {rule.severity}. Stage: {rule.stage}, since {rule.since}.",
        *textwrap.wrap(
            f"Basis: {rule.mark}" + (f" ({', '.join(rule.sources)})." if rule.sources else "."), width
        ),
    ]
    for heading, body in rule_sections(rule):
        lines += ["", heading]
        for number, paragraph in enumerate(body.split("\n\n")):
            gap = [""] if number else []
            lines += gap + textwrap.wrap(paragraph, width, initial_indent="  ", subsequent_indent="  ")
    return "\n".join(lines)


COMMAND = Command(
    name="rule",
    summary="what a siting rule says, why, and how to put it right",
    description="Print what a siting rule checks, why it matters, how to put it right, and what it cannot know; "
    "without a code, list the rules.",
    add_arguments=add_arguments,
    run=run,
)
