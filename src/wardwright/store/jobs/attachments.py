"""What is kept with a job beside its site: pictures, logs, readings. Nothing of it is ever overwritten."""

from __future__ import annotations

import hashlib
import sqlite3
from typing import Literal, NamedTuple

from wardwright.errors import JobError
from wardwright.intake.notes.secrets import holds_code, starred_out
from wardwright.model.wording import is_plain
from wardwright.store.jobs import revisions
from wardwright.store.jobs.job import Job
from wardwright.store.jobs.kinds import READINGS, TEXT, kind_of, text_of

LARGEST_BYTES = 50_000_000
"""An attachment longer than this is refused. [bytes] (assumption)"""
LONGEST_NAME = 200
LONGEST_NOTE = 1000
"""Signs of a name, and of the words beside an attachment. [-] (assumption)"""

What = Literal["removed", "put back"]


class Attachment(NamedTuple):
    """Something attached, without its content."""

    number: int
    name: str
    kind: str
    """A media type, such as `image/jpeg`."""
    about: str
    """Key of the thing that it is about, such as `devices/hall-movement`; empty: the job as a whole."""
    at: str
    sha256: str
    size_bytes: int
    author: str
    note: str
    """What somebody said of it."""
    starred_lines: int
    """On how many lines of its text a code was starred out before it was kept. [-]"""
    removed_at: str
    """When it was taken away; empty where it was not, or was put back since."""
    removed_by: str


def attach(job: Job, content: bytes, *, name: str, about: str = "", note: str = "", author: str = "") -> int:
    """Keep something with a job.

    Parameters
    ----------
    job : Job
        The job.
    content : bytes
        What is kept; codes in a text are starred out before.
    name : str
        What it is called.
    about : str, default ""
        Key of the thing that it is about.
    note : str, default ""
        What is to be said of it.
    author : str, default ""
        Who brings it.

    Returns
    -------
    int
        Its number.

    Raises
    ------
    JobError
        If it is too long or of no kind that is kept, if its name or its note holds a code, or if it cannot be kept.
    """
    refuse_long(job, len(content), name=name)
    _refuse_words(job, name=name, note=note)
    kind = kind_of(content)
    if kind is None:
        raise JobError(
            f"'{name}' is no picture, PDF, text or readings",
            where=str(job.path),
            cure="Attach a JPEG, PNG, GIF, WebP or HEIC picture, a PDF, or text in UTF-8",
        )
    content, starred = without_codes(content) if kind in (TEXT, READINGS) else (content, 0)
    digest = hashlib.sha256(content).hexdigest()
    with job.transaction() as base:
        made = base.execute(
            "INSERT INTO attachment (name, kind, about, at, sha256, content, author, note, starred) "
            "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
            (name, kind, about, revisions.now(), digest, content, author, note, starred),
        )
    return int(made.lastrowid or 0)


def refuse_long(job: Job, size_bytes: int, *, name: str) -> None:
    """Raise JobError if something is too long to be attached."""
    if size_bytes > LARGEST_BYTES:
        raise JobError(
            f"'{name}' is longer than {LARGEST_BYTES // 1_000_000} MB",
            where=str(job.path),
            cure="Attach a smaller picture or a part of the log",
        )


def _refuse_words(job: Job, *, name: str, note: str) -> None:
    where = str(job.path)
    if not name.strip() or len(name) > LONGEST_NAME or not is_plain(name):
        raise JobError(
            "an attachment needs a name that can be shown",
            where=where,
            cure=f"Give it a name of at most {LONGEST_NAME} letters",
        )
    if len(note) > LONGEST_NOTE or not is_plain(note.replace("\n", " ")):
        raise JobError(
            "the note is too long, or holds a sign that cannot be shown",
            where=where,
            cure=f"Say it in at most {LONGEST_NOTE} letters",
        )
    for what, said in (("name", name), ("note", note)):
        if any(holds_code(line) for line in said.splitlines()):
            raise JobError(
                f"the {what} looks as if it held a code or a password, and those are never stored",
                where=where,
                cure="Take the code away, here and from the file",
            )


def without_codes(content: bytes) -> tuple[bytes, int]:
    """A text with codes and passwords starred out, and on how many lines there were any."""
    text = text_of(content) or ""
    kept, starred = [], 0
    for line in text.splitlines(keepends=True):
        plain = starred_out(line)
        starred += plain != line
        kept.append(plain)
    return ("".join(kept).encode(), starred) if starred else (content, 0)


_LISTED = """
    SELECT a.id, a.name, a.kind, a.about, a.at, a.sha256, length(a.content), a.author, a.note, a.starred,
           coalesce(c.at, ''), coalesce(c.author, '')
    FROM attachment a LEFT JOIN attachment_change c
        ON c.id = (SELECT max(id) FROM attachment_change WHERE attachment = a.id) AND c.what = 'removed'
"""


def attachments(job: Job) -> tuple[Attachment, ...]:
    """All that was ever attached, oldest first, with what was taken away since."""
    with job.reading() as base:
        rows = base.execute(f"{_LISTED} ORDER BY a.id").fetchall()
    return tuple(Attachment(*row) for row in rows)


def attachment(job: Job, number: int) -> Attachment:
    """One of them; JobError if there is none of that number."""
    with job.reading() as base:
        row = base.execute(f"{_LISTED} WHERE a.id = ?", (number,)).fetchone()
    if row is None:
        raise _none(job, number)
    return Attachment(*row)


def content_of(job: Job, number: int) -> bytes:
    """The content of an attachment; JobError if there is none of that number, or it is damaged."""
    with job.reading() as base:
        row = base.execute("SELECT content, sha256 FROM attachment WHERE id = ?", (number,)).fetchone()
    if row is None:
        raise _none(job, number)
    content = bytes(row[0])
    if hashlib.sha256(content).hexdigest() != row[1]:
        raise JobError(
            f"attachment {number} is damaged", where=str(job.path), cure="Restore a backup of the job"
        )
    return content


def change(job: Job, number: int, what: What, *, author: str) -> Attachment:
    """Take an attachment away, or put it back; it stays in the file, and both stand in its history.

    Parameters
    ----------
    job : Job
        The job.
    number : int
        Its number.
    what : str
        `removed` or `put back`; said again it changes nothing.
    author : str
        Who does it.

    Returns
    -------
    Attachment
        As it is then.

    Raises
    ------
    JobError
        If there is none of that number.
    """
    now = attachment(job, number)
    if (what == "removed") == bool(now.removed_at):
        return now
    with job.transaction() as base:
        _note_change(base, number, what, author=author)
    return attachment(job, number)


def _note_change(base: sqlite3.Connection, number: int, what: What, *, author: str) -> None:
    base.execute(
        "INSERT INTO attachment_change (attachment, what, author, at) VALUES (?, ?, ?, ?)",
        (number, what, author, revisions.now()),
    )


def _none(job: Job, number: int) -> JobError:
    return JobError(
        f"there is no attachment {number}", where=str(job.path), cure="Name one of those that are listed"
    )
