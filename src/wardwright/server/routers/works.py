"""Long work: what is under way, how it stands, told to stop; and a link over which each step of it comes."""

from __future__ import annotations

import asyncio
from contextlib import suppress

from fastapi import APIRouter, Request, WebSocket, WebSocketDisconnect

from wardwright.errors import JobError
from wardwright.server.origins import is_from_elsewhere
from wardwright.server.routers.live import ANOTHER_PAGE
from wardwright.server.work import Works
from wardwright.server.work_messages import WorkNews

router = APIRouter(prefix="/api/works", tags=["works"])
NO_SUCH_WORK = 4404


def works_of(request: Request) -> Works:
    """All long work."""
    works: Works = request.app.state.works
    return works


@router.get("")
def under_way(request: Request) -> tuple[WorkNews, ...]:
    """List what has not ended."""
    return tuple(one.news() for one in works_of(request).under_way())


@router.get("/{ident}")
def news(request: Request, ident: str) -> WorkNews:
    """How one piece of it stands."""
    return works_of(request).work(ident).news()


@router.post("/{ident}/stop")
def stop(request: Request, ident: str) -> WorkNews:
    """Want no more of it; what has ended stays as it is."""
    work = works_of(request).work(ident)
    work.stop()
    return work.news()


@router.websocket("/{ident}/live")
async def live(socket: WebSocket, ident: str) -> None:
    """Send how it stands whenever that changes, until it has ended."""
    if is_from_elsewhere(socket.headers):
        await socket.close(ANOTHER_PAGE)
        return
    await socket.accept()
    works: Works = socket.app.state.works
    try:
        work = works.work(ident)
    except JobError as fault:
        await socket.close(NO_SUCH_WORK, fault.what[:100])
        return
    loop, changed = asyncio.get_running_loop(), asyncio.Event()
    changed.set()

    def tell() -> None:
        with suppress(RuntimeError):  # the loop is closed already when the server goes down
            loop.call_soon_threadsafe(changed.set)

    work.listeners.add(tell)
    try:
        with suppress(WebSocketDisconnect):
            while True:
                await changed.wait()
                changed.clear()
                said = work.news()
                await socket.send_text(said.model_dump_json())
                if said.state in ("done", "stopped", "failed"):
                    await socket.close()
                    return
    finally:
        work.listeners.discard(tell)
