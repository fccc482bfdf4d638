from __future__ import annotations

from pathlib import Path

import pytest

from common.houses import one_room
from wardwright.errors import JobError
from wardwright.store.jobs.opening import new_job, open_job
from wardwright.store.jobs.upkeep import back_up, forget, restore


def test_a_backup_is_the_same_job_and_is_restored_from(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        back_up(job, tmp_path / "b.job")
        assert job.newest == 1
        ident = job.job_id
    restore(tmp_path / "b.job", tmp_path / "c.job")
    with open_job(tmp_path / "c.job") as job:
        assert (job.job_id, job.site()) == (ident, one_room())
    assert (tmp_path / "b.job").stat().st_mode & 0o077 == 0
    assert sorted(path.name for path in tmp_path.iterdir()) == ["a.job", "b.job", "c.job"]


def test_a_backup_writes_over_nothing_and_leaves_no_half(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        (tmp_path / "b.job").write_text("mine")
        with pytest.raises(JobError, match="already"):
            back_up(job, tmp_path / "b.job")
        with pytest.raises(JobError, match="cannot be written"):
            back_up(job, tmp_path / "nowhere" / "b.job")
    assert (tmp_path / "b.job").read_text() == "mine"


def test_a_damaged_backup_is_not_restored(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        back_up(job, tmp_path / "b.job")
    content = bytearray((tmp_path / "b.job").read_bytes())
    content[4096:] = bytes(len(content) - 4096)
    (tmp_path / "b.job").write_bytes(content)
    with pytest.raises(JobError, match="damaged"):
        restore(tmp_path / "b.job", tmp_path / "c.job")
    assert not (tmp_path / "c.job").exists()


def test_a_forgotten_job_is_gone_and_its_bytes_are_written_over(tmp_path: Path) -> None:
    site = one_room(name="a house that nobody is to find")
    new_job(tmp_path / "a.job", site, author="me").close()
    twin = tmp_path / "twin"
    twin.hardlink_to(tmp_path / "a.job")
    forget(tmp_path / "a.job")
    assert not (tmp_path / "a.job").exists()
    assert set(twin.read_bytes()) == {0}


def test_a_job_that_is_open_is_not_forgotten(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        with pytest.raises(JobError, match="open in another program"):
            forget(tmp_path / "a.job")
        assert job.site() == one_room()
