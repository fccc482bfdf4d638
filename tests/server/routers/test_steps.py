from __future__ import annotations

from typing import Any

from fastapi.testclient import TestClient

STEPS = "/api/jobs/house.job/steps"


def fitted(client: TestClient) -> set[str]:
    said = client.get(STEPS).json()["fit"]
    return {line["device"] for stage in said for line in stage["devices"]}


def round_by_key(client: TestClient) -> dict[str, Any]:
    said = client.get(STEPS).json()["prove"]
    return {test["key"]: test for stop in said["stops"] for test in stop["tests"]}


def test_the_later_steps_follow_the_house_as_it_is(client: TestClient) -> None:
    kept = {one["id"] for one in client.get("/api/jobs/house.job").json()["site"]["devices"]}
    assert fitted(client) == kept
    assert "operation/hall-keypad" in round_by_key(client)
    gone = {
        "id": "an-edit-1", "author": "me", "base": 1,
        "operations": [{"do": "remove", "of": "devices", "id": "hall-keypad"}],
    }  # fmt: skip
    assert client.post("/api/jobs/house.job/edits", json=gone).status_code == 200
    assert fitted(client) == kept - {"hall-keypad"}
    assert "operation/hall-keypad" not in round_by_key(client)
    said = client.get(STEPS).json()
    assert said["revision"] == 2
    assert said["care"]["lasting"]


def test_a_test_is_drawn_and_one_that_is_not_there_is_refused_with_its_cure(client: TestClient) -> None:
    walk = round_by_key(client)["view/hall-movement"]["walks"][0]["key"]
    drawn = client.get(f"{STEPS}/drawn", params={"key": walk}).json()
    assert "ink-walk" in drawn["storeys"]["ground"]
    wrong = client.get(f"{STEPS}/drawn", params={"key": "view/nobody"})
    assert wrong.status_code == 422
    assert "Look at the round as it is now" in wrong.json()["cure"]
    assert client.get(f"{STEPS}/drawn").status_code == 422


def test_how_far_a_device_gives_way_is_asked_one_by_one(client: TestClient) -> None:
    said = client.get(f"{STEPS}/gives-way", params={"device": "hall-keypad"}).json()
    assert (said["device"], said["revision"]) == ("hall-keypad", 1)
    assert all(one.startswith("May be ") for one in said["ways"])
    assert client.get(f"{STEPS}/gives-way", params={"device": "nobody"}).status_code == 422


def wish(**more: Any) -> dict[str, Any]:
    given = {
        "id": "r1",
        "step": "prove",
        "key": "radio/hall-keypad",
        "outcome": "passed",
        "revision": 1,
        "author": "me",
    }
    return {**given, **more}


def test_what_is_written_down_is_there_when_asked_again(client: TestClient) -> None:
    assert client.get(f"{STEPS}/results").json() == []
    made = client.post(f"{STEPS}/results", json=wish(reading="-60 dBm", remark="by the stairs"))
    assert made.status_code == 201
    assert client.get(f"{STEPS}/results").json() == [made.json()]
    assert client.post(f"{STEPS}/results", json=wish()).json() == made.json()  # sent again


def test_what_cannot_be_written_down_is_refused_in_words(client: TestClient) -> None:
    for wrong in (
        {"outcome": "done"},
        {"outcome": "splendid"},
        {"step": "sing"},
        {"key": "radio/nobody"},
        {"revision": 9},
        {"author": ""},
        {"remark": "code 4711"},
        {"remark": "x" * 3000},
        {"id": ""},
    ):
        assert client.post(f"{STEPS}/results", json=wish(**wrong)).status_code == 422, wrong
    assert client.get(f"{STEPS}/results").json() == []
    assert client.post(f"{STEPS}/results", json=wish(author="other")).status_code == 201
    meanwhile = client.post(f"{STEPS}/results", json=wish(id="r2"))
    assert meanwhile.status_code == 422
    assert "meanwhile" in meanwhile.json()["what"]
