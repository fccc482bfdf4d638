from __future__ import annotations

from pathlib import Path

import pytest

from common.houses import one_room
from wardwright.errors import JobError
from wardwright.store.jobs.files import draft_of
from wardwright.store.jobs.opening import new_job, open_job


def test_a_new_job_begins_with_its_site(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        assert (job.newest, job.site()) == (1, one_room())
        ident = job.job_id
    with open_job(tmp_path / "a.job") as job:
        assert (job.job_id, job.site(1), job.history()[0].author) == (ident, one_room(), "me")


def test_a_job_that_cannot_be_made_leaves_nothing(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder", encoding="utf-8")
    with pytest.raises(JobError, match="cannot be made"):
        new_job(tmp_path / "file" / "a.job", one_room(), author="me")
    assert list(tmp_path.iterdir()) == [tmp_path / "file"]


def test_a_folder_that_is_missing_is_made(tmp_path: Path) -> None:
    new_job(tmp_path / "jobs" / "here" / "a.job", one_room(), author="me").close()
    assert (tmp_path / "jobs" / "here" / "a.job").is_file()


def test_what_a_killed_program_left_is_no_job_and_in_nobodys_way(tmp_path: Path) -> None:
    draft_of(tmp_path / "a.job").write_text("half")
    assert list(tmp_path.glob("*.job")) == []
    new_job(tmp_path / "a.job", one_room(), author="me").close()
    assert [one.name for one in tmp_path.iterdir()] == ["a.job"]
    with pytest.raises(JobError, match="something of that name already"):
        new_job(tmp_path / "a.job", one_room(), author="me")
    with open_job(tmp_path / "a.job") as job:
        assert job.newest == 1
