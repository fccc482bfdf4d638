"""What was written down on site: kept beside the revisions, each word of it, and nothing of it overwritten."""

from __future__ import annotations

import sqlite3
from typing import NamedTuple

from wardwright.errors import JobError
from wardwright.intake.notes.secrets import holds_code
from wardwright.model.wording import is_plain
from wardwright.store.jobs import revisions
from wardwright.store.jobs.job import Job
from wardwright.works.site_result import OUTCOMES, Outcome, SiteResult, Step

LONGEST_NAME = 60
LONGEST_READING = 120
LONGEST_REMARK = 400
"""Signs of who writes it down, of a reading and of a remark. [-] (assumption)"""
LONGEST_KEY = 300
_COLUMNS = "id, step, key, outcome, reading, remark, revision, author, at"


class NewResult(NamedTuple):
    """What is to be written down."""

    sent: str
    """Names it: sent again it changes nothing."""
    step: Step
    key: str
    outcome: Outcome
    revision: int
    """Of the house that was seen. [-]"""
    author: str
    reading: str = ""
    remark: str = ""
    seen: int = 0
    """Number of what was seen to be written down of it last; 0: nothing was. [-]"""


def write_down(job: Job, new: NewResult) -> SiteResult:
    """Keep what was done, read or found on site.

    Parameters
    ----------
    job : Job
        The job.
    new : NewResult
        What is to be written down.

    Returns
    -------
    SiteResult
        As it is kept; what stood there before stays in the file.

    Raises
    ------
    JobError
        If it holds a code or cannot be shown, is of no revision of the job, or somebody else wrote of it meanwhile.
    """
    _refuse_words(job, new)
    if new.outcome not in OUTCOMES[new.step]:
        raise _fault(job, f"'{new.outcome}' is nothing that can be said there", "Say one of what is offered")
    with job.transaction() as base:
        made = base.execute(f"SELECT {_COLUMNS} FROM site_result WHERE sent = ?", (new.sent,)).fetchone()  # noqa: S608 - our own columns
        if made is not None:
            return _result(made)
        if not 1 <= new.revision <= revisions.newest(base):
            raise _fault(job, f"there is no revision {new.revision}", "Load the job again")
        _refuse_unseen(job, base, new)
        written = base.execute(
            "INSERT INTO site_result (sent, step, key, outcome, reading, remark, revision, author, at) "
            "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
            (
                new.sent,
                new.step,
                new.key,
                new.outcome,
                new.reading,
                new.remark,
                new.revision,
                new.author,
                revisions.now(),
            ),
        )
        ident = written.lastrowid
        row = base.execute(f"SELECT {_COLUMNS} FROM site_result WHERE id = ?", (ident,)).fetchone()  # noqa: S608
    return _result(row)


def results_of(job: Job) -> tuple[SiteResult, ...]:
    """What was written down last of each device and each test, oldest first."""
    with job.reading() as base:
        rows = base.execute(
            f"SELECT {_COLUMNS} FROM site_result WHERE id IN "  # noqa: S608 - our own columns
            "(SELECT max(id) FROM site_result GROUP BY step, key) ORDER BY id"
        ).fetchall()
    return tuple(_result(row) for row in rows)


def _refuse_words(job: Job, new: NewResult) -> None:
    if not new.author.strip() or not new.sent or not new.key or len(new.key) > LONGEST_KEY:
        raise _fault(job, "nobody says this of nothing", "Say who writes it down, and of what")
    told = (
        ("name", new.author, LONGEST_NAME),
        ("reading", new.reading, LONGEST_READING),
        ("remark", new.remark, LONGEST_REMARK),
    )
    for name, said, longest in told:
        if len(said) > longest or not is_plain(said):
            raise _fault(
                job,
                f"the {name} is too long, or holds a sign that cannot be shown",
                f"Say it in at most {longest} letters, on one line",
            )
        if holds_code(said):
            raise _fault(
                job,
                f"the {name} looks as if it held a code or a password, and those are never stored",
                "Take the code away",
            )


def _refuse_unseen(job: Job, base: sqlite3.Connection, new: NewResult) -> None:
    """Raise JobError if somebody else wrote of the same thing since it was looked at."""
    row = base.execute(
        "SELECT id, author, outcome FROM site_result WHERE step = ? AND key = ? ORDER BY id DESC LIMIT 1",
        (new.step, new.key),
    ).fetchone()
    if row is not None and row[0] != new.seen and row[1] != new.author:
        raise _fault(
            job,
            f"{row[1]} wrote '{row[2]}' of it meanwhile",
            "Look at what stands there now, and write yours again if it still holds",
        )


def _fault(job: Job, what: str, cure: str) -> JobError:
    return JobError(what, where=str(job.path), cure=cure)


def _result(row: tuple[object, ...]) -> SiteResult:
    return SiteResult.model_validate(dict(zip(SiteResult.model_fields, (*row, ""), strict=True)))
