from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from common.houses import on_wall, two_rooms_and_hall
from wardwright.errors import DocumentError, JobError
from wardwright.model.edits import Edit
from wardwright.model.site import Site
from wardwright.store.jobs.job import Conflict, Job, Kept
from wardwright.store.jobs.opening import new_job

SITE = two_rooms_and_hall(
    devices=(on_wall("fan-1", "fan", "south", 2.0), on_wall("fan-2", "fan", "north", 2.0))
)


@pytest.fixture
def job(tmp_path: Path) -> Iterator[Job]:
    with new_job(tmp_path / "a.job", SITE, author="me") as made:
        yield made


def turn(number: int, device: str = "fan-1", *, author: str = "me", base: int = 1, to: float = 90.0) -> Edit:
    operation: dict[str, Any] = {"do": "turn-device", "device": device, "heading_deg": to}
    return Edit.model_validate(
        {"id": f"edit-{number:04d}", "author": author, "base": base, "operations": [operation]}
    )


def heading(job: Job, device: str = "fan-1") -> float | None:
    return job.site().device(device).heading_deg


def test_an_edit_makes_a_revision_and_older_ones_stay(job: Job) -> None:
    assert job.edit(turn(1)) == Kept(2, is_new=True)
    assert (heading(job), job.site(1).device("fan-1").heading_deg) == (90.0, None)


def test_sent_again_it_changes_nothing(job: Job) -> None:
    job.edit(turn(1))
    assert job.edit(turn(1)) == Kept(2, is_new=False)
    assert job.newest == 2


def test_an_edit_that_changes_nothing_makes_no_revision(job: Job) -> None:
    job.edit(turn(1))
    assert job.edit(turn(2, base=2)) == Kept(2, is_new=False)


def test_two_who_change_different_things_both_get_their_way(job: Job) -> None:
    job.edit(turn(1))
    assert job.edit(turn(2, "fan-2", author="you")) == Kept(3, is_new=True)
    assert (heading(job), heading(job, "fan-2")) == (90.0, 90.0)


def test_two_who_change_one_thing_are_told(job: Job) -> None:
    job.edit(turn(1))
    assert job.edit(turn(2, author="you", to=45.0)) == Conflict(2, ("devices/fan-1",), ("me",))
    assert (heading(job), job.newest) == (90.0, 2)
    assert job.edit(turn(3, author="you", to=45.0, base=2)) == Kept(3, is_new=True)


def test_ones_own_earlier_edit_is_no_conflict(job: Job) -> None:
    job.edit(turn(1))
    assert job.edit(turn(2, to=45.0, base=1)) == Kept(3, is_new=True)


def test_what_somebody_else_took_away_is_a_conflict(job: Job) -> None:
    gone = {"do": "remove", "of": "devices", "id": "fan-1"}
    job.edit(Edit.model_validate({"id": "edit-gone", "author": "you", "base": 1, "operations": [gone]}))
    assert job.edit(turn(2)) == Conflict(2, ("devices/fan-1",), ("you",))


def test_an_edit_that_does_not_hold_together_changes_nothing(job: Job) -> None:
    def refuse(site: Site) -> Site:
        raise DocumentError("it does not hold together", where=site.name, cure="Put it right")

    with pytest.raises(DocumentError, match="hold together"):
        job.edit(turn(1), check=refuse)
    with pytest.raises(DocumentError, match="stands on revision 9"):
        job.edit(turn(2, base=9))
    assert job.newest == 1


def test_undo_goes_all_the_way_back_and_sent_again_does_nothing(job: Job) -> None:
    for number, to in enumerate((10.0, 20.0, 30.0)):
        job.edit(turn(number, to=to, base=number + 1))
    seen = []
    for number in range(3):
        assert job.undo(f"undo-{number}", "me") == Kept(5 + number, is_new=True)
        assert job.undo(f"undo-{number}", "me") == Kept(5 + number, is_new=False)
        seen.append(heading(job))
    assert seen == [20.0, 10.0, None]
    assert job.site() == SITE
    assert job.undo("undo-last", "me") is None
    assert [one.undoes for one in job.history()[:3]] == [2, 3, 4]


def test_undo_takes_back_ones_own_and_leaves_the_others(job: Job) -> None:
    job.edit(turn(1))
    job.edit(turn(2, "fan-2", author="you"))
    assert job.undo("undo-mine", "me") == Kept(4, is_new=True)
    assert (heading(job), heading(job, "fan-2")) == (None, 90.0)


def test_undo_of_what_somebody_else_changed_since_is_a_conflict(job: Job) -> None:
    job.edit(turn(1))
    job.edit(turn(2, author="you", base=2, to=45.0))
    assert job.undo("undo-mine", "me") == Conflict(3, ("devices/fan-1",), ("you",))
    assert heading(job) == 45.0


def test_a_full_disk_loses_nothing_and_is_said(job: Job) -> None:
    pages = job.base.execute("PRAGMA page_count").fetchone()[0]
    job.base.execute(f"PRAGMA max_page_count = {pages}")

    def many() -> None:
        for number in range(200):
            job.edit(turn(number, to=float(number), base=job.newest))

    with pytest.raises(JobError, match="could not be kept"):
        many()
    newest = job.newest
    job.base.execute("PRAGMA max_page_count = 100000")
    assert job.edit(turn(999, to=355.0, base=newest)) == Kept(newest + 1, is_new=True)
