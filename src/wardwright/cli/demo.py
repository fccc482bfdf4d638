"""`wardwright demo`: the main job on a sample house."""

from __future__ import annotations

import os
import shutil
import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from wardwright.cli.command import FINE, Command
from wardwright.cli.given import catalogue_from
from wardwright.cli.intake import brought_in
from wardwright.cli.papers import check_folder, papers, write
from wardwright.cli.progress import progress
from wardwright.cli.serve import serve

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
    parser.add_argument(
        "--no-browser", action="store_true", help="write the papers only; do not open the app afterwards"
    )


def run(arguments: Namespace) -> int:
    """Bring a sample house in, ask it, check it, draw it, and say where to look."""
    from wardwright.intake.notes.reading import read_notes
    from wardwright.model.validation import sound
    from wardwright.questions.table import ask
    from wardwright.rules.table import check
    from wardwright.store.sites import read_site, write_site

    folder, catalogue = Path(arguments.output), catalogue_from(())
    notes, document = folder / f"{SAMPLE}.notes", folder / f"{SAMPLE}.json"
    text, told = notes_for(notes)
    house = read_notes(text, where=str(notes), catalogue=catalogue)
    write_site(document, sound(house, where=str(notes), catalogue=catalogue))
    site = read_site(document, catalogue)
    check_folder(folder, site)
    print(
        f"1. Brought in a sample house, invented, from its notes{told}: {notes}\n   {brought_in(site, None)}"
    )
    with progress("asking the house"):
        answers = ask(site, catalogue)
    print(f"2. Asked it: {asked(answers)}")
    findings = check(site, catalogue)
    print(f"3. Checked it: {checked(findings)}")
    with progress("drawing it"):
        files = papers(site, catalogue, answers=answers, findings=findings)
    page = write(folder, files)
    print(f"4. Drew it: {page}")
    start = "wardwright" if shutil.which("wardwright") else f"{os.path.relpath(sys.executable)} -m wardwright"
    print(f"\nOpen {page} in a browser: the plan, the answers worst first, what would mend them.")
    print(f"Then change a line of {notes} and go round again:")
    print(f"   {start} intake {notes} -o {document}")
    print(f"   {start} ask {document} 1")
    print(f"   {start} check {document}")
    job = job_of(folder, document)
    if arguments.no_browser or not sys.stdout.isatty():
        print(f"The same house in the app: {start} serve {folder}")
        return FINE
    serve(Namespace(sheet=[], port=0, no_browser=False, job=job.name), folder)
    return FINE


def job_of(folder: Path, document: Path) -> Path:
    """The sample as a job, made where there is none yet."""
    from wardwright.store.jobs.opening import new_job
    from wardwright.store.sites import read_site

    job = folder / f"{SAMPLE}.job"
    if not job.exists():
        new_job(job, read_site(document)).close()
    return job


def notes_for(place: Path) -> tuple[str, str]:
    """The notes of the sample, written where they are not yet; those that were changed there are kept.

    What is to be said of them comes second.
    """
    from wardwright.store.folders import write_folder
    from wardwright.store.samples import sample_notes
    from wardwright.store.texts import read_notes_text

    text = sample_notes(SAMPLE)
    if not place.exists():
        write_folder(place.parent, {place.name: text.encode()})
        return text, ""
    found = read_notes_text(place)
    return found, "" if found == text else " as you changed them (take the file away for the sample afresh)"


def asked(answers: tuple[Answer, ...]) -> str:
    """How the answers came out, in one line, and the worst of them under it."""
    from wardwright.documents.content.not_counted import counted, not_counted
    from wardwright.documents.content.quantities import with_range
    from wardwright.documents.content.wording import VERDICTS

    told = counted(answers)
    counts = {words: sum(one.verdict == verdict for one in told) for verdict, (words, _) in VERDICTS.items()}
    line = f"{len(told)} answers: " + ", ".join(
        f"{count} {words}" for words, count in counts.items() if count
    )
    apart = not_counted(answers)
    if apart is not None:
        line += f"; {apart.heading}"
    worst = next((answer for answer in answers if answer.estimate is not None), None)
    if worst is None or worst.estimate is None:
        return line
    return f"{line}\n   Worst: {worst.subject}, {worst.measure}: {with_range(worst.estimate, is_plain=True)}"


def checked(findings: tuple[Finding, ...]) -> str:
    """How the rules came out, in one line, and the first that must be mended under it."""
    from wardwright.documents.content.wording import FINDING_GROUPS

    counts = {
        words: sum(("accepted" if one.accepted else one.severity) == key for one in findings)
        for key, (words, _) in FINDING_GROUPS.items()
    }
    counts.pop(FINDING_GROUPS["not run"][0])
    not_run = len({one.code for one in findings if one.severity == "not run" and not one.accepted})
    found = sum(counts.values())
    told = ", ".join(f"{count} {words.lower()}" for words, count in counts.items() if count)
    line = f"{found} {'finding' if found == 1 else 'findings'}" + (f": {told}" if told else "")
    if not_run:
        line += f"; {not_run} {'rule' if not_run == 1 else 'rules'} could not be run: that is no pass"
    first = next(
        (finding for finding in findings if finding.severity == "must mend" and not finding.accepted), None
    )
    return line if first is None else f"{line}\n   Must be mended: {first.message}. {first.cure}."


COMMAND = Command(
    name="demo",
    summary="the main job on a sample house",
    description="Bring a sample house in from its notes, ask it, check it, draw it, and say where to look.",
    add_arguments=add_arguments,
    run=run,
)
