"""Opening a job file: that it is one, that it is whole, and that nobody else has it open."""

from __future__ import annotations

import os
import sqlite3
from contextlib import suppress
from pathlib import Path
from typing import NoReturn

from wardwright.errors import JobError
from wardwright.store.jobs.tables import APPLICATION_ID, brought_up
from wardwright.store.texts import settle

ENDING = ".job"
"""How the name of a job file ends."""


def made(path: Path) -> sqlite3.Connection:
    """Make an empty job file; only its owner may read it.

    Parameters
    ----------
    path : Path
        Where; nothing may stand there. Folders that are missing are made.

    Returns
    -------
    sqlite3.Connection
        The file, opened for this program alone.

    Raises
    ------
    JobError
        If something stands there already, or it cannot be made.
    """
    try:
        with suppress(FileExistsError):  # a file in the place of the folder: the next line says so
            path.parent.mkdir(parents=True, exist_ok=True)
        path.touch(mode=0o600, exist_ok=False)
    except FileExistsError:
        raise _taken(path) from None
    except OSError as fault:
        raise _not_made(path, fault) from None
    try:
        base = _connected(path)
        brought_up(base, where=str(path))
    except BaseException:
        path.unlink(missing_ok=True)
        raise
    return base


def draft_of(path: Path) -> Path:
    """Where a job is made before it is whole; no list of jobs shows it."""
    return path.with_name(f".{path.name}.part")


def refuse_taken(path: Path) -> None:
    """Raise JobError if something of that name stands there already."""
    if path.exists():
        raise _taken(path)


def put_in_place(draft: Path, path: Path) -> None:
    """Give a whole job its name, on the disk too, without writing over anything.

    Parameters
    ----------
    draft : Path
        Where it was made; nobody has it open.
    path : Path
        Where it goes.

    Raises
    ------
    JobError
        If something stands there, or it cannot be done.
    """
    try:
        try:
            # Unlike a renaming, a second name is refused where something came to stand meanwhile.
            os.link(draft, path)
            draft.unlink()
        except FileExistsError:
            raise
        except OSError:  # a disk that knows no second names
            refuse_taken(path)
            draft.rename(path)
        settle(path.parent)
    except FileExistsError:
        raise _taken(path) from None
    except OSError as fault:
        raise _not_made(path, fault) from None


def _taken(path: Path) -> JobError:
    return JobError(
        "there is something of that name already", where=str(path), cure="Give the job another name"
    )


def _not_made(path: Path, fault: OSError) -> JobError:
    return JobError(
        f"the job cannot be made ({fault.strerror})",
        where=str(path),
        cure="Check the folder, and who may write to it",
    )


def opened(path: Path) -> sqlite3.Connection:
    """Open a job file for this program alone, once it is found to be whole.

    Parameters
    ----------
    path : Path
        The file.

    Returns
    -------
    sqlite3.Connection
        The file; every transaction of it is on the disk before it counts.

    Raises
    ------
    JobError
        If it is no job, is damaged, is open elsewhere, or cannot be read.
    """
    where = str(path)
    if not path.is_file():
        raise JobError("there is no such job", where=where, cure="Check the name, or make it with 'job new'")
    base: sqlite3.Connection | None = None
    try:
        base = _connected(path)
        _refuse_unsound(base, where=where)
        brought_up(base, where=where)
    except sqlite3.OperationalError as fault:
        _close(base)
        _refuse(fault, where=where)
    except sqlite3.DatabaseError:
        _close(base)
        raise JobError(
            "this is no job file, or it is damaged", where=where, cure="Restore a backup of it"
        ) from None
    except BaseException:
        _close(base)
        raise
    return base


def copies_beside(path: Path, job_id: str) -> tuple[Path, ...]:
    """Other files of the folder that hold the same job: what a folder kept alike on two machines leaves behind.

    Parameters
    ----------
    path : Path
        The job's own file.
    job_id : str
        Its identity.

    Returns
    -------
    tuple of Path
        By name; files that cannot be read now are left out.
    """
    found = []
    for other in sorted(path.parent.iterdir()):
        if other == path or not other.is_file() or ENDING not in other.name:
            continue
        with suppress(sqlite3.Error):
            base = sqlite3.connect(f"{other.absolute().as_uri()}?mode=ro", uri=True, timeout=0.0)
            try:
                row = base.execute("SELECT value FROM job WHERE key = 'id'").fetchone()
            finally:
                base.close()
            if row == (job_id,):
                found.append(other)
    return tuple(found)


def _connected(path: Path) -> sqlite3.Connection:
    base = sqlite3.connect(path, timeout=0.2, isolation_level=None, check_same_thread=False)
    # One program at a time: two that write one job would each be sure of what the other undoes.
    base.execute("PRAGMA locking_mode = EXCLUSIVE")
    base.execute("PRAGMA journal_mode = DELETE")
    base.execute("PRAGMA synchronous = EXTRA")
    base.execute("PRAGMA foreign_keys = ON")
    base.execute("PRAGMA secure_delete = ON")
    # Takes the lock now, not at the first edit.
    base.execute("BEGIN EXCLUSIVE")
    base.execute("COMMIT")
    return base


def _refuse_unsound(base: sqlite3.Connection, *, where: str) -> None:
    if base.execute("PRAGMA application_id").fetchone() != (APPLICATION_ID,):
        raise JobError("this is no job file", where=where, cure="Name a file that 'job new' made")
    found = base.execute("PRAGMA quick_check(1)").fetchone()
    if found != ("ok",):
        raise JobError(
            f"the job file is damaged ({found[0]})", where=where, cure="Restore a backup with 'job restore'"
        )


def _close(base: sqlite3.Connection | None) -> None:
    if base is not None:
        base.close()


def _refuse(fault: sqlite3.OperationalError, *, where: str) -> NoReturn:
    if "locked" in str(fault):
        raise JobError(
            "the job is open in another program", where=where, cure="Close it there first, or work there"
        ) from None
    raise JobError(
        f"the job cannot be opened ({fault})", where=where, cure="Check that it may be read"
    ) from None
