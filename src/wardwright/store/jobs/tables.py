"""The tables of a job file, step by step as versions went by. A step that was released is never changed."""

from __future__ import annotations

import sqlite3

from wardwright.errors import JobError

APPLICATION_ID = 0x57415244
"""Tells a job file from any other SQLite file: the letters WARD."""

STEPS: tuple[str, ...] = (
    """
    CREATE TABLE job (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;
    CREATE TABLE revision (
        number INTEGER PRIMARY KEY,
        edit TEXT NOT NULL UNIQUE,
        author TEXT NOT NULL,
        base INTEGER NOT NULL,
        at TEXT NOT NULL,
        what TEXT NOT NULL,
        undoes INTEGER REFERENCES revision (number),
        site BLOB NOT NULL,
        sha256 TEXT NOT NULL
    ) STRICT;
    CREATE TABLE touched (
        revision INTEGER NOT NULL REFERENCES revision (number),
        key TEXT NOT NULL,
        PRIMARY KEY (revision, key)
    ) STRICT, WITHOUT ROWID;
    CREATE INDEX touched_by_key ON touched (key, revision);
    CREATE TABLE attachment (
        id INTEGER PRIMARY KEY,
        name TEXT NOT NULL,
        kind TEXT NOT NULL,
        about TEXT NOT NULL,
        at TEXT NOT NULL,
        sha256 TEXT NOT NULL,
        content BLOB NOT NULL
    ) STRICT;
    CREATE TABLE signed (
        id INTEGER PRIMARY KEY,
        revision INTEGER NOT NULL REFERENCES revision (number),
        at TEXT NOT NULL,
        program TEXT NOT NULL,
        rule_pack TEXT NOT NULL,
        catalogue TEXT NOT NULL,
        answers TEXT NOT NULL
    ) STRICT;
    """,
    """
    ALTER TABLE attachment ADD COLUMN author TEXT NOT NULL DEFAULT '';
    ALTER TABLE attachment ADD COLUMN note TEXT NOT NULL DEFAULT '';
    ALTER TABLE attachment ADD COLUMN starred INTEGER NOT NULL DEFAULT 0;
    CREATE TABLE attachment_change (
        id INTEGER PRIMARY KEY,
        attachment INTEGER NOT NULL REFERENCES attachment (id),
        what TEXT NOT NULL CHECK (what IN ('removed', 'put back')),
        author TEXT NOT NULL,
        at TEXT NOT NULL
    ) STRICT;
    ALTER TABLE signed ADD COLUMN author TEXT NOT NULL DEFAULT '';
    ALTER TABLE signed ADD COLUMN what TEXT NOT NULL DEFAULT '';
    ALTER TABLE signed ADD COLUMN findings TEXT NOT NULL DEFAULT '[]';
    """,
    """
    CREATE TABLE data_rows (
        digest TEXT PRIMARY KEY,
        content BLOB NOT NULL
    ) STRICT, WITHOUT ROWID;
    """,
    """
    CREATE TABLE site_result (
        id INTEGER PRIMARY KEY,
        sent TEXT NOT NULL UNIQUE,
        step TEXT NOT NULL CHECK (step IN ('fit', 'prove')),
        key TEXT NOT NULL,
        outcome TEXT NOT NULL CHECK (outcome IN ('done', 'passed', 'not passed', 'not done')),
        reading TEXT NOT NULL,
        remark TEXT NOT NULL,
        revision INTEGER NOT NULL REFERENCES revision (number),
        author TEXT NOT NULL,
        at TEXT NOT NULL
    ) STRICT;
    CREATE INDEX site_result_by_key ON site_result (step, key, id);
    """,
)
"""What brings a file from one version to the next."""


def brought_up(base: sqlite3.Connection, *, where: str) -> None:
    """Bring a job file to the newest version, in one transaction.

    Parameters
    ----------
    base : sqlite3.Connection
        The file, opened.
    where : str
        What it is called in messages.

    Raises
    ------
    JobError
        If it was written by a newer program.
    """
    (version,) = base.execute("PRAGMA user_version").fetchone()
    if version > len(STEPS):
        raise JobError(
            f"the job is of version {version}, but this program reads up to version {len(STEPS)}",
            where=where,
            cure="Use a newer Wardwright for this job",
        )
    if version == len(STEPS):
        return
    steps = "".join(STEPS[version:])
    base.executescript(
        f"BEGIN IMMEDIATE; {steps} PRAGMA application_id = {APPLICATION_ID}; "
        f"PRAGMA user_version = {len(STEPS)}; COMMIT;"
    )
