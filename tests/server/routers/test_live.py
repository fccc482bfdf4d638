from __future__ import annotations

import asyncio
import gc
from collections.abc import Coroutine
from concurrent.futures import ThreadPoolExecutor
from typing import Any, cast

import pytest
from fastapi import WebSocket
from fastapi.testclient import TestClient
from starlette.websockets import WebSocketDisconnect

from server.routers.test_jobs import edit
from wardwright.questions.table import QUESTIONS
from wardwright.server.routers.live import live

LIVE = "/api/jobs/house.job/live"
TURN = {"do": "turn-device", "device": "hall-movement", "heading_deg": 190.0}


def heard(socket: Any, kind: str) -> dict[str, Any]:
    """The next message of a kind."""
    for _ in range(20):
        said: dict[str, Any] = socket.receive_json()
        if said["kind"] == kind:
            return said
    raise AssertionError(f"no {kind} came")


def board_of(socket: Any, number: int | None) -> dict[str, Any]:
    """The next board about one trial, or about the house as kept: one that was held still may come before."""
    for _ in range(20):
        board = heard(socket, "board")
        if board["number"] == number:
            return board
    raise AssertionError(f"no board about {number} came")


def test_a_page_gets_all_answers_then_what_changes(client: TestClient) -> None:
    with client.websocket_connect(LIVE) as socket:
        first = heard(socket, "board")
        assert len(first["answers"]) == len(first["order"]) > 10
        socket.send_json({"kind": "try", "number": 3, "operations": [TURN]})
        tried = heard(socket, "board")
        assert (tried["number"], tried["revision"]) == (3, 1)
        assert 0 < len(tried["answers"]) < len(first["answers"])
        socket.send_json({"kind": "show", "key": "1/front-door"})
        shown = board_of(socket, None)
        assert shown["strip"].startswith("<svg")


def test_news_of_an_edit_come_to_everybody_who_looks(client: TestClient) -> None:
    with client.websocket_connect(LIVE) as one, client.websocket_connect(LIVE) as other:
        for socket in (one, other):
            heard(socket, "board")
        client.post("/api/jobs/house.job/edits", json=edit(1, author="tablet"))
        for socket in (one, other):
            news = heard(socket, "news")
            assert (news["author"], news["revision"]) == ("tablet", 2)
            assert [change["key"] for change in news["changed"]] == ["devices/hall-movement"]
            assert heard(socket, "board")["revision"] == 2


def test_what_was_tried_ends_with_the_next_edit(client: TestClient) -> None:
    """Else the answers after a wall was let go would be those of a wall moved twice."""
    with client.websocket_connect(LIVE) as socket:
        heard(socket, "board")
        socket.send_json({"kind": "try", "number": 1, "operations": [TURN]})
        assert heard(socket, "board")["number"] == 1
        client.post("/api/jobs/house.job/edits", json=edit(1, author="tablet"))
        assert board_of(socket, None)["revision"] == 2


def test_what_is_held_still_is_asked_whole(client: TestClient) -> None:
    with client.websocket_connect(LIVE) as socket:
        heard(socket, "board")
        socket.send_json({"kind": "try", "number": 1, "operations": [TURN]})
        moving, still = board_of(socket, 1), board_of(socket, 1)
        waiting = {int(key.split("/")[0]) for key in moving["waiting"]}
        assert waiting == {question.number for question in QUESTIONS if question.in_hand is None}
        assert still["waiting"] == []
        assert still["order"]


def test_a_job_that_is_not_there_and_a_page_elsewhere_get_nothing(client: TestClient) -> None:
    for address, headers in (("/api/jobs/nothing.job/live", {}), (LIVE, {"origin": "http://evil.example"})):
        with pytest.raises(WebSocketDisconnect), client.websocket_connect(address, headers=headers) as socket:
            socket.receive_json()


def test_a_message_that_makes_no_sense_ends_the_link(client: TestClient) -> None:
    with client.websocket_connect(LIVE) as socket:
        heard(socket, "board")
        socket.send_json({"kind": "dance"})
        with pytest.raises(WebSocketDisconnect):
            heard(socket, "no such kind")


def run_apart(linked: Coroutine[Any, Any, None]) -> None:
    """Run it in a thread of its own: in this one the browser of other tests may have its loop."""
    with ThreadPoolExecutor(1) as apart:
        apart.submit(asyncio.run, linked).result()


class Leaving:
    """The socket of a page that leaves while it is being told something."""

    def __init__(self, client: TestClient) -> None:
        self.app = client.app
        self.headers: dict[str, str] = {}
        self.is_gone = asyncio.Event()

    async def accept(self) -> None:
        """It comes."""

    async def receive_text(self) -> str:
        await self.is_gone.wait()
        raise WebSocketDisconnect(1001)

    async def send_text(self, _: str) -> None:
        self.is_gone.set()
        try:
            await asyncio.sleep(60.0)
        except asyncio.CancelledError:
            raise WebSocketDisconnect(1006) from None


def test_a_page_that_leaves_in_the_middle_of_the_news_ends_quietly(client: TestClient) -> None:
    complaints: list[dict[str, Any]] = []

    async def linked() -> None:
        loop = asyncio.get_running_loop()
        loop.set_exception_handler(lambda _, complaint: complaints.append(complaint))
        await live(cast("WebSocket", Leaving(client)), "house.job")
        gc.collect()  # what a task raised that nobody took is told of when the task goes

    run_apart(linked())
    assert complaints == []


def test_what_goes_wrong_in_speaking_is_not_kept_quiet(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    leaving = Leaving(client)

    async def broken(_: str) -> None:
        leaving.is_gone.set()
        raise ZeroDivisionError

    monkeypatch.setattr(leaving, "send_text", broken)
    with pytest.raises(ZeroDivisionError):
        run_apart(live(cast("WebSocket", leaving), "house.job"))
