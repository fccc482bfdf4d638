"""The command line: finds the command, runs it, turns every fault into one message and an exit status.

Only light imports stand at the top of the files of this folder, so that `--version` and `--help` answer at
once, and on a broken installation too.
"""

from __future__ import annotations

import argparse
import difflib
import io
import os
import re
import sys
import traceback
from collections.abc import Sequence
from typing import NoReturn

from wardwright import __version__
from wardwright.cli import (
    ask,
    campaign,
    check,
    compare,
    demo,
    fit_plan,
    intake,
    job,
    papers,
    proving_plan,
    quote,
    rule,
    serve,
)
from wardwright.cli.command import BAD_INPUT, FINE, OWN_FAULT, STATUSES, STOPPED, Command
from wardwright.errors import InputError, NotComputable

COMMANDS: tuple[Command, ...] = (
    intake.COMMAND,
    ask.COMMAND,
    check.COMMAND,
    campaign.COMMAND,
    compare.COMMAND,
    quote.COMMAND,
    fit_plan.COMMAND,
    proving_plan.COMMAND,
    papers.COMMAND,
    rule.COMMAND,
    job.COMMAND,
    serve.COMMAND,
    demo.COMMAND,
)
"""In the order of a job."""

DESCRIPTION = "Ask a house about its intruder alarm, before anything is stuck to a wall."
START = (
    "Start with 'wardwright demo', or 'wardwright ask sample:terrace'. Exit status: "
    + "; ".join(f"{status} {meaning.replace('`', '')}" for status, meaning in STATUSES)
    + "."
)
TRACE = "WARDWRIGHT_TRACE"
"""Set in the environment, it shows where a fault of the program itself was."""


class _Parser(argparse.ArgumentParser):
    """A parser whose complaints have the form of all others: where, what, cure."""

    def error(self, message: str) -> NoReturn:
        wrong = re.match(r"argument COMMAND: invalid choice: '(.*?)'", message)
        if wrong is not None:
            near = difflib.get_close_matches(wrong[1], [command.name for command in COMMANDS], n=1)
            hint = f"; did you mean '{near[0]}'" if near else ""
            message = f"there is no command '{wrong[1]}'{hint}"
        message = re.sub(r"\(choose from .*\)", lambda found: found[0].replace("'", ""), message)
        complain(f"command line: {message}. See '{self.prog} --help'.")
        sys.exit(BAD_INPUT)


def parser() -> argparse.ArgumentParser:
    """Build the parser of the whole command line."""
    top = _Parser(prog="wardwright", description=DESCRIPTION, epilog=START)
    top.add_argument("--version", action="version", version=f"wardwright {__version__}")
    commands = top.add_subparsers(metavar="COMMAND", required=True, dest="command")
    for command in COMMANDS:
        one = commands.add_parser(command.name, help=command.summary, description=command.description)
        command.add_arguments(one)
        one.set_defaults(run=command.run)
    return top


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command line.

    Parameters
    ----------
    arguments : sequence of str, optional
        What follows the program's name; by default what it was started with.

    Returns
    -------
    int
        The exit status: 0 fine, 1 something must be mended, 2 bad input or usage, 3 a fault of the program.
    """
    for stream in (sys.stdout, sys.stderr):
        if isinstance(
            stream, io.TextIOWrapper
        ):  # a name such as Küche must not stop a terminal that has no umlauts
            stream.reconfigure(errors="replace")
    try:
        given = parser().parse_args(arguments)
    except SystemExit as done:
        return done.code if isinstance(done.code, int) else FINE
    try:
        status: int = given.run(given)
        sys.stdout.flush()
    except (Exception, KeyboardInterrupt) as fault:  # noqa: BLE001 - the last place to tell bad input from a fault
        return _told(fault, given.command)
    return status


def _told(fault: BaseException, command: str) -> int:
    """Say in one message what went wrong; the exit status."""
    match fault:
        case BrokenPipeError():  # the reader, such as `head`, has had enough
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
            return FINE
        case KeyboardInterrupt():
            complain("stopped")
            return STOPPED
        case InputError():
            complain(str(fault))
        case NotComputable():
            complain(f"{command}: it could not be worked out: {fault}. Add what is missing to the site.")
        case OSError():
            complain(
                f"{fault.filename or command}: {fault.strerror or fault}. Check the path and its rights."
            )
        case _:
            if os.environ.get(TRACE):
                traceback.print_exception(fault)
            words = f"{type(fault).__name__}: {fault}"
            complain(
                f"{command}: a fault of the program ({words}). Set {TRACE}=1 to see where, and report it."
            )
            return OWN_FAULT
    return BAD_INPUT


def complain(message: str) -> None:
    """Say one thing on the error stream, on one line; what a terminal would obey, not show, is left out."""
    line = "".join(letter for letter in " ".join(message.split()) if letter.isprintable())
    print(f"wardwright: {line}", file=sys.stderr)
