from __future__ import annotations

import sqlite3

import pytest

from wardwright.errors import JobError
from wardwright.store.jobs.tables import APPLICATION_ID, STEPS, brought_up


def fresh() -> sqlite3.Connection:
    return sqlite3.connect(":memory:", isolation_level=None)


def test_an_empty_file_is_brought_to_the_newest_version() -> None:
    base = fresh()
    brought_up(base, where="x")
    assert base.execute("PRAGMA user_version").fetchone() == (len(STEPS),)
    assert base.execute("PRAGMA application_id").fetchone() == (APPLICATION_ID,)
    brought_up(base, where="x")
    names = {row[0] for row in base.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")}
    assert {"job", "revision", "touched", "attachment", "signed", "site_result"} <= names


def test_a_newer_file_is_left_alone() -> None:
    base = fresh()
    base.execute(f"PRAGMA user_version = {len(STEPS) + 1}")
    with pytest.raises(JobError, match="Use a newer Wardwright"):
        brought_up(base, where="x")


def test_a_file_of_the_first_version_is_brought_up_with_what_it_holds() -> None:
    base = fresh()
    base.executescript(f"{STEPS[0]} PRAGMA user_version = 1;")
    base.execute("INSERT INTO attachment VALUES (1, 'hall.jpg', 'image/jpeg', '', '2026', 'abc', x'00')")
    brought_up(base, where="x")
    assert base.execute("SELECT name, author, note, starred FROM attachment").fetchall() == [
        ("hall.jpg", "", "", 0)
    ]
    assert base.execute("SELECT count(*) FROM attachment_change").fetchone() == (0,)
    assert base.execute("SELECT count(*) FROM site_result").fetchone() == (0,)
