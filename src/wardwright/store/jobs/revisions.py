"""The rows of a job's revisions: written, read and asked about. The caller holds the lock and the transaction."""

from __future__ import annotations

import hashlib
import sqlite3
import zlib
from collections.abc import Iterable
from datetime import UTC, datetime
from typing import NamedTuple

from wardwright.errors import JobError
from wardwright.model.document import read_document, write_document
from wardwright.model.site import Site

COMPRESSION = 6
"""Of documents in the file: 9 saves a few percent and takes twice as long. [-]"""


class Revision(NamedTuple):
    """One revision of a job, without its site."""

    number: int
    author: str
    at: str
    """When, by the clock of the machine that kept it (UTC, ISO 8601)."""
    what: str
    """What was done, in a few words."""
    undoes: int | None
    """The revision that it took back."""


class NewRevision(NamedTuple):
    """One revision that is to be kept."""

    number: int
    edit: str
    author: str
    base: int
    what: str
    undoes: int | None
    site: Site


def now() -> str:
    """The moment, as the file has it."""
    return datetime.now(tz=UTC).isoformat(timespec="milliseconds")


def newest(base: sqlite3.Connection) -> int:
    """The number of the newest revision."""
    (number,) = base.execute("SELECT max(number) FROM revision").fetchone()
    return int(number)


def write(base: sqlite3.Connection, new: NewRevision, touched: Iterable[str] = ()) -> None:
    """Write one revision, and the things that it touched."""
    text = write_document(new.site).encode()
    packed, digest = zlib.compress(text, COMPRESSION), hashlib.sha256(text).hexdigest()
    base.execute(
        "INSERT INTO revision VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        (new.number, new.edit, new.author, new.base, now(), new.what, new.undoes, packed, digest),
    )
    base.executemany("INSERT INTO touched VALUES (?, ?)", [(new.number, key) for key in sorted(touched)])


def read(base: sqlite3.Connection, number: int, *, where: str) -> Site:
    """The site of one revision; JobError if there is none, or what stands there is damaged."""
    row = base.execute("SELECT site, sha256 FROM revision WHERE number = ?", (number,)).fetchone()
    if row is None:
        raise JobError(
            f"there is no revision {number}", where=where, cure=f"Name one from 1 to {newest(base)}"
        )
    text = zlib.decompress(row[0])
    if hashlib.sha256(text).hexdigest() != row[1]:
        raise JobError(f"revision {number} is damaged", where=where, cure="Restore a backup of the job")
    return read_document(text.decode(), where=f"{where}, revision {number}")


def history(base: sqlite3.Connection) -> tuple[Revision, ...]:
    """All revisions, newest first."""
    rows = base.execute("SELECT number, author, at, what, undoes FROM revision ORDER BY number DESC")
    return tuple(Revision(*row) for row in rows.fetchall())


def made_by(base: sqlite3.Connection, edit: str) -> int | None:
    """The revision that an edit made; None if it has not come yet."""
    row = base.execute("SELECT number FROM revision WHERE edit = ?", (edit,)).fetchone()
    return None if row is None else int(row[0])


def what_of(base: sqlite3.Connection, number: int) -> str:
    """What was done in one revision."""
    row = base.execute("SELECT what FROM revision WHERE number = ?", (number,)).fetchone()
    return str(row[0])


def last_to_take_back(base: sqlite3.Connection, author: str) -> int | None:
    """The newest revision of somebody that is neither taken back nor takes one back; None if there is none."""
    row = base.execute(
        "SELECT max(number) FROM revision WHERE author = ? AND undoes IS NULL AND number > 1 "
        "AND number NOT IN (SELECT undoes FROM revision WHERE undoes IS NOT NULL)",
        (author,),
    ).fetchone()
    return None if row[0] is None else int(row[0])


def changed_by_others(
    base: sqlite3.Connection, keys: Iterable[str], *, since: int, author: str
) -> dict[str, str]:
    """Which of some things somebody else changed after a revision, and who."""
    found: dict[str, str] = {}
    for key in keys:
        row = base.execute(
            "SELECT r.author FROM touched t JOIN revision r ON r.number = t.revision "
            "WHERE t.key = ? AND t.revision > ? AND r.author <> ? ORDER BY t.revision DESC LIMIT 1",
            (key, since, author),
        ).fetchone()
        if row is not None:
            found[key] = str(row[0])
    return found
