"""What a command is: a name, a line of help, its arguments, and what it does."""

from __future__ import annotations

import shutil
import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Callable
from typing import NamedTuple

FINE = 0
"""Exit status: done, and nothing must be mended."""
MUST_MEND = 1
"""Exit status of `check`: something must be mended (with --strict also: a rule could not be run)."""
BAD_INPUT = 2
"""Exit status: what was handed in, or how the command was written, is wrong."""
OWN_FAULT = 3
"""Exit status: a fault of the program itself."""
STOPPED = 130
"""Exit status: stopped from the keyboard."""
STATUSES = (
    (FINE, "done; nothing must be mended"),
    (MUST_MEND, "`check` found something that must be mended (with `--strict`: or a rule could not be run)"),
    (BAD_INPUT, "what was handed in, or the command line, is wrong: a message says where and what to do"),
    (OWN_FAULT, "a fault of the program itself: please report it"),
    (STOPPED, "stopped from the keyboard"),
)
"""Each exit status and what it means, for the help and the page of commands."""
SAMPLES = ("bungalow", "lakeside", "one-room", "sunrise", "terrace", "terrace-better")
"""The sample houses, for the help; a test holds them to those there are."""
NARROWEST = 40
"""Text is folded no narrower than this. [columns]"""


class Command(NamedTuple):
    """One command of the program."""

    name: str
    summary: str
    """One line, for the list of commands."""
    description: str
    """What it does, for its own help and its page."""
    add_arguments: Callable[[ArgumentParser], None]
    run: Callable[[Namespace], int]
    """Do it; the exit status. Whatever is heavy is imported inside."""


def columns(most: int) -> int:
    """How wide text may be: no wider than the terminal where there is one, and readable in any case."""
    if not sys.stdout.isatty():
        return most
    return max(NARROWEST, min(most, shutil.get_terminal_size((most, 24)).columns))


def add_site(parser: ArgumentParser) -> None:
    """Let a command take a site."""
    parser.add_argument(
        "site",
        metavar="SITE",
        help="a site document (JSON), a job (its newest revision), or a sample: "
        + ", ".join(f"sample:{name}" for name in SAMPLES),
    )


def add_sheets(parser: ArgumentParser) -> None:
    """Let a command take device sheets of the user's own."""
    parser.add_argument(
        "--sheet",
        metavar="FILE",
        action="append",
        default=[],
        help="a device sheet of your own (TOML), besides the catalogue; may be given more than once",
    )
