"""Attachments of a job: pictures, papers, text and readings; each about the job, or about one thing of it."""

from __future__ import annotations

from urllib.parse import quote

from fastapi import APIRouter, Request
from fastapi.responses import Response
from starlette.concurrency import run_in_threadpool

from wardwright.documents.content.names import names_of
from wardwright.errors import InputError
from wardwright.server.desk import Desk
from wardwright.server.routers.jobs import desks_of
from wardwright.server.work_messages import AttachmentChange, AttachmentLine
from wardwright.store.jobs.attachments import (
    Attachment,
    attach,
    attachment,
    attachments,
    change,
    content_of,
    refuse_long,
)
from wardwright.store.jobs.kinds import READINGS, TEXT

router = APIRouter(prefix="/api/jobs/{file}/attachments", tags=["attachments"])
LISTS = ("devices", "openings")
"""What a thing may belong to, besides findings."""


@router.get("")
def listed(request: Request, file: str) -> tuple[AttachmentLine, ...]:
    """List all that was ever attached, oldest first."""
    desk = desks_of(request).desk(file)
    return tuple(_line(desk, one) for one in attachments(desk.job))


@router.post("", status_code=201)
async def add(
    request: Request, file: str, *, name: str, author: str, about: str = "", note: str = ""
) -> AttachmentLine:
    """Attach something: its content is the body."""
    desk = await run_in_threadpool(desks_of(request).desk, file)
    announced = request.headers.get("content-length", "")
    refuse_long(desk.job, int(announced) if announced.isdecimal() else 0, name=name)
    content = bytearray()
    async for piece in request.stream():
        content += piece
        refuse_long(desk.job, len(content), name=name)

    def keep() -> AttachmentLine:
        _refuse_astray(desk, about)
        number = attach(desk.job, bytes(content), name=name, about=about, note=note, author=author[:60])
        return _line(desk, attachment(desk.job, number))

    return await run_in_threadpool(keep)


@router.get("/{number}")
def content(request: Request, file: str, number: int) -> Response:
    """What was attached, as it was."""
    job = desks_of(request).desk(file).job
    one = attachment(job, number)
    # Whatever it is, it may do nothing but be looked at: text is never taken for a page.
    kind = f"{TEXT}; charset=utf-8" if one.kind in (TEXT, READINGS) else one.kind
    headers = {"content-disposition": f"inline; filename*=UTF-8''{quote(one.name)}"}
    return Response(content_of(job, number), media_type=kind, headers=headers)


@router.post("/{number}/changes")
def changed(request: Request, file: str, number: int, *, wish: AttachmentChange) -> AttachmentLine:
    """Take one away, or put it back."""
    desk = desks_of(request).desk(file)
    return _line(desk, change(desk.job, number, wish.what, author=wish.author))


def _refuse_astray(desk: Desk, about: str) -> None:
    """Raise InputError if something is to be about a thing that is not there."""
    kind, _, ident = about.partition("/")
    site = desk.job.site()
    if kind in LISTS and any(one.id == ident for one in getattr(site, kind)):
        return
    if kind == "findings" and any(f"{one.code}/{one.subject}" == ident for one in desk.findings_of(site)):
        return
    if about:
        raise InputError(
            "it is about something that is not there any more",
            where="attachment",
            cure="Choose what it is about again",
        )


def _line(desk: Desk, one: Attachment) -> AttachmentLine:
    kind, _, ident = one.about.partition("/")
    names = names_of(desk.job.site())
    code, _, subject = ident.partition("/")
    name = f"{code}: {names.of(subject)}" if kind == "findings" else names.of(ident)
    return AttachmentLine(
        number=one.number,
        name=one.name,
        kind=one.kind,
        about=one.about,
        about_name=name,
        at=one.at,
        author=one.author,
        note=one.note,
        size_bytes=one.size_bytes,
        starred_lines=one.starred_lines,
        removed_at=one.removed_at,
        removed_by=one.removed_by,
    )
