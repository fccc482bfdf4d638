from __future__ import annotations

from pathlib import Path

import pytest

from common.houses import on_wall, one_room
from wardwright.errors import JobError
from wardwright.store.jobs import revisions
from wardwright.store.jobs.files import made
from wardwright.store.jobs.revisions import NewRevision

FIRST = one_room()
SECOND = one_room(devices=(on_wall("fan-1", "fan", "south", 2.0),))


def test_revisions_are_read_as_they_were_written(tmp_path: Path) -> None:
    base = made(tmp_path / "a.job")
    revisions.write(base, NewRevision(1, "edit-one", "me", 0, "brought in", None, FIRST))
    revisions.write(base, NewRevision(2, "edit-two", "you", 1, "added", None, SECOND), {"devices/fan-1"})
    assert revisions.newest(base) == 2
    assert (revisions.read(base, 1, where="x"), revisions.read(base, 2, where="x")) == (FIRST, SECOND)
    assert [(one.number, one.author, one.what) for one in revisions.history(base)] == [
        (2, "you", "added"),
        (1, "me", "brought in"),
    ]
    assert (revisions.made_by(base, "edit-two"), revisions.made_by(base, "x")) == (2, None)
    assert revisions.what_of(base, 2) == "added"
    assert (revisions.last_to_take_back(base, "you"), revisions.last_to_take_back(base, "me")) == (2, None)
    changed = revisions.changed_by_others(base, ["devices/fan-1", "devices/fan-2"], since=1, author="me")
    assert changed == {"devices/fan-1": "you"}
    assert revisions.changed_by_others(base, ["devices/fan-1"], since=1, author="you") == {}
    assert revisions.changed_by_others(base, ["devices/fan-1"], since=2, author="me") == {}
    base.close()


def test_a_revision_that_is_not_there_or_damaged_is_said(tmp_path: Path) -> None:
    base = made(tmp_path / "a.job")
    revisions.write(base, NewRevision(1, "edit-one", "me", 0, "brought in", None, FIRST))
    with pytest.raises(JobError, match="there is no revision 7"):
        revisions.read(base, 7, where="x")
    base.execute("UPDATE revision SET sha256 = 'other'")
    with pytest.raises(JobError, match="revision 1 is damaged"):
        revisions.read(base, 1, where="x")
    base.close()
