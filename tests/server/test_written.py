from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.documents.paper_list import TITLES
from wardwright.server import written
from wardwright.server.desk import Desk
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
