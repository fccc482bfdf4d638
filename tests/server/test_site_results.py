from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from wardwright.errors import InputError
from wardwright.model.edits import Edit
from wardwright.server.desk import Desk
from wardwright.server.messages import ResultWish
from wardwright.server.site_results import keep, written_down
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Desk]:
    job = new_job(tmp_path / "terrace.job", read_sample("terrace"))
    yield Desk(job, load_catalogue())
    job.close()


def wish(key: str, **more: object) -> ResultWish:
    given = {"id": f"{key} {more}", "step": "prove", "outcome": "passed", "revision": 1, "author": "me"}
    return ResultWish.model_validate({**given, "key": key, **more})


def moved(desk: Desk, device: str, base: int) -> None:
    mount = desk.job.site().device(device).mount.model_dump()
    operation = {
        "do": "mount-device",
        "device": device,
        "mount": {**mount, "height_m": 2.0},
        "heading_deg": None,
    }
    edit = {"id": f"an-edit-{base}", "author": "me", "base": base, "operations": [operation]}
    desk.job.edit(Edit.model_validate(edit))


def test_what_was_fitted_and_tested_before_a_move_is_marked_and_holds_again_when_the_move_is_taken_back(
    desk: Desk,
) -> None:
    keep(desk, wish("hall-movement", step="fit", outcome="done"))
    keep(desk, wish("radio/hall-movement", reading=" -60 dBm "))
    keep(desk, wish("radio/hall-keypad"))
    assert [one.earlier for one in written_down(desk)] == ["", "", ""]
    assert written_down(desk)[1].reading == "-60 dBm"
    moved(desk, "hall-movement", 1)
    assert [bool(one.earlier) for one in written_down(desk)] == [True, True, False]
    again = keep(desk, wish("hall-movement", step="fit", outcome="done", revision=2))
    assert again.earlier == ""
    desk.job.undo("taken-back", "me")
    assert [(one.key, bool(one.earlier)) for one in written_down(desk)] == [
        ("radio/hall-movement", False),
        ("radio/hall-keypad", False),
        ("hall-movement", True),
    ]


@pytest.mark.parametrize(
    ("key", "step"),
    [
        ("nobody", "fit"),
        ("radio/nobody", "prove"),
        ("view/hall-movement/up//slow", "prove"),
        ("hall-movement", "prove"),
    ],
)
def test_what_the_house_does_not_have_takes_no_result(desk: Desk, key: str, step: str) -> None:
    outcome = "done" if step == "fit" else "passed"
    with pytest.raises(InputError, match="not there any more"):
        keep(desk, wish(key, step=step, outcome=outcome))
    assert written_down(desk) == ()


def test_a_revision_that_never_was_is_refused(desk: Desk) -> None:
    for revision in (0, 7, -3):
        with pytest.raises(InputError, match="there is no revision"):
            keep(desk, wish("radio/hall-keypad", revision=revision))
