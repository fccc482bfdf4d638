from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from wardwright.errors import JobError
from wardwright.model.edits import Edit
from wardwright.store.jobs.job import Job
from wardwright.store.jobs.opening import new_job, open_job
from wardwright.store.jobs.results import NewResult, results_of, write_down
from wardwright.store.jobs.upkeep import back_up
from wardwright.store.samples import read_sample


@pytest.fixture
def job(tmp_path: Path) -> Iterator[Job]:
    with new_job(tmp_path / "house.job", read_sample("one-room")) as made:
        yield made


def result(sent: str = "a", **more: object) -> NewResult:
    given = {"step": "prove", "key": "radio/x", "outcome": "passed", "revision": 1, "author": "me"}
    return NewResult(sent=sent, **{**given, **more})  # type: ignore[arg-type]


def test_what_is_written_down_is_there_after_the_job_was_shut_and_in_its_backup(
    job: Job, tmp_path: Path
) -> None:
    made = write_down(job, result(reading="-62 dBm", remark="by the door"))
    assert (made.outcome, made.reading, made.remark, made.earlier) == ("passed", "-62 dBm", "by the door", "")
    back_up(job, tmp_path / "copy.job")
    job.close()
    for name in ("house.job", "copy.job"):
        with open_job(tmp_path / name) as again:
            assert results_of(again) == (made,)


def test_the_last_word_counts_and_the_earlier_ones_stay_in_the_file(job: Job) -> None:
    write_down(job, result("a"))
    last = write_down(job, result("b", outcome="not passed", remark="it slept"))
    other = write_down(job, result("c", step="fit", key="x", outcome="done"))
    assert results_of(job) == (last, other)
    assert job.base.execute("SELECT outcome FROM site_result ORDER BY id").fetchall() == [
        ("passed",), ("not passed",), ("done",),
    ]  # fmt: skip


def test_sent_again_it_changes_nothing(job: Job) -> None:
    first = write_down(job, result("a"))
    assert write_down(job, result("a", outcome="not passed")) == first
    assert results_of(job) == (first,)


def test_what_somebody_else_wrote_meanwhile_is_not_written_over_unseen(job: Job) -> None:
    theirs = write_down(job, result("a", author="other", outcome="not passed"))
    with pytest.raises(JobError, match="other wrote 'not passed' of it meanwhile"):
        write_down(job, result("b"))
    assert results_of(job) == (theirs,)
    mine = write_down(job, result("c", seen=theirs.number))
    assert results_of(job) == (mine,)
    assert (
        write_down(job, result("d", remark="again")).remark == "again"
    )  # one's own may be written on unseen


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"step": "fit", "outcome": "passed"}, "'passed' is nothing that can be said there"),
        ({"outcome": "done"}, "'done' is nothing that can be said there"),
        ({"revision": 2}, "there is no revision 2"),
        ({"revision": 0}, "there is no revision 0"),
        ({"author": " "}, "nobody says this"),
        ({"key": ""}, "nobody says this"),
        ({"key": "k" * 301}, "nobody says this"),
        ({"author": "a" * 61}, "the name is too long"),
        ({"reading": "1" * 121}, "the reading is too long"),
        ({"remark": "one\ntwo"}, "the remark is too long, or holds a sign"),
        ({"remark": "\x1b[2J"}, "holds a sign that cannot be shown"),
        ({"remark": "the code is 4711"}, "the remark looks as if it held a code"),
        ({"reading": "PIN 1234"}, "the reading looks as if it held a code"),
    ],
)
def test_what_cannot_stand_there_is_refused_and_nothing_is_kept(
    job: Job, wrong: dict[str, object], said: str
) -> None:
    with pytest.raises(JobError, match=said):
        write_down(job, result(**wrong))
    assert results_of(job) == ()


def test_it_stands_beside_the_revisions_and_makes_none(job: Job) -> None:
    write_down(job, result())
    assert job.newest == 1
    name = {"do": "tell", "of": "name", "facts": {"name": "cabin"}}
    job.edit(Edit.model_validate({"id": "an-edit-1", "author": "me", "base": 1, "operations": [name]}))
    assert results_of(job)[0].revision == 1
