"""`wardwright demo`: the main job on a sample house."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from wardwright.cli.command import FINE, Command
from wardwright.cli.given import catalogue_from
from wardwright.cli.intake import brought_in
from wardwright.cli.papers import fitter_files, write_fitter_copy
from wardwright.cli.progress import progress

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.questions.answer import Answer
    from wardwright.rules.finding import Finding

FOLDER = "demo"
SAMPLE = "terrace"


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    parser.add_argument(
        "-o", "--output", metavar="FOLDER", default=FOLDER, help=f"where to; {FOLDER} here by default"
    )


def run(arguments: Namespace) -> int:
    """Bring a sample house in, ask it, check it, draw it, and say where to look."""
    from wardwright.intake.notes import read_notes
    from wardwright.questions.table import ask
    from wardwright.rules.table import check
    from wardwright.store.folders import write_folder
    from wardwright.store.samples import sample_notes
    from wardwright.store.sites import read_site, write_site

    folder, catalogue, text = Path(arguments.output), catalogue_from(()), sample_notes(SAMPLE)
    notes, document = folder / f"{SAMPLE}.notes", folder / f"{SAMPLE}.json"
    write_folder(folder, {notes.name: text.encode()})
    write_site(document, read_notes(text, where=str(notes), catalogue=catalogue))
    site = read_site(document, catalogue)
    print(f"1. Brought in a sample house, invented, from its notes: {notes}\n   {brought_in(site, None)}")
    with progress("asking the house"):
        answers = ask(site, catalogue)
    print(f"2. Asked it: {asked(answers)}")
    findings = check(site, catalogue)
    print(f"3. Checked it: {checked(findings)}")
    with progress("drawing it"):
        files = fitter_files(site, catalogue, answers=answers, findings=findings)
    page = write_fitter_copy(folder, files)
    print(f"4. Drew it: {page}")
    print(f"\nOpen {page} in a browser: the plan, the answers worst first, what would mend them.")
    print(f"Then change a line of {notes} and go round again:")
    print(f"   wardwright intake {notes} -o {document}")
    print(f"   wardwright ask {document} 1")
    print(f"   wardwright check {document}")
    return FINE


def asked(answers: tuple[Answer, ...]) -> str:
    """How the answers came out, in one line, and the worst of them under it."""
    counts = {
        word: sum(answer.verdict == word for answer in answers) for word in ("bad", "thin", "unknown", "good")
    }
    line = f"{len(answers)} answers: " + ", ".join(
        f"{count} {word}" for word, count in counts.items() if count
    )
    worst = next((answer for answer in answers if answer.estimate is not None), None)
    if worst is None or worst.estimate is None:
        return line
    one = worst.estimate
    span = f"{one.value:.1f} {one.unit} (between {one.low:.1f} and {one.high:.1f})"
    return f"{line}\n   Worst: {worst.subject}, {worst.measure}: {span}"


def checked(findings: tuple[Finding, ...]) -> str:
    """How the rules came out, in one line, and the first that must be mended under it."""
    words = ("must mend", "advise", "check with the standard", "not run")
    counts = {word: sum(finding.severity == word for finding in findings) for word in words}
    line = f"{len(findings)} findings: " + ", ".join(
        f"{count} {word}" for word, count in counts.items() if count
    )
    first = next((finding for finding in findings if finding.severity == "must mend"), None)
    return line if first is None else f"{line}\n   Must be mended: {first.message}. {first.cure}."


COMMAND = Command(
    name="demo",
    summary="the main job on a sample house",
    description="Bring a sample house in from its notes, ask it, check it, draw it, and say where to look.",
    add_arguments=add_arguments,
    run=run,
)
