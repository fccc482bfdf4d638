"""Jobs: which there are, a new one, one opened, its history, an edit taken back."""

from __future__ import annotations

import json
from urllib.parse import quote

from fastapi import APIRouter, Request
from fastapi.responses import JSONResponse, Response

from wardwright.documents.content.board import board_questions
from wardwright.documents.content.screen import storeys_on_screen
from wardwright.documents.drawing.inks import COLOURS, stylesheet
from wardwright.errors import InputError
from wardwright.model.document import plain_site, read_document, write_document
from wardwright.model.edits import Edit
from wardwright.server.desk import Desk, tags_of
from wardwright.server.desks import Desks
from wardwright.server.messages import (
    Compared,
    HistoryLine,
    JobLine,
    NewJob,
    Opened,
    Refused,
    Taken,
    UndoWish,
)
from wardwright.store.jobs.files import ENDING
from wardwright.store.jobs.job import Conflict, Kept
from wardwright.store.jobs.opening import make_job
from wardwright.store.samples import read_sample

router = APIRouter(prefix="/api/jobs", tags=["jobs"])


def desks_of(request: Request) -> Desks:
    """The folder's jobs."""
    desks: Desks = request.app.state.desks
    return desks


@router.get("")
def jobs(request: Request) -> tuple[JobLine, ...]:
    """List the jobs of the folder."""
    return desks_of(request).lines()


@router.post("", status_code=201)
def make(request: Request, wish: NewJob) -> JobLine:
    """Make a job of a sample or of a site document."""
    desks = desks_of(request)
    path = desks.path_of(wish.file)
    if (wish.sample is None) == (wish.document is None):
        raise InputError(
            "nothing says what the job is made of", where="job", cure="Give a sample or a document"
        )
    if wish.sample is not None:
        site = read_sample(wish.sample)
    else:
        site = desks.checked(read_document(json.dumps(wish.document), where="the document"))
    make_job(path, site)
    desk = desks.desk(wish.file)
    return JobLine(file=wish.file, name=site.name, revision=desk.job.newest, fault="")


@router.get("/{file}")
def opened(request: Request, file: str, revision: int | None = None) -> Opened:
    """Open a job, as it is or as it was at a revision."""
    desk = desks_of(request).desk(file)
    number = desk.job.newest if revision is None else revision
    site = desk.job.site(number)
    return Opened(
        file=file,
        revision=number,
        site=plain_site(site),
        storeys=storeys_on_screen(site),
        houses=desk.houses(site),
        tags=tags_of(site, desk.catalogue),
        stylesheet=stylesheet({name: f"var(--{name})" for name in COLOURS}),
        questions=board_questions(),
    )


@router.get("/{file}/history")
def history(request: Request, file: str) -> tuple[HistoryLine, ...]:
    """List all revisions, newest first."""
    return tuple(HistoryLine(**one._asdict()) for one in desks_of(request).desk(file).job.history())


@router.get("/{file}/comparison")
def compared(request: Request, file: str, before: int) -> Compared:
    """What became of the house, its answers and its findings since a revision."""
    return desks_of(request).desk(file).comparison(before)


@router.get("/{file}/document")
def document(request: Request, file: str) -> Response:
    """The newest site as a site document to keep."""
    job = desks_of(request).desk(file).job
    name = f"{file.removesuffix(ENDING)}.json"
    headers = {"content-disposition": f"attachment; filename*=UTF-8''{quote(name)}"}
    return Response(write_document(job.site()), media_type="application/json", headers=headers)


@router.post("/{file}/edits", responses={409: {"model": Refused}})
def edit(request: Request, file: str, wish: Edit) -> JSONResponse:
    """Take an edit, or say who changed the same things since the revision that it stands on."""
    desk = desks_of(request).desk(file)
    return _answer(desk, desk.job.edit(wish, check=desk.checked), since=wish.base)


@router.post("/{file}/undo", responses={409: {"model": Refused}})
def undo(request: Request, file: str, wish: UndoWish) -> JSONResponse:
    """Take back the author's last edit that is not taken back yet."""
    desk = desks_of(request).desk(file)
    kept = desk.job.undo(wish.id, wish.author)
    if kept is None:
        raise InputError("there is nothing to take back", where="job", cure="It is as you found it")
    return _answer(desk, kept, since=wish.base)


def _answer(desk: Desk, kept: Kept | Conflict, *, since: int) -> JSONResponse:
    since = min(since, kept.revision)
    if isinstance(kept, Conflict):
        now = desk.changed(since, kept.revision)
        refused = Refused(revision=kept.revision, keys=kept.keys, by=kept.by, changed=now)
        return JSONResponse(refused.model_dump(mode="json"), status_code=409)
    if kept.is_new:
        for tell in tuple(desk.listeners):
            tell(kept.revision)
    taken = Taken(revision=kept.revision, changed=desk.changed(since, kept.revision))
    return JSONResponse(taken.model_dump(mode="json"))
