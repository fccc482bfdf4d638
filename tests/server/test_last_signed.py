"""Question 20 in the app: held against what was signed last."""

from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.model.edits import Edit
from wardwright.questions.answer import Answer
from wardwright.questions.what_changed import NUMBER
from wardwright.server.desk import Desk
from wardwright.server.last_signed import NOT_SIGNED, OTHER_PROGRAM
from wardwright.server.signing import STEPS, sign_now
from wardwright.server.work import Work
from wardwright.server.work_messages import SigningWish
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample


def twenty(desk: Desk) -> Answer:
    (found,) = (one for one in desk.state().answers if one.question == NUMBER)
    return found


def signed(desk: Desk) -> None:
    sign_now(
        desk, SigningWish(revision=desk.job.newest, author="Fitter"), Work("signing", job="", steps=STEPS + 1)
    )


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return Desk(new_job(tmp_path / "a.job", read_sample("one-room"), author="me"), load_catalogue())


def test_before_anything_is_signed_there_is_nothing_to_hold_it_against(desk: Desk) -> None:
    assert twenty(desk).reason == f"not computable: {NOT_SIGNED}"


def test_once_signed_nothing_is_to_be_repeated_until_something_changes(desk: Desk) -> None:
    signed(desk)
    found = twenty(desk)
    assert (found.verdict, found.reason) == ("good", None)
    assert "held against revision 1, as signed" in found.notes
    device = desk.job.site().devices[0].id
    turned = {"do": "remove", "of": "devices", "id": device}
    edit = {"id": "take-away", "author": "me", "base": 1, "operations": [turned]}
    desk.job.edit(Edit.model_validate(edit))
    changed = twenty(desk)
    (count,) = (one.estimate for one in changed.parts if one.name.startswith("things"))
    assert count is not None
    assert count.value >= 1
    signed(desk)
    assert twenty(desk).verdict == "good"


def test_what_another_program_signed_is_not_held_against_this_one(desk: Desk) -> None:
    signed(desk)
    with desk.job.transaction() as base:
        base.execute("UPDATE signed SET program = '0.0.1'")
    assert twenty(desk).reason == f"not computable: {OTHER_PROGRAM}"
