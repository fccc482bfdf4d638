from __future__ import annotations

from pathlib import Path

import pytest

from common.houses import one_room
from wardwright.errors import JobError
from wardwright.store.jobs import attachments
from wardwright.store.jobs.attachments import attach, content_of, sign, signed
from wardwright.store.jobs.opening import new_job


def test_what_is_attached_is_kept_and_never_written_over(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        first = attach(job, b"one", name="hall.jpg", kind="image/jpeg", about="spaces/living")
        second = attach(job, b"two", name="hall.jpg", kind="image/jpeg")
        assert (content_of(job, first), content_of(job, second)) == (b"one", b"two")
        assert [(a.name, a.about) for a in attachments.attachments(job)] == [
            ("hall.jpg", "spaces/living"),
            ("hall.jpg", ""),
        ]


def test_what_is_not_there_damaged_or_too_long_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        with pytest.raises(JobError, match="there is no attachment 3"):
            content_of(job, 3)
        number = attach(job, b"one", name="log", kind="text/plain")
        job.base.execute("UPDATE attachment SET content = x'00'")
        with pytest.raises(JobError, match="damaged"):
            content_of(job, number)
        monkeypatch.setattr(attachments, "LARGEST_BYTES", 2)
        with pytest.raises(JobError, match="is longer than"):
            attach(job, b"one", name="log", kind="text/plain")


def test_answers_are_kept_as_signed_with_what_they_stand_on(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        stands_on = {"revision": 1, "program": "0.1.0", "rule_pack": "uk-eu", "catalogue": "abc"}
        sign(job, [{"question": 1, "value": 3.5}], **stands_on)  # type: ignore[arg-type]
        (one,) = signed(job)
        assert one.answers == ({"question": 1, "value": 3.5},)
        assert {key: getattr(one, key) for key in stands_on} == stands_on
