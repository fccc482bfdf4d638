from __future__ import annotations

from pathlib import Path

import pytest

from common.fitted import text_of
from wardwright.documents.content.copies import COPIES
from wardwright.documents.paper_list import TITLES
from wardwright.server import written
from wardwright.server.desk import Desk
from wardwright.server.later_steps import keys_of_round
from wardwright.server.messages import ResultWish
from wardwright.server.site_results import keep
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample


def test_each_class_is_written_alone_and_the_open_one_asks_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with new_job(tmp_path / "a.job", read_sample("one-room"), author="me") as job:
        desk = Desk(job, load_catalogue())
        client = written.written(desk, "client")
        assert set(client) == set(TITLES["client"])
        assert written.written(desk, "client") is client
        assert set(TITLES["fitter"]) <= set(written.written(desk, "fitter"))

        def nobody(*_: object) -> None:
            raise AssertionError("an open paper needs no answer")

        monkeypatch.setattr(desk, "state", nobody)
        assert set(written.written(desk, "open")) == set(TITLES["open"])


def test_what_was_written_down_on_site_goes_to_the_fitters_own_papers_alone(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", read_sample("one-room"), author="me") as job:
        desk = Desk(job, load_catalogue())
        before = {copy: written.written(desk, copy) for copy in COPIES}
        device = next(one.id for one in job.site().devices if one.id.endswith("movement"))
        key = next(one for one in keys_of_round(desk, job.site()) if one.startswith(f"radio/{device}"))
        given = {
            "id": "r1",
            "step": "prove",
            "key": key,
            "outcome": "not passed",
            "revision": 1,
            "author": "me",
        }
        keep(
            desk, ResultWish.model_validate({**given, "reading": "minus 91 dBm", "remark": "behind a mirror"})
        )
        after = {copy: written.written(desk, copy) for copy in COPIES}
    assert after["client"] == before["client"]
    assert after["open"] == before["open"]
    said = {name: text_of(name, content) for name, content in after["fitter"].items()}
    found = {name for name, text in said.items() if "behind a mirror" in " ".join(text.split())}
    assert found == {"tests.pdf", "tests.xlsx"}
    assert "minus 91 dBm" in " ".join(said["records.pdf"].split())
    assert (
        "0 passed, 1 not passed, 0 not done. Of what nothing is written down, nothing was done."
        in " ".join(said["tests.pdf"].split())
    )
