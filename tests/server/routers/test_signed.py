from __future__ import annotations

from typing import Any

import pytest
from fastapi.testclient import TestClient

from server.routers.test_intake import ended
from server.routers.test_jobs import edit
from wardwright.server import signing

AT = "/api/jobs/house.job/signed"


def signed(client: TestClient, **more: Any) -> dict[str, Any]:
    wish = {"revision": 1, "author": "Fitter", "what": "the design as shown"} | more
    begun = client.post(AT, json=wish)
    assert begun.status_code == 202, begun.json()
    return ended(client, begun.json()["id"])


def compared(client: TestClient) -> dict[str, Any]:
    said = ended(client, client.post(f"{AT}/1/compared").json()["id"])
    assert said["state"] == "done", said
    assert said["begun"] == said["of"]
    result: dict[str, Any] = said["result"]
    return result


def test_answers_are_signed_step_by_step_and_listed(client: TestClient) -> None:
    said = signed(client)
    assert (said["state"], said["job"]) == ("done", "house.job")
    assert said["begun"] == said["of"] == signing.STEPS + 1
    (one,) = client.get(AT).json()
    assert one == said["result"]
    assert (one["author"], one["what"], one["revision"]) == ("Fitter", "the design as shown", 1)
    assert one["answers"] > 10
    assert one["findings"] > 5
    assert (one["is_same_house"], one["is_same_program"]) == (True, True)


def test_nothing_differs_at_once(client: TestClient) -> None:
    signed(client)
    result = compared(client)
    assert (result["answers"], result["findings"], result["house"], result["program"]) == ([], [], [], [])
    (one,) = client.get(AT).json()
    assert result["same"] == one["answers"] + one["findings"]


def test_a_changed_house_is_told_from_a_changed_program(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    signed(client)
    client.post("/api/jobs/house.job/edits", json=edit(1, heading=200.0))
    result = compared(client)
    assert {one["cause"] for one in (*result["answers"], *result["findings"])} == {"house"}
    assert ([one["thing"] for one in result["house"]], result["program"]) == (["Ground hall movement"], [])
    assert not client.get(AT).json()[0]["is_same_house"]

    real = signing.told_of

    def otherwise(*given: Any, **named: Any) -> signing.Told:
        told = real(*given, **named)
        return told._replace(answers=tuple(a.model_copy(update={"verdict": "thin"}) for a in told.answers))

    monkeypatch.setattr(signing, "told_of", otherwise)
    assert "please report it" in compared(client)["program"][0]
    monkeypatch.setattr(signing, "PROGRAM", "9.0")
    result = compared(client)
    assert result["program"] == ["the program is version 9.0 now; it was 0.1.0"]
    # One whose verdict was thin already was changed by the house alone.
    assert {"program", "both"} <= {one["cause"] for one in result["answers"]} <= {"program", "both", "house"}
    assert not client.get(AT).json()[0]["is_same_program"]


def test_taken_back_the_house_is_as_signed_again(client: TestClient) -> None:
    signed(client)
    client.post("/api/jobs/house.job/edits", json=edit(1))
    client.post("/api/jobs/house.job/undo", json={"id": "undo-0001", "author": "me", "base": 2})
    assert client.get(AT).json()[0]["is_same_house"]
    assert compared(client)["answers"] == []


def test_what_was_not_seen_is_not_signed(client: TestClient) -> None:
    client.post("/api/jobs/house.job/edits", json=edit(1, author="you"))
    refused = client.post(AT, json={"revision": 1, "author": "Fitter"})
    assert (refused.status_code, "changed since you saw it" in refused.json()["what"]) == (422, True)
    for wish in ({"author": ""}, {"author": "Fitter", "what": "PIN 4711"}):
        assert client.post(AT, json={"revision": 2} | wish).status_code == 422
    assert client.post(f"{AT}/7/compared").status_code == 422
    assert client.get(AT).json() == []


def test_stopped_before_it_is_kept_nothing_is_signed(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = signing.told_of

    def stopped(desk: Any, site: Any, work: Any, **named: Any) -> signing.Told:
        told = real(desk, site, work, **named)
        work.stop()
        return told

    monkeypatch.setattr(signing, "told_of", stopped)
    assert signed(client)["state"] == "stopped"
    assert client.get(AT).json() == []
