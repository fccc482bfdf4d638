"""`wardwright intake`: bring a house in from a building file or from notes."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from wardwright.cli.command import FINE, Command, add_sheets
from wardwright.cli.given import catalogue_from
from wardwright.cli.progress import progress
from wardwright.errors import InputError

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.intake.report import IntakeReport
    from wardwright.model.catalogue import Catalogue
    from wardwright.model.site import Site


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    parser.add_argument(
        "file", metavar="FILE", help="a building file (.ifc), or notes that describe a whole house"
    )
    parser.add_argument(
        "--notes", metavar="NOTES", help="notes that add people, kit and facts to the building file"
    )
    parser.add_argument(
        "--premises",
        metavar="P",
        help="which of the building's premises is ours, such as A; its whole by default",
    )
    parser.add_argument(
        "-o", "--output", metavar="SITE", required=True, help="the site document to write (JSON)"
    )
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Bring the house in, write its document, and say what was read, guessed and left out."""
    catalogue = catalogue_from(arguments.sheet)
    site, report = house_from(arguments, catalogue)
    from wardwright.model.validation import problems, sound
    from wardwright.questions.worth_adding import worth_adding
    from wardwright.store.sites import write_site

    if report is None:  # notes are put right in the notes: nothing is written before they hold together
        sound(site, where=arguments.file, catalogue=catalogue)
    write_site(Path(arguments.output), site)
    print(brought_in(site, report))
    noted = [f"{one.where}: {one.what}. {one.cure}." for one in problems(site, catalogue)]
    print("\n".join(listed("Does not fit together", noted)), end="\n" * bool(noted))
    print("\n".join(listed("Worth adding first", worth_adding(site, catalogue))))
    print(f"\nWritten: {arguments.output}")
    sound(site, where=arguments.output, catalogue=catalogue)
    return FINE


def house_from(arguments: Namespace, catalogue: Catalogue) -> tuple[Site, IntakeReport | None]:
    """The site that the files describe, and what a building file's reader has to report."""
    from wardwright.intake.notes.reading import read_notes
    from wardwright.store.texts import read_notes_text

    path = Path(arguments.file)
    if path.suffix.lower() != ".ifc":
        if arguments.premises is not None:
            raise InputError(
                "--premises is for building files only",
                where="command line",
                cure="Leave it out, and say in the notes which spaces are ours",
            )
        site: Site | None = read_notes(read_notes_text(path), where=str(path), catalogue=catalogue)
        report = None
    else:
        from wardwright.store.limited import read_ifc_limited

        with progress(f"reading {path.name}"):
            site, report = read_ifc_limited(path, arguments.premises)
    if arguments.notes is not None:
        notes = Path(arguments.notes)
        site = read_notes(read_notes_text(notes), where=str(notes), base=site, catalogue=catalogue)
    assert site is not None  # noqa: S101 - both ways above give one
    return site, report


def brought_in(site: Site, report: IntakeReport | None) -> str:
    """What was brought in, as lines for the terminal."""
    counts = (
        (site.storeys, "storey", "storeys"), (site.spaces, "space", "spaces"), (site.walls, "wall", "walls"),
        (site.openings, "opening", "openings"), (site.stairs, "stair", "stairs"),
        (site.fixtures, "fixture", "fixtures"), (site.people, "person", "people"), (site.pets, "pet", "pets"),
        (site.devices, "device", "devices"),
    )  # fmt: skip
    words = [f"{len(found)} {one if len(found) == 1 else many}" for found, one, many in counts if found]
    lines = [f"{site.name}: {', '.join(words)}"]
    sections: tuple[tuple[str, tuple[str, ...]], ...] = ()
    if report is not None:
        sections = (
            ("Read", report.read),
            ("Guessed", report.guessed),
            ("Left out", report.left_out),
            ("Odd about the house as drawn", report.oddities),
        )
    for heading, facts in sections:
        lines += listed(heading, facts)
    return "\n".join(lines)


def listed(heading: str, facts: Sequence[str]) -> list[str]:
    """Lines of a heading and its facts; none where there are none."""
    if not facts:
        return []
    return ["", f"{heading}:", *(f"{number:3}. {fact}" for number, fact in enumerate(facts, 1))]


COMMAND = Command(
    name="intake",
    summary="bring a house in from a building file or from notes",
    description="Bring a house in from a building file (IFC) or from notes, and write its site document. It says "
    "what was read, what was guessed and what was left out, and which facts are worth adding first.",
    add_arguments=add_arguments,
    run=run,
)
