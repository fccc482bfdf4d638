from __future__ import annotations

from typing import Any

from fastapi.testclient import TestClient


def edit(number: int, *, author: str = "me", base: int = 1, heading: float = 200.0) -> dict[str, Any]:
    operation = {"do": "turn-device", "device": "hall-movement", "heading_deg": heading}
    return {"id": f"edit-{number:04d}", "author": author, "base": base, "operations": [operation]}


def test_a_job_is_listed_made_and_opened(client: TestClient) -> None:
    assert [one["file"] for one in client.get("/api/jobs").json()] == ["house.job"]
    made = client.post("/api/jobs", json={"file": "new.job", "sample": "one-room"})
    assert (made.status_code, made.json()["revision"]) == (201, 1)
    opened = client.get("/api/jobs/house.job").json()
    assert {one["storey"] for one in opened["storeys"]} == set(opened["houses"]) == {"ground", "first"}
    assert opened["site"]["name"] == "Terrace, first design"
    assert opened["tags"]["hall-control-unit"] == "CU"


def test_a_site_goes_out_as_a_document_and_comes_in_again(client: TestClient) -> None:
    out = client.get("/api/jobs/house.job/document")
    assert "house.json" in out.headers["content-disposition"]
    made = client.post("/api/jobs", json={"file": "again.job", "document": out.json()})
    assert made.status_code == 201
    assert client.get("/api/jobs/again.job/document").json() == out.json()
    broken = out.json() | {"devices": [out.json()["devices"][0] | {"sheet": "nothing"}], "zones": []}
    assert client.post("/api/jobs", json={"file": "broken.job", "document": broken}).status_code == 422
    assert [one["file"] for one in client.get("/api/jobs").json()] == ["again.job", "house.job"]


def test_bad_wishes_are_answered_in_plain_words(client: TestClient) -> None:
    for wish in (
        {"file": "../x.job", "sample": "terrace"},
        {"file": "x.job"},
        {"file": "x.job", "sample": "nowhere"},
    ):
        asked = client.post("/api/jobs", json=wish)
        assert asked.status_code == 422
        assert asked.json()["cure"]
    assert client.get("/api/jobs/nothing.job").json()["what"] == "there is no such job"
    assert client.get("/api/jobs/house.job?revision=9").status_code == 422


def test_an_edit_is_taken_once_and_taken_back(client: TestClient) -> None:
    for _ in range(2):
        taken = client.post("/api/jobs/house.job/edits", json=edit(1))
        assert (taken.status_code, taken.json()["revision"]) == (200, 2)
        assert [one["key"] for one in taken.json()["changed"]] == ["devices/hall-movement"]
    undone = client.post("/api/jobs/house.job/undo", json={"id": "undo-0001", "author": "me", "base": 2})
    assert undone.json()["revision"] == 3
    assert undone.json()["changed"][0]["record"].get("heading_deg") is None
    nothing = client.post("/api/jobs/house.job/undo", json={"id": "undo-0002", "author": "me", "base": 3})
    assert nothing.status_code == 422
    assert [one["undoes"] for one in client.get("/api/jobs/house.job/history").json()] == [2, None, None]


def test_a_stale_edit_is_answered_with_what_changed(client: TestClient) -> None:
    client.post("/api/jobs/house.job/edits", json=edit(1, author="you"))
    refused = client.post("/api/jobs/house.job/edits", json=edit(2, heading=90.0))
    assert refused.status_code == 409
    said = refused.json()
    assert (said["keys"], said["by"], said["revision"]) == (["devices/hall-movement"], ["you"], 2)
    assert said["changed"][0]["record"]["heading_deg"] == 200.0


def test_an_edit_that_does_not_hold_together_changes_nothing(client: TestClient) -> None:
    mount = {"on": "wall", "wall": "nothing", "side": "left", "offset_m": 1.0, "height_m": 2.0}
    wish = edit(1) | {"operations": [{"do": "mount-device", "device": "hall-movement", "mount": mount}]}
    asked = client.post("/api/jobs/house.job/edits", json=wish)
    assert asked.status_code == 422
    assert "nothing" in asked.json()["what"]
    assert client.get("/api/jobs/house.job").json()["revision"] == 1


def test_a_revision_is_compared_with_what_there_is_now(client: TestClient) -> None:
    assert client.post("/api/jobs/house.job/edits", json=edit(1)).status_code == 200
    said = client.get("/api/jobs/house.job/comparison?before=1").json()
    assert (said["before"], said["after"]) == (1, 2)
    assert [one["thing"] for one in said["comparison"]["changes"]] == ["Ground hall movement"]
    assert "11/hall-movement" in {one["key"] for one in said["comparison"]["answers"]}
    assert client.get("/api/jobs/house.job/comparison?before=2").json()["comparison"]["changes"] == []
    assert client.get("/api/jobs/house.job/comparison?before=99").status_code == 422
