"""Backups of a job, jobs restored from them, and jobs forgotten."""

from __future__ import annotations

import os
import sqlite3
from pathlib import Path

from wardwright.errors import JobError
from wardwright.store.jobs.files import draft_of
from wardwright.store.jobs.job import Job
from wardwright.store.jobs.opening import open_job

BLOCK_BYTES = 1 << 20


def back_up(job: Job, to: Path) -> None:
    """Copy a job, as it is now, into another file: whole or not at all.

    Parameters
    ----------
    job : Job
        The job; it stays open.
    to : Path
        Where to; nothing may stand there.

    Raises
    ------
    JobError
        If something stands there, or it cannot be written.
    """
    if to.exists():
        raise JobError("there is something of that name already", where=str(to), cure="Name a new file")
    draft = to.with_name(f".{to.name}.part")
    try:
        draft.unlink(missing_ok=True)
        draft.touch(mode=0o600)
        copy = sqlite3.connect(draft, isolation_level=None)
        try:
            job.base.backup(copy)
        finally:
            copy.close()
        _to_the_disk(draft)
        draft.replace(to)
    except (OSError, sqlite3.Error) as fault:
        draft.unlink(missing_ok=True)
        raise JobError(
            f"the backup cannot be written ({fault})",
            where=str(to),
            cure="Check that the folder is there and has room",
        ) from None


def restore(backup: Path, to: Path) -> None:
    """Make a job of a backup, once it is found to be whole and its newest site to be readable.

    Parameters
    ----------
    backup : Path
        What `back_up` wrote; left as it is.
    to : Path
        Where to; nothing may stand there.

    Raises
    ------
    JobError
        If the backup is damaged, or something stands there.
    """
    with open_job(backup) as job:
        job.site()
        back_up(job, to)


def forget(path: Path) -> None:
    """Erase a job: its file is written over, then taken away.

    Copies that were made of it elsewhere, and what a disk keeps of old blocks by itself, are out of reach.

    Parameters
    ----------
    path : Path
        The job.

    Raises
    ------
    JobError
        If it is no job, is open elsewhere, or cannot be erased.
    """
    open_job(path).close()
    try:
        draft = draft_of(path)  # left by a program that was killed
        for one in (
            path,
            path.with_name(f"{path.name}-journal"),
            draft,
            draft.with_name(f"{draft.name}-journal"),
        ):
            if one.exists():
                _write_over(one)
                one.unlink()
    except OSError as fault:
        raise JobError(
            f"the job cannot be erased ({fault.strerror})",
            where=str(path),
            cure="Check that you may write there",
        ) from None


def _write_over(path: Path) -> None:
    with path.open("r+b") as file:
        left = path.stat().st_size
        while left > 0:
            left -= file.write(bytes(min(BLOCK_BYTES, left)))
        file.flush()
        os.fsync(file.fileno())


def _to_the_disk(path: Path) -> None:
    with path.open("rb") as file:
        os.fsync(file.fileno())
