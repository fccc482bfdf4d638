"""`wardwright job`: jobs on the disk, each one file with all its revisions."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Callable, Mapping
from pathlib import Path

from wardwright.cli.command import FINE, Command, add_sheets
from wardwright.cli.given import catalogue_from, site_from

REVISIONS_SHOWN = 15


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    verbs = parser.add_subparsers(metavar="VERB", required=True, dest="verb")
    new = verbs.add_parser("new", help="make a job of a site document")
    new.add_argument("site", metavar="SITE", help="a site document, or sample:NAME")
    new.add_argument(
        "job",
        metavar="JOB",
        help="the job file to make, such as jobs/house.job; a folder that is missing is made",
    )
    add_sheets(new)
    listing = verbs.add_parser("list", help="list the jobs of a folder")
    listing.add_argument(
        "folder", metavar="FOLDER", nargs="?", default=".", help="the folder; this one by default"
    )
    show = verbs.add_parser("open", help="open a job: check that it is whole, and show its last revisions")
    show.add_argument("job", metavar="JOB")
    export = verbs.add_parser("export", help="write a job's site as a site document")
    export.add_argument("job", metavar="JOB")
    export.add_argument(
        "--revision", type=int, metavar="N", help="as it was at that revision; the newest by default"
    )
    export.add_argument("-o", "--output", metavar="SITE", required=True, help="the site document to write")
    sign = verbs.add_parser(
        "sign", help="keep the answers of a job's newest revision as signed: what was ordered, say"
    )
    sign.add_argument("job", metavar="JOB")
    sign.add_argument("--author", metavar="NAME", required=True, help="who signs: a name, or a role")
    sign.add_argument(
        "--what", metavar="TEXT", default="", help="what is signed, such as 'the design as ordered'"
    )
    add_sheets(sign)
    backup = verbs.add_parser("backup", help="copy a job, whole or not at all")
    backup.add_argument("job", metavar="JOB")
    backup.add_argument("to", metavar="BACKUP")
    back = verbs.add_parser("restore", help="make a job of a backup")
    back.add_argument("backup", metavar="BACKUP")
    back.add_argument("to", metavar="JOB")
    gone = verbs.add_parser("forget", help="erase a job: its file is written over and taken away")
    gone.add_argument("job", metavar="JOB")


def run(arguments: Namespace) -> int:
    """Do what the verb asks."""
    _VERBS[arguments.verb](arguments)
    return FINE


def _new(arguments: Namespace) -> None:
    from wardwright.store.jobs.opening import new_job

    site = site_from(arguments.site, catalogue_from(arguments.sheet))
    with new_job(Path(arguments.job), site):
        print(f"{arguments.job}: {site.name}, revision 1")


def _list(arguments: Namespace) -> None:
    from wardwright.errors import InputError, JobError
    from wardwright.store.jobs.files import ENDING
    from wardwright.store.jobs.opening import open_job

    folder = Path(arguments.folder)
    if not folder.is_dir():
        raise InputError("there is no such folder", where=str(folder), cure="Name a folder that holds jobs")
    found = sorted(folder.glob(f"*{ENDING}"))
    for path in found:
        try:
            with open_job(path) as job:
                newest = job.history()[0]
                print(f"{path.name}: {job.site().name}, revision {newest.number}, {newest.at[:10]}")
        except JobError as fault:
            print(f"{path.name}: {fault.what}")
    if not found:
        print(f"no job in {folder}")


def _open(arguments: Namespace) -> None:
    from wardwright.store.jobs.files import copies_beside
    from wardwright.store.jobs.opening import open_job

    path = Path(arguments.job)
    with open_job(path) as job:
        print(f"{path.name}: {job.site().name}; the file is whole")
        history = job.history()
        for one in history[:REVISIONS_SHOWN]:
            print(f"  {one.number:>5}  {one.at[:16].replace('T', ' ')}  {one.author}: {one.what}")
        if len(history) > REVISIONS_SHOWN:
            print(f"  and {len(history) - REVISIONS_SHOWN} before")
        for copy in copies_beside(path, job.job_id):
            print(
                f"  Note: {copy.name} holds the same job. A folder that is kept alike on several machines makes such"
            )
            print("  copies when both are worked on: keep jobs out of it, and bring work together by hand.")


def _export(arguments: Namespace) -> None:
    from wardwright.store.jobs.opening import open_job
    from wardwright.store.sites import write_site

    with open_job(Path(arguments.job)) as job:
        write_site(Path(arguments.output), job.site(arguments.revision))
    print(f"wrote {arguments.output}")


def _sign(arguments: Namespace) -> None:
    from wardwright import __version__
    from wardwright.cli.progress import progress
    from wardwright.questions.table import ask
    from wardwright.rules.table import check
    from wardwright.store.jobs.opening import open_job
    from wardwright.store.jobs.signatures import refuse_words, sign, to_sign_of

    catalogue = catalogue_from(arguments.sheet)
    with open_job(Path(arguments.job)) as job:
        refuse_words(job, author=arguments.author, what=arguments.what)
        revision = job.newest
        site = job.site(revision)
        with progress("asking the house"):
            answers, findings = ask(site, catalogue), check(site, catalogue)
        number = sign(
            job,
            to_sign_of(
                site,
                catalogue,
                revision=revision,
                program=__version__,
                answers=answers,
                findings=findings,
            ),
            author=arguments.author.strip(),
            what=arguments.what.strip(),
        )
    print(
        f"{arguments.job}: revision {revision} signed by {arguments.author.strip()} as number {number}; "
        f"{len(answers)} answers and {len(findings)} findings are kept with it"
    )


def _backup(arguments: Namespace) -> None:
    from wardwright.store.jobs.opening import open_job
    from wardwright.store.jobs.upkeep import back_up

    with open_job(Path(arguments.job)) as job:
        back_up(job, Path(arguments.to))
    print(f"wrote {arguments.to}")


def _restore(arguments: Namespace) -> None:
    from wardwright.store.jobs.upkeep import restore

    restore(Path(arguments.backup), Path(arguments.to))
    print(f"wrote {arguments.to}")


def _forget(arguments: Namespace) -> None:
    from wardwright.store.jobs.upkeep import forget

    forget(Path(arguments.job))
    print(f"{arguments.job} is erased. Backups and copies elsewhere are not: erase them too.")


_VERBS: Mapping[str, Callable[[Namespace], None]] = {
    "new": _new,
    "list": _list,
    "open": _open,
    "export": _export,
    "sign": _sign,
    "backup": _backup,
    "restore": _restore,
    "forget": _forget,
}

COMMAND = Command(
    name="job",
    summary="jobs: one file each, with every revision of its house",
    description="Keep a house with all its revisions in one file; the file is a plan of how to get into somebody's "
    "home: it stays on this machine.",
    add_arguments=add_arguments,
    run=run,
)
