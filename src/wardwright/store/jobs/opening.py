"""Jobs made of a site, and jobs opened."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path
from uuid import uuid4

from wardwright.errors import JobError
from wardwright.model.site import Site
from wardwright.store.jobs import files, revisions
from wardwright.store.jobs.job import Job
from wardwright.store.jobs.revisions import NewRevision

FITTER = "fitter"
"""The author of what is brought in by hand."""


def new_job(path: Path, site: Site, *, author: str = FITTER) -> Job:
    """Make a job of a site, and open it.

    Parameters
    ----------
    path : Path
        Where, with the ending of a job; nothing may stand there. Folders that are missing are made.
    site : Site
        The site as it comes in.
    author : str, default "fitter"
        Who brings it in.

    Returns
    -------
    Job
        The job, open.

    Raises
    ------
    JobError
        If it cannot be made.
    """
    make_job(path, site, author=author)
    return open_job(path)


def make_job(path: Path, site: Site, *, author: str = FITTER) -> None:
    """Make a job of a site: its first revision. It stands there whole or not at all, and nobody has it open.

    Parameters
    ----------
    path, site, author
        As for `new_job`.

    Raises
    ------
    JobError
        If it cannot be made.
    """
    if path.suffix != files.ENDING:
        raise JobError(
            f"the name of a job ends in {files.ENDING}, or it is not found again",
            where=str(path),
            cure=f"Call it {path.name}{files.ENDING}",
        )
    files.refuse_taken(path)
    draft = files.draft_of(path)
    with suppress(OSError):
        draft.unlink(missing_ok=True)  # what a program that was killed left behind
    base = files.made(draft)
    try:
        base.execute("BEGIN IMMEDIATE")
        base.execute("INSERT INTO job VALUES ('id', ?)", (uuid4().hex,))
        revisions.write(base, NewRevision(1, uuid4().hex, author, 0, "brought in", None, site))
        base.execute("COMMIT")
        base.close()
        files.put_in_place(draft, path)
    except BaseException:
        base.close()
        draft.unlink(missing_ok=True)
        raise


def open_job(path: Path) -> Job:
    """Open a job; JobError if it is none, is damaged, or is open elsewhere."""
    return Job(files.opened(path), path)
