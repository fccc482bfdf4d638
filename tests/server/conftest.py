from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from wardwright.server.app import create_app
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample


@pytest.fixture
def client(tmp_path: Path) -> Iterator[TestClient]:
    new_job(tmp_path / "house.job", read_sample("terrace"), author="fitter").close()
    with TestClient(create_app(tmp_path, load_catalogue())) as started:
        yield started
