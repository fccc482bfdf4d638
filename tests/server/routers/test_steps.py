from __future__ import annotations

from fastapi.testclient import TestClient


def test_the_later_steps_follow_the_house_as_it_is(client: TestClient) -> None:
    def devices(step: str) -> set[str]:
        said = client.get("/api/jobs/house.job/steps").json()[step]
        return {line["device"] for storey in said for line in storey["devices"]}

    kept = {one["id"] for one in client.get("/api/jobs/house.job").json()["site"]["devices"]}
    assert devices("fit") == devices("prove") == kept
    gone = {
        "id": "an-edit-1", "author": "me", "base": 1,
        "operations": [{"do": "remove", "of": "devices", "id": "hall-keypad"}],
    }  # fmt: skip
    assert client.post("/api/jobs/house.job/edits", json=gone).status_code == 200
    assert devices("fit") == devices("prove") == kept - {"hall-keypad"}
    assert client.get("/api/jobs/house.job/steps").json()["care"]["lasting"]
