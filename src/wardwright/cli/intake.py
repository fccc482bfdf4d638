"""`wardwright intake`: bring a house in from a building file, a drawing or notes."""

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

NOTED = "Does not quite fit together, noted; it stops no answer"
NOTED_AT_MOST = 5
"""How many imperfections are listed before it is said how many more there are. [-]"""
OTHER_FORMS = frozenset(
    (
        ".dwg", ".gif", ".ifcxml", ".ifczip", ".jpeg", ".jpg", ".pdf", ".pln", ".png", ".rvt", ".skp", ".zip",
    )
)  # fmt: skip
"""Endings of drawings and pictures that people have of a house."""
IN_NOTES = "Export the building as IFC or its plan as DXF, or describe the house in notes (docs/notes.md)"
UNITS = ("mm", "cm", "m", "inch", "foot")


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    parser.add_argument(
        "file",
        metavar="FILE",
        help="a building file (.ifc), the plan of one storey (.dxf), or notes on a house",
    )
    parser.add_argument(
        "--notes",
        metavar="NOTES",
        help="notes that add people, kit and facts to the building file or drawing",
    )
    parser.add_argument(
        "--premises",
        metavar="P",
        help="which of the building's premises is ours, such as A; its whole by default",
    )
    parser.add_argument(
        "--unit",
        choices=UNITS,
        help="what one unit of a drawing is; by default it is found out from what is drawn",
    )
    parser.add_argument(
        "-o", "--output", metavar="SITE", required=True, help="the site document to write (JSON)"
    )
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Bring the house in, write its document, and say what was read, guessed and left out."""
    catalogue = catalogue_from(arguments.sheet)
    refuse_own_input(arguments)
    site, report = house_from(arguments, catalogue)
    from wardwright.model.validation import problems, sound
    from wardwright.questions.worth_adding import worth_adding
    from wardwright.store.reports import keep_report, report_place
    from wardwright.store.sites import write_site

    sound(site, where=arguments.file, catalogue=catalogue)  # nothing is written that would be refused later
    output = Path(arguments.output)
    write_site(output, site)
    keep_report(output, report)
    print(brought_in(site, report, with_notes=arguments.notes is not None))
    noted = [f"{one.where}: {one.what}. {one.cure}." for one in problems(site, catalogue)]
    for heading, facts in ((NOTED, briefly(noted)), ("Worth adding first", worth_adding(site, catalogue))):
        if facts:
            print("\n".join(listed(heading, facts)))
    kept = f", and this report beside it: {report_place(output)}" if report is not None else ""
    print(f"\nWritten: {output}{kept}")
    return FINE


def house_from(arguments: Namespace, catalogue: Catalogue) -> tuple[Site, IntakeReport | None]:
    """The site that the files describe, and what a building file's reader has to report."""
    from wardwright.intake.notes.reading import read_notes
    from wardwright.store.texts import read_notes_text

    path = Path(arguments.file)
    refuse_other_forms(path)
    ending = path.suffix.lower()
    refuse_idle_options(arguments, ending)
    site: Site | None
    if ending in (".ifc", ".dxf"):
        from wardwright.store.limited import read_dxf_limited, read_ifc_limited

        with progress(f"reading {path.name}"):
            if ending == ".ifc":
                site, report = read_ifc_limited(path, arguments.premises)
            else:
                site, report = read_dxf_limited(path, arguments.unit)
    else:
        site, report = read_notes(read_notes_text(path), where=str(path), catalogue=catalogue), None
    if arguments.notes is not None:
        notes = Path(arguments.notes)
        site = read_notes(read_notes_text(notes), where=str(notes), base=site, catalogue=catalogue)
    assert site is not None  # noqa: S101 - both ways above give one
    return site, report


def refuse_idle_options(arguments: Namespace, ending: str) -> None:
    """Refuse options that say nothing of a file of this form."""
    if arguments.premises is not None and ending != ".ifc":
        raise InputError(
            "--premises is for building files only",
            where="command line",
            cure="Leave it out, and say in the notes which spaces are ours",
        )
    if arguments.unit is not None and ending != ".dxf":
        raise InputError(
            "--unit is for drawings only",
            where="command line",
            cure="Leave it out: a building file and notes say their units themselves",
        )


def refuse_other_forms(path: Path) -> None:
    """Refuse files that are, by their name, neither a building file nor notes."""
    ending = path.suffix.lower()
    if ending in OTHER_FORMS:
        raise InputError(
            f"a {ending} file is neither a building file (.ifc), a drawing (.dxf) nor notes",
            where=str(path),
            cure=IN_NOTES,
        )
    if ending == ".json":
        raise InputError(
            "a .json file is neither a building file (.ifc), a drawing (.dxf) nor notes",
            where=str(path),
            cure="If it is a site document it is brought in already: give it to ask, check or papers",
        )


def refuse_own_input(arguments: Namespace) -> None:
    """Refuse to write the site document over what it is made from."""
    output = Path(arguments.output)
    for given in filter(None, (arguments.file, arguments.notes, *arguments.sheet)):
        if output.exists() and Path(given).exists() and output.samefile(given):
            raise InputError(
                "the site document would be written over what it is made from",
                where=str(output),
                cure="Name another file after -o",
            )


def brought_in(site: Site, report: IntakeReport | None, *, with_notes: bool = False) -> str:
    """What was brought in, as lines for the terminal; what was guessed may be told by notes since."""
    from wardwright.store.bringing_in import contents_of

    lines = [f"{site.name}: {', '.join(contents_of(site))}"]
    sections: tuple[tuple[str, tuple[str, ...]], ...] = ()
    if report is not None:
        sections = (
            ("Read", report.read),
            ("Guessed, before the notes" if with_notes else "Guessed", report.guessed),
            ("Left out", report.left_out),
            ("Odd about the house as drawn", report.oddities),
        )
    for heading, facts in sections:
        lines += listed(heading, facts)
    return "\n".join(lines)


def briefly(facts: Sequence[str]) -> list[str]:
    """The first few facts, and how many more there are."""
    more = len(facts) - NOTED_AT_MOST
    return [*facts[:NOTED_AT_MOST], *([f"and {more} more"] if more > 0 else [])]


def listed(heading: str, facts: Sequence[str]) -> list[str]:
    """Lines of a heading and its facts; none where there are none."""
    if not facts:
        return []
    return ["", f"{heading}:", *(f"{number:3}. {fact}" for number, fact in enumerate(facts, 1))]


COMMAND = Command(
    name="intake",
    summary="bring a house in from a building file, a drawing or notes",
    description="Bring a house in from a building file (IFC), from the plan of one storey (DXF) or from notes, and "
    "write its site document. It says what was read, what was guessed and what was left out, and which facts are "
    "worth adding first.",
    add_arguments=add_arguments,
    run=run,
)
