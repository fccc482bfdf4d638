from __future__ import annotations

from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from wardwright.server.app import create_app
from wardwright.store.catalogue import load_catalogue


def test_a_page_elsewhere_gets_nothing(client: TestClient) -> None:
    assert client.get("/api/jobs", headers={"host": "somewhere.example"}).status_code == 400
    asked = client.post(
        "/api/jobs", json={"file": "x.job", "sample": "terrace"}, headers={"origin": "http://evil.example"}
    )
    assert asked.status_code == 403
    assert len(client.get("/api/jobs").json()) == 1


def test_every_answer_forbids_what_the_page_does_not_need(client: TestClient) -> None:
    headers = client.get("/api/jobs").headers
    assert "default-src 'self'" in headers["content-security-policy"]
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["cache-control"] == "no-store"


def test_the_built_page_is_served_where_there_is_one(tmp_path: Path) -> None:
    page = tmp_path / "static"
    page.mkdir()
    (page / "index.html").write_text("<title>page</title>")
    with TestClient(create_app(tmp_path, load_catalogue(), static=page)) as client:
        assert "<title>page</title>" in client.get("/").text
        assert client.get("/../secret").status_code == 404


@pytest.mark.parametrize("address", ["/docs", "/redoc"])
def test_no_page_of_anybody_elses_is_served(client: TestClient, address: str) -> None:
    assert client.get(address).status_code == 404
