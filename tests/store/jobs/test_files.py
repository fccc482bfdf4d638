from __future__ import annotations

import os
import shutil
import sqlite3
from pathlib import Path

import pytest

from common.houses import one_room
from wardwright.errors import JobError
from wardwright.store.jobs.files import copies_beside, draft_of, made, opened, put_in_place
from wardwright.store.jobs.opening import new_job


def test_a_job_file_is_for_its_owner_only(tmp_path: Path) -> None:
    made(tmp_path / "a.job").close()
    assert (tmp_path / "a.job").stat().st_mode & 0o077 == 0


def test_nothing_is_written_over(tmp_path: Path) -> None:
    (tmp_path / "a.job").write_text("mine")
    with pytest.raises(JobError, match="something of that name already"):
        made(tmp_path / "a.job")
    assert (tmp_path / "a.job").read_text() == "mine"


def test_what_is_no_job_is_said(tmp_path: Path) -> None:
    with pytest.raises(JobError, match="there is no such job"):
        opened(tmp_path / "a.job")
    (tmp_path / "a.job").write_text("hello")
    with pytest.raises(JobError, match="no job file, or it is damaged"):
        opened(tmp_path / "a.job")
    sqlite3.connect(tmp_path / "b.job").execute("CREATE TABLE t (a)")
    with pytest.raises(JobError, match="this is no job file"):
        opened(tmp_path / "b.job")


def test_a_damaged_job_is_said(tmp_path: Path) -> None:
    path = tmp_path / "a.job"
    new_job(path, one_room(), author="me").close()
    content = bytearray(path.read_bytes())
    content[4096:] = bytes(len(content) - 4096)
    path.write_bytes(content)
    with pytest.raises(JobError, match="damaged"):
        opened(path)


def test_a_job_that_is_open_elsewhere_is_said(tmp_path: Path) -> None:
    base = made(tmp_path / "a.job")
    with pytest.raises(JobError, match="open in another program"):
        opened(tmp_path / "a.job")
    base.close()
    opened(tmp_path / "a.job").close()


def test_copies_of_the_same_job_are_found(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        ident = job.job_id
    shutil.copy(tmp_path / "a.job", tmp_path / "a (copy of Tuesday).job")
    new_job(tmp_path / "other.job", one_room(), author="me").close()
    (tmp_path / "broken.job").write_text("x")
    assert [path.name for path in copies_beside(tmp_path / "a.job", ident)] == ["a (copy of Tuesday).job"]


@pytest.mark.parametrize("has_second_names", [True, False])
def test_a_job_takes_its_name_without_writing_over_anything(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, has_second_names: bool
) -> None:
    def without(*_: object) -> None:
        raise OSError(95, "not supported")

    if not has_second_names:
        monkeypatch.setattr(os, "link", without)
    path = tmp_path / "a.job"
    draft_of(path).write_text("mine")
    put_in_place(draft_of(path), path)
    assert [one.name for one in tmp_path.iterdir()] == ["a.job"]
    draft_of(path).write_text("other")
    with pytest.raises(JobError, match="something of that name already"):
        put_in_place(draft_of(path), path)
    assert path.read_text() == "mine"
