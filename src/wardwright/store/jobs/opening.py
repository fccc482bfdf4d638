"""Jobs made of a site, and jobs opened."""

from __future__ import annotations

from pathlib import Path
from uuid import uuid4

from wardwright.model.site import Site
from wardwright.store.jobs import files, revisions
from wardwright.store.jobs.job import Job
from wardwright.store.jobs.revisions import NewRevision


def new_job(path: Path, site: Site, *, author: str) -> Job:
    """Make a job of a site: its first revision.

    Parameters
    ----------
    path : Path
        Where; nothing may stand there.
    site : Site
        The site as it comes in.
    author : str
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
    base = files.made(path)
    try:
        base.execute("BEGIN IMMEDIATE")
        base.execute("INSERT INTO job VALUES ('id', ?)", (uuid4().hex,))
        revisions.write(base, NewRevision(1, uuid4().hex, author, 0, "brought in", None, site))
        base.execute("COMMIT")
    except BaseException:
        base.close()
        path.unlink(missing_ok=True)
        raise
    return Job(base, path)


def open_job(path: Path) -> Job:
    """Open a job; JobError if it is none, is damaged, or is open elsewhere."""
    return Job(files.opened(path), path)
