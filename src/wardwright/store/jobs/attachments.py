"""What is kept with a job beside its site: pictures, logs, readings, answers as signed. Nothing is overwritten."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from typing import Any, NamedTuple

from wardwright.errors import JobError
from wardwright.store.jobs import revisions
from wardwright.store.jobs.job import Job

LARGEST_BYTES = 50_000_000
"""An attachment longer than this is refused. [bytes] (assumption)"""


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


class Signed(NamedTuple):
    """The answers that somebody put their name to."""

    number: int
    revision: int
    at: str
    program: str
    """The version of the program that gave them."""
    rule_pack: str
    catalogue: str
    """Digest of the rows of data that they stand on."""
    answers: tuple[dict[str, Any], ...]


def attach(job: Job, content: bytes, *, name: str, kind: str, about: str = "") -> int:
    """Keep something with a job.

    Parameters
    ----------
    job : Job
        The job.
    content : bytes
        What is kept.
    name : str
        What it is called.
    kind : str
        Its media type.
    about : str, default ""
        Key of the thing that it is about.

    Returns
    -------
    int
        Its number.

    Raises
    ------
    JobError
        If it is too long, or cannot be kept.
    """
    if len(content) > LARGEST_BYTES:
        raise JobError(
            f"'{name}' is longer than {LARGEST_BYTES // 1_000_000} MB",
            where=str(job.path),
            cure="Attach a smaller picture or a part of the log",
        )
    digest = hashlib.sha256(content).hexdigest()
    with job.transaction() as base:
        made = base.execute(
            "INSERT INTO attachment (name, kind, about, at, sha256, content) VALUES (?, ?, ?, ?, ?, ?)",
            (name, kind, about, revisions.now(), digest, content),
        )
    return int(made.lastrowid or 0)


def attachments(job: Job) -> tuple[Attachment, ...]:
    """All that is attached, oldest first."""
    with job.transaction() as base:
        rows = base.execute("SELECT id, name, kind, about, at, sha256 FROM attachment ORDER BY id").fetchall()
    return tuple(Attachment(*row) for row in rows)


def content_of(job: Job, number: int) -> bytes:
    """The content of an attachment; JobError if there is none of that number, or it is damaged."""
    with job.transaction() as base:
        row = base.execute("SELECT content, sha256 FROM attachment WHERE id = ?", (number,)).fetchone()
    if row is None:
        raise JobError(
            f"there is no attachment {number}",
            where=str(job.path),
            cure="Name one of those that 'job list' shows",
        )
    content = bytes(row[0])
    if hashlib.sha256(content).hexdigest() != row[1]:
        raise JobError(
            f"attachment {number} is damaged", where=str(job.path), cure="Restore a backup of the job"
        )
    return content


def sign(
    job: Job,
    answers: Sequence[dict[str, Any]],
    *,
    revision: int,
    program: str,
    rule_pack: str,
    catalogue: str,
) -> int:
    """Keep answers as they were signed, with what they stand on; their number.

    Next year "the house changed" and "the program changed" can then be told apart.
    """
    with job.transaction() as base:
        made = base.execute(
            "INSERT INTO signed (revision, at, program, rule_pack, catalogue, answers) VALUES (?, ?, ?, ?, ?, ?)",
            (revision, revisions.now(), program, rule_pack, catalogue, json.dumps(list(answers))),
        )
    return int(made.lastrowid or 0)


def signed(job: Job) -> tuple[Signed, ...]:
    """All answers that were signed, oldest first."""
    with job.transaction() as base:
        rows = base.execute(
            "SELECT id, revision, at, program, rule_pack, catalogue, answers FROM signed ORDER BY id"
        ).fetchall()
    return tuple(Signed._make((*row[:6], tuple(json.loads(row[6])))) for row in rows)
