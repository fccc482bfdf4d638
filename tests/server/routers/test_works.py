from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Any

import pytest
from fastapi.testclient import TestClient
from starlette.websockets import WebSocketDisconnect

from server.test_work import RESULT
from wardwright.server.work import Work, Works
from wardwright.server.work_messages import BroughtIn


def begun(client: TestClient, go_on: threading.Event) -> Work:
    works: Works = client.app.state.works  # type: ignore[attr-defined]

    def do(work: Work) -> BroughtIn:
        for name in ("one", "two"):
            work.step(name)
            go_on.wait(10.0)
        return RESULT

    return works.begin("something", do, steps=2)


def told(client: TestClient, ident: str, *, when_begun: Callable[[], object]) -> list[dict[str, Any]]:
    """All that comes over the link until it is closed."""
    said: list[dict[str, Any]] = []
    with client.websocket_connect(f"/api/works/{ident}/live") as socket:
        while not said or said[-1]["state"] in ("waiting", "running"):
            said.append(socket.receive_json())
            if said[-1]["step"] == "one" and [one["step"] for one in said].count("one") == 1:
                when_begun()
        with pytest.raises(WebSocketDisconnect):
            socket.receive_json()
    return said


def test_progress_comes_over_the_link_and_the_result_last(client: TestClient) -> None:
    go_on = threading.Event()
    work = begun(client, go_on)
    said = told(client, work.id, when_begun=go_on.set)
    assert said[-1]["state"] == "done"
    assert said[-1]["result"]["file"] == "a.job"
    assert {one["step"] for one in said} >= {"one"}
    late = told(client, work.id, when_begun=list)
    assert [one["state"] for one in late] == ["done"]


def test_the_server_answers_meanwhile_and_stops_it_when_told(client: TestClient) -> None:
    go_on = threading.Event()
    work = begun(client, go_on)
    assert [one["id"] for one in client.get("/api/works").json()] == [work.id]
    assert client.get("/api/jobs/house.job").status_code == 200

    def stop() -> None:
        assert client.post(f"/api/works/{work.id}/stop").json()["is_stopping"]
        go_on.set()

    assert told(client, work.id, when_begun=stop)[-1]["state"] == "stopped"
    assert client.get("/api/works").json() == []
    assert client.get(f"/api/works/{work.id}").json()["state"] == "stopped"


def test_what_is_not_there_and_a_page_elsewhere_get_nothing(client: TestClient) -> None:
    assert client.get("/api/works/nothing").status_code == 422
    work = begun(client, threading.Event())
    for ident, headers in (("nothing", {}), (work.id, {"origin": "http://evil.example"})):
        with (
            pytest.raises(WebSocketDisconnect),
            client.websocket_connect(f"/api/works/{ident}/live", headers=headers) as socket,
        ):
            socket.receive_json()
    work.stop()
