"""`wardwright demo`: the main job on a sample house."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path

from wardwright.cli.command import FINE, Command
from wardwright.cli.given import catalogue_from

FOLDER = "demo"
SAMPLE = "terrace"


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    parser.add_argument(
        "-o", "--output", metavar="FOLDER", default=FOLDER, help=f"where to; ./{FOLDER} by default"
    )


def run(arguments: Namespace) -> int:
    """Bring a sample house in, ask it, check it, draw it, and say where to look."""
    raise NotImplementedError(arguments, Path, FINE, catalogue_from)


COMMAND = Command(
    name="demo",
    summary="the main job on a sample house",
    description="Bring a sample house in from its notes, ask it, check it, draw it, and say where to look.",
    add_arguments=add_arguments,
    run=run,
)
