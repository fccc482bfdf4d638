"""`wardwright compare`: hold two states of a house against each other."""

from __future__ import annotations

from argparse import ArgumentParser, ArgumentTypeError, Namespace
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from wardwright.cli.command import FINE, SAMPLES, Command, add_sheets, columns
from wardwright.cli.given import JOB, SAMPLE, catalogue_from, site_from
from wardwright.cli.progress import progress
from wardwright.errors import InputError

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.documents.content.side_by_side import SideBySide
    from wardwright.documents.content.signed import ProgramTold
    from wardwright.model.catalogue import Catalogue
    from wardwright.model.site import Site
    from wardwright.questions.compared import State
    from wardwright.store.jobs.signatures import Signed


class _Pair(NamedTuple):
    """Two states, and what they are called."""

    before: Site
    after: Site
    names: tuple[str, str]
    signed: Signed | None = None
    """What was signed of the earlier one, if that is why it is compared."""
    rows: Mapping[str, Any] = {}
    """The rows of data that it was signed on, as far as they were kept."""


def revision(written: str) -> int:
    """Read the number of a revision."""
    try:
        return int(written)
    except ValueError:
        raise ArgumentTypeError(f"'{written}' is not the number of a revision, such as 3") from None


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    parser.add_argument(
        "before",
        metavar="A",
        help="the earlier state: a site document, or a sample (" + ", ".join(SAMPLES) + "); or a job",
    )
    parser.add_argument(
        "after",
        metavar="B",
        nargs="?",
        help="the later state: a site document or a sample; of a job, the number of the earlier revision, the last "
        "one signed by default",
    )
    parser.add_argument(
        "later",
        metavar="C",
        nargs="?",
        type=revision,
        help="of a job: the number of the later revision, the newest by default",
    )
    parser.add_argument("--json", action="store_true", help="print everything as JSON, numbers not rounded")
    parser.add_argument(
        "-o",
        "--output",
        metavar="PAGE",
        help="write a page of it, such as compared.html: both side by side, with a race and the round of tests drawn",
    )
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Compare, and print what differs."""
    _refuse_ending(arguments.output)
    catalogue = catalogue_from(arguments.sheet)
    pair = _given(arguments, catalogue)
    from wardwright.documents.content.comparison import comparison
    from wardwright.documents.content.side_by_side import side_by_side
    from wardwright.documents.writers.comparison_text import comparison_json, comparison_text
    from wardwright.documents.writers.text import WIDTH
    from wardwright.questions.changes_since import changes_since
    from wardwright.questions.compared import State
    from wardwright.questions.table import ask
    from wardwright.rules.table import check

    with progress("asking both states of the house"):
        before, after = (
            State(site, ask(site, catalogue), check(site, catalogue)) for site in (pair.before, pair.after)
        )
        found = changes_since(before, after, catalogue)
    told = comparison(before, after, catalogue, found=found)
    program = _program(pair, before, catalogue)
    if arguments.output is not None:
        _page(
            Path(arguments.output),
            side_by_side(before, after, catalogue, found=found, told=told, names=pair.names, program=program),
        )
        return FINE
    if arguments.json:
        print(comparison_json(found, told, program=program), end="")
    else:
        print(comparison_text(told, names=pair.names, program=program, width=columns(WIDTH)), end="")
    return FINE


def _refuse_ending(output: str | None) -> None:
    """Raise InputError for a page that is no HTML, before anything is worked out."""
    if output is not None and Path(output).suffix.lower() not in (".html", ".htm"):
        raise InputError("a page is written as HTML", where=output, cure="Give it a name that ends in .html")


def _page(path: Path, page: SideBySide) -> None:
    from wardwright.documents.writers.side_by_side_html import write_side_by_side
    from wardwright.store.texts import write_text

    write_text(path, write_side_by_side(page), fault=InputError)
    print(f"wrote {path}: for you alone, it tells how to get in")


def _program(pair: _Pair, before: State, catalogue: Catalogue) -> ProgramTold | None:
    """What the program gives otherwise than when it was signed; None where nothing was signed."""
    if pair.signed is None:
        return None
    from wardwright import __version__
    from wardwright.documents.content.program_told import Stand, told_program
    from wardwright.documents.content.signed import ProgramTold, different_answers
    from wardwright.questions.as_signed import by_key, compared, read_answers, read_findings
    from wardwright.store.jobs.signatures import digest_of

    one, again = pair.signed, (by_key(before.answers), by_key(before.findings))
    differ = (
        *compared(read_answers(one.answers), again[0], again[0]),
        *compared(read_findings(one.findings), again[1], again[1]),
    )
    return ProgramTold(
        what=told_program(
            Stand(one.program, one.catalogue, pair.rows),
            Stand(__version__, digest_of(catalogue), catalogue.model_dump(mode="json")),
        ),
        answers=different_answers(differ, catalogue, then=before.site, now=before.site),
    )


def _given(arguments: Namespace, catalogue: Catalogue) -> _Pair:
    if Path(arguments.before).suffix.lower() == JOB:
        return _of_job(arguments)
    if arguments.after is None or arguments.later is not None:
        raise InputError(
            "two states of a house are compared",
            where="command line",
            cure="Name two site documents or samples, or one job with the numbers of two revisions",
        )
    first, second = (
        site_from(one if one not in SAMPLES or Path(one).exists() else SAMPLE + one, catalogue)
        for one in (arguments.before, arguments.after)
    )
    return _Pair(first, second, (arguments.before, arguments.after))


def _of_job(arguments: Namespace) -> _Pair:
    from wardwright.store.jobs.opening import open_job
    from wardwright.store.jobs.signatures import rows_signed, signed

    with open_job(Path(arguments.before)) as job:
        if arguments.after is None:
            names = signed(job)
            if not names:
                raise InputError(
                    "nothing was signed in this job, so there is no earlier state to hold it against",
                    where=arguments.before,
                    cure="Name the number of an earlier revision: 'wardwright job open' lists them",
                )
            one = names[-1]
            rows = rows_signed(job, one.catalogue)
            return _Pair(
                job.site(one.revision),
                job.site(),
                (
                    f"{Path(arguments.before).name}, revision {one.revision} as signed",
                    f"revision {job.newest}",
                ),
                one,
                rows,
            )
        try:
            earlier = revision(arguments.after)
        except ArgumentTypeError as fault:
            raise InputError(
                str(fault), where="command line", cure="Name two revisions of the job by their numbers"
            ) from None
        later = job.newest if arguments.later is None else arguments.later
        name = Path(arguments.before).name
        return _Pair(job.site(earlier), job.site(later), (f"{name}, revision {earlier}", f"revision {later}"))


COMMAND = Command(
    name="compare",
    summary="hold two states of a house against each other",
    description="Hold two states of a house against each other: what changed in it, which answers fail now, which "
    "no more, which moved beyond the range that they had, which rules fail now, and which tests must be repeated, in "
    "the shortest walking order with minutes. For the fitter alone: it tells how to get in.",
    add_arguments=add_arguments,
    run=run,
)
