"""The live link: trials in, answers and news out. The latest trial wins; nothing tried is kept."""

from __future__ import annotations

import asyncio
from contextlib import suppress
from typing import Annotated

from fastapi import APIRouter, WebSocket, WebSocketDisconnect
from pydantic import Field, TypeAdapter, ValidationError
from starlette.concurrency import run_in_threadpool

from wardwright.documents.content.screen import storeys_on_screen
from wardwright.errors import InputError
from wardwright.model.edits import Operation
from wardwright.server.desk import Desk, Seen
from wardwright.server.desks import Desks
from wardwright.server.messages import News, Show, Try
from wardwright.server.origins import is_from_elsewhere

router = APIRouter(tags=["live"])
INCOMING: TypeAdapter[Show | Try] = TypeAdapter(Annotated[Show | Try, Field(discriminator="kind")])
NO_SUCH_JOB = 4404
NOT_UNDERSTOOD = 4400
ANOTHER_PAGE = 4403
STILL_S = 0.3
"""What is tried is said to stand still when nothing newer came for so long. [s] (assumption: a hand that rests)"""


class Page:
    """One page that looks at a job: what it shows, what it tries, what it was sent."""

    def __init__(self, socket: WebSocket, desk: Desk) -> None:
        self.socket = socket
        self.desk = desk
        self.show: str | None = None
        self.trial: Try | None = None
        self.revision = desk.job.newest
        self.seen = Seen({}, None)
        self.wanted = asyncio.Event()
        self.wanted.set()
        self._loop = asyncio.get_running_loop()

    def tell(self, _: int) -> None:
        """Called from any thread: there is a new revision."""
        self._loop.call_soon_threadsafe(self.wanted.set)

    async def listen(self) -> None:
        """Take in what the page says; only the latest of it counts."""
        while True:
            said = INCOMING.validate_json(await self.socket.receive_text())
            if isinstance(said, Show):
                self.show, self.trial = said.key, None
            else:
                self.trial = said if said.operations else None
            self.wanted.set()

    async def speak(self) -> None:
        """Send what is new, one thing at a time: while it is worked out, later wishes replace earlier ones."""
        while True:
            await self.wanted.wait()
            self.wanted.clear()
            newest = self.desk.job.newest
            if newest != self.revision:
                # What was tried stood on the house before; most often it is what was kept now.
                before, self.revision, self.trial = self.revision, newest, None
                await self._news(before, newest)
            trial = None if self.trial is None else (self.trial.number, self.trial.operations)
            waiting = await self._board(trial, is_in_hand=trial is not None)
            if waiting:
                # Whoever holds it still for so long wants to read: all the rest is asked too.
                with suppress(TimeoutError):
                    await asyncio.wait_for(self.wanted.wait(), STILL_S)
                    continue
                await self._board(trial, is_in_hand=False)

    async def _board(self, trial: tuple[int, tuple[Operation, ...]] | None, *, is_in_hand: bool) -> bool:
        """Send what the page is to show; whether some of it waits until what is tried stands still."""
        board, self.seen = await run_in_threadpool(
            self.desk.board, self.seen, show=self.show, trial=trial, is_in_hand=is_in_hand
        )
        await self.socket.send_text(board.model_dump_json())
        return bool(board.waiting)

    async def _news(self, before: int, after: int) -> None:
        job = self.desk.job
        last = next(one for one in job.history() if one.number == after)
        old = await run_in_threadpool(self.desk.houses, job.site(before))
        new = await run_in_threadpool(self.desk.houses, job.site(after))
        news = News(
            revision=after,
            author=last.author,
            what=last.what,
            changed=await run_in_threadpool(self.desk.changed, before, after),
            storeys=storeys_on_screen(job.site(after)),
            houses={name: drawn for name, drawn in new.items() if old.get(name) != drawn},
        )
        await self.socket.send_text(news.model_dump_json())


@router.websocket("/api/jobs/{file}/live")
async def live(socket: WebSocket, file: str) -> None:
    """Link a page to a job until it goes."""
    if is_from_elsewhere(socket.headers):
        await socket.close(ANOTHER_PAGE)
        return
    await socket.accept()
    desks: Desks = socket.app.state.desks
    try:
        desk = await run_in_threadpool(desks.desk, file)
    except InputError as fault:
        await socket.close(NO_SUCH_JOB, fault.what[:100])
        return
    page = Page(socket, desk)
    desk.listeners.add(page.tell)
    speaking = asyncio.create_task(page.speak())
    try:
        await page.listen()
    except WebSocketDisconnect:
        pass
    except ValidationError:
        await _ended(speaking)  # first: nothing may be sent once the link is closed
        await socket.close(NOT_UNDERSTOOD)
    finally:
        desk.listeners.discard(page.tell)
        await _ended(speaking)


async def _ended(speaking: asyncio.Task[None]) -> None:
    """Stop speaking; that the page left in the middle of a sentence is no fault, all else is raised."""
    speaking.cancel()
    await asyncio.wait([speaking])
    if not speaking.cancelled():
        with suppress(WebSocketDisconnect):
            speaking.result()
