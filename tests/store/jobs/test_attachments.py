from __future__ import annotations

from pathlib import Path

import pytest

from common.houses import one_room
from wardwright.errors import JobError
from wardwright.store.jobs import attachments
from wardwright.store.jobs.attachments import attach, attachment, change, content_of
from wardwright.store.jobs.opening import new_job, open_job

PICTURE = b"\xff\xd8\xff\xe0 a picture"


def test_what_is_attached_is_kept_and_never_written_over(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        first = attach(job, PICTURE, name="hall.jpg", about="spaces/living", note="the hall", author="me")
        second = attach(job, b"two", name="hall.jpg")
        assert (content_of(job, first), content_of(job, second)) == (PICTURE, b"two")
        listed = attachments.attachments(job)
        assert [(a.name, a.kind, a.about, a.note, a.author, a.size_bytes) for a in listed] == [
            ("hall.jpg", "image/jpeg", "spaces/living", "the hall", "me", len(PICTURE)),
            ("hall.jpg", "text/plain", "", "", "", 3),
        ]


def test_what_is_taken_away_stays_in_the_file_and_can_be_put_back(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        number = attach(job, PICTURE, name="hall.jpg")
        gone = change(job, number, "removed", author="you")
        assert (gone.removed_by, bool(gone.removed_at)) == ("you", True)
        assert change(job, number, "removed", author="me") == gone
        assert content_of(job, number) == PICTURE
        assert change(job, number, "put back", author="me").removed_at == ""
        assert change(job, number, "removed", author="me").removed_by == "me"
        rows = job.base.execute("SELECT what, author FROM attachment_change ORDER BY id").fetchall()
        assert rows == [("removed", "you"), ("put back", "me"), ("removed", "me")]
    with open_job(tmp_path / "a.job") as job:
        assert attachment(job, number).removed_by == "me"


def test_reading_begins_no_transaction(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        number = attach(job, PICTURE, name="hall.jpg")
        said: list[str] = []
        job.base.set_trace_callback(said.append)
        attachments.attachments(job)
        content_of(job, number)
        assert len(said) == 2
        assert not [one for one in said if not one.strip().startswith("SELECT")]


def test_a_base_that_cannot_be_read_is_said(tmp_path: Path) -> None:
    job = new_job(tmp_path / "a.job", one_room(), author="me")
    job.close()
    with pytest.raises(JobError, match="cannot be read"):
        attachments.attachments(job)


def test_what_is_not_there_damaged_or_too_long_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        with pytest.raises(JobError, match="there is no attachment 3"):
            content_of(job, 3)
        with pytest.raises(JobError, match="there is no attachment 3"):
            change(job, 3, "removed", author="me")
        number = attach(job, b"one", name="log")
        job.base.execute("UPDATE attachment SET content = x'00'")
        with pytest.raises(JobError, match="damaged"):
            content_of(job, number)
        with pytest.raises(JobError, match="no picture, PDF, text or readings"):
            attach(job, b"MZ\x00\x00", name="setup.exe")
        with pytest.raises(JobError, match="needs a name"):
            attach(job, b"one", name="a\x1b[2J")
        with pytest.raises(JobError, match="note is too long"):
            attach(job, b"one", name="log", note="x" * 1001)
        monkeypatch.setattr(attachments, "LARGEST_BYTES", 2)
        with pytest.raises(JobError, match="is longer than"):
            attach(job, b"one", name="log")
        assert len(attachments.attachments(job)) == 1


@pytest.mark.parametrize("where", ["name", "note"])
def test_a_code_beside_an_attachment_is_refused_and_never_repeated(tmp_path: Path, where: str) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        said = {"name": "hall.jpg", "note": ""} | {where: "keypad, code 4711"}
        with pytest.raises(JobError, match="looks as if it held a code") as caught:
            attach(job, PICTURE, **said)
        assert "4711" not in str(caught.value)
        assert attachments.attachments(job) == ()


def test_codes_in_an_attached_log_are_starred_out_before_it_is_kept(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        number = attach(job, b"07:42 unset, user code 4711\n07:50 hall door\n", name="log.txt")
        assert content_of(job, number) == b"07:42 unset, user code ****\n07:50 hall door\n"
        assert attachment(job, number).starred_lines == 1
        assert attachment(job, attach(job, b"07:50 hall\n", name="log.txt")).starred_lines == 0
    assert b"4711" not in (tmp_path / "a.job").read_bytes()
