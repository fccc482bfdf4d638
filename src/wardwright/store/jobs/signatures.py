"""Answers kept as they were signed, with all that they stand on."""

from __future__ import annotations

import hashlib
import json
import zlib
from collections.abc import Sequence
from functools import lru_cache
from typing import Any, NamedTuple

from wardwright.errors import JobError
from wardwright.intake.notes.secrets import holds_code
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.model.wording import is_plain
from wardwright.questions.answer import Answer
from wardwright.questions.as_signed import kept_form
from wardwright.rules.finding import Finding
from wardwright.store.jobs import revisions
from wardwright.store.jobs.job import Job

LONGEST_NAME = 60
LONGEST_WHAT = 300
"""Signs of a signer's name, and of what is signed. [-] (assumption)"""


class Signed(NamedTuple):
    """The answers that somebody put their name to."""

    number: int
    revision: int
    at: str
    """When, by the clock of the machine that keeps the job (UTC, ISO 8601)."""
    program: str
    """The version of the program that gave them."""
    rule_pack: str
    catalogue: str
    """Digest of the rows of data that they stand on."""
    answers: tuple[dict[str, Any], ...]
    author: str
    """Who signed."""
    what: str
    """What they said they signed, such as `the design as shown to the customer`."""
    findings: tuple[dict[str, Any], ...]


class ToSign(NamedTuple):
    """What is to be kept as signed."""

    revision: int
    program: str
    rule_pack: str
    catalogue: str
    answers: Sequence[dict[str, Any]]
    findings: Sequence[dict[str, Any]] = ()
    rows: str = ""
    """The rows of data themselves, as JSON: kept once for each digest, so that it can be said which are others."""


def to_sign_of(
    site: Site,
    catalogue: Catalogue,
    *,
    revision: int,
    program: str,
    answers: Sequence[Answer],
    findings: Sequence[Finding],
) -> ToSign:
    """What is said of one state of a house, in the form in which it is kept.

    Parameters
    ----------
    site : Site
        That state.
    catalogue : Catalogue
        The rows of data that the answers stand on.
    revision : int
        Its number in the job. [-]
    program : str
        The version that answered.
    answers, findings : sequence
        All that is said of it.

    Returns
    -------
    ToSign
        Ready for `sign`.
    """
    return ToSign(
        revision,
        program,
        site.place.rule_pack,
        digest_of(catalogue),
        [kept_form(one) for one in answers],
        [kept_form(one) for one in findings],
        catalogue.model_dump_json(),
    )


_COLUMNS = "id, revision, at, program, rule_pack, catalogue, answers, author, what, findings"


def sign(job: Job, to_sign: ToSign, *, author: str, what: str = "") -> int:
    """Keep answers as they were signed, with what they stand on.

    Next year "the house changed" and "the program changed" can then be told apart.

    Parameters
    ----------
    job : Job
        The job.
    to_sign : ToSign
        The answers and findings, and what they stand on.
    author : str
        Who signs.
    what : str, default ""
        What they say they sign.

    Returns
    -------
    int
        The number of what was signed.

    Raises
    ------
    JobError
        If nobody signs, a text is too long or holds a code, or it cannot be kept.
    """
    refuse_words(job, author=author, what=what)
    with job.transaction() as base:
        if to_sign.rows:
            packed = zlib.compress(to_sign.rows.encode(), 9)
            base.execute("INSERT OR IGNORE INTO data_rows VALUES (?, ?)", (to_sign.catalogue, packed))
        made = base.execute(
            "INSERT INTO signed (revision, at, program, rule_pack, catalogue, answers, author, what, findings) "
            "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
            (
                to_sign.revision,
                revisions.now(),
                to_sign.program,
                to_sign.rule_pack,
                to_sign.catalogue,
                json.dumps(list(to_sign.answers)),
                author,
                what,
                json.dumps(list(to_sign.findings)),
            ),
        )
    return int(made.lastrowid or 0)


def refuse_words(job: Job, *, author: str, what: str) -> None:
    """Raise JobError if a name or what is signed cannot stand beside answers."""
    where = str(job.path)
    if not author.strip():
        raise JobError("nobody signs", where=where, cure="Say who signs: a name, or a role such as 'fitter'")
    for name, said, longest in (("name", author, LONGEST_NAME), ("text", what, LONGEST_WHAT)):
        if len(said) > longest or not is_plain(said):
            raise JobError(
                f"the {name} is too long, or holds a sign that cannot be shown",
                where=where,
                cure=f"Say it in at most {longest} letters, on one line",
            )
        if holds_code(said):
            raise JobError(
                f"the {name} looks as if it held a code or a password, and those are never stored",
                where=where,
                cure="Take the code away",
            )


def signed(job: Job) -> tuple[Signed, ...]:
    """All answers that were signed, oldest first."""
    with job.reading() as base:
        rows = base.execute(f"SELECT {_COLUMNS} FROM signed ORDER BY id").fetchall()  # noqa: S608 - our own columns
    return tuple(_signed(row) for row in rows)


def newest_signed(job: Job) -> int | None:
    """The number of what was signed last; None where nothing was."""
    with job.reading() as base:
        (number,) = base.execute("SELECT max(id) FROM signed").fetchone()
    return None if number is None else int(number)


def signed_at(job: Job, number: int) -> Signed:
    """What was signed under a number; JobError if nothing was."""
    with job.reading() as base:
        row = base.execute(f"SELECT {_COLUMNS} FROM signed WHERE id = ?", (number,)).fetchone()  # noqa: S608
    if row is None:
        raise JobError(
            f"nothing was signed under number {number}",
            where=str(job.path),
            cure="Name one of those that are listed",
        )
    return _signed(row)


def rows_signed(job: Job, digest: str) -> dict[str, Any]:
    """The rows of data that answers were signed on, as plain data; empty where an older program kept none."""
    with job.reading() as base:
        row = base.execute("SELECT content FROM data_rows WHERE digest = ?", (digest,)).fetchone()
    return {} if row is None else dict(json.loads(zlib.decompress(row[0])))


def _signed(row: Sequence[Any]) -> Signed:
    answers, findings = (tuple(json.loads(row[place])) for place in (6, 9))
    return Signed._make((*row[:6], answers, *row[7:9], findings))


@lru_cache(maxsize=8)
def digest_of(catalogue: Catalogue) -> str:
    """A digest of every row of data that an answer may stand on."""
    return hashlib.sha256(catalogue.model_dump_json().encode()).hexdigest()
