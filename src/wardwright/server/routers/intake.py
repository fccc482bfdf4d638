"""A house brought in: files handed in, and a job made of them as long work."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from typing import get_args

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool

from wardwright.errors import InputError, JobError
from wardwright.server.handed_in import HandedInFiles
from wardwright.server.routers.jobs import desks_of
from wardwright.server.routers.works import works_of
from wardwright.server.work import Work
from wardwright.server.work_messages import BroughtIn, HandedIn, HandedInLimits, IntakeWish, WorkNews
from wardwright.store.bringing_in import LARGEST_BY_ENDING, House, Wish, bring_in, contents_of, largest_of
from wardwright.store.given_files import GivenFile, Receiving, longer_than
from wardwright.store.jobs.attachments import LARGEST_BYTES, attach
from wardwright.store.jobs.opening import FITTER, make_job
from wardwright.store.reports import report_text

router = APIRouter(prefix="/api", tags=["intake"])
REPORT = "Intake report.txt"
"""What the report is called that is kept with a job."""
STEPS = 4
"""Reading, fitting together, what is worth adding, making the job; one more with notes. [-]"""


def handed_in_of(request: Request) -> HandedInFiles:
    """What was handed in."""
    held: HandedInFiles = request.app.state.handed_in
    return held


@router.get("/limits")
def limits() -> HandedInLimits:
    """What may be handed in, so that the page can say so before it sends anything."""
    units = get_args(get_args(IntakeWish.model_fields["unit"].annotation)[0])
    return HandedInLimits(
        largest_by_ending=LARGEST_BY_ENDING, largest_attachment=LARGEST_BYTES, units=tuple(map(str, units))
    )


@router.post("/files", status_code=201)
async def hand_in(request: Request, name: str) -> HandedIn:
    """Take a file in, piece by piece, up to what a file of its kind may be long."""
    largest = largest_of(name)
    announced = request.headers.get("content-length", "")
    if announced.isdecimal() and int(announced) > largest:
        raise longer_than(name, largest)
    receiving = Receiving(name, handed_in_of(request).folder, largest_bytes=largest)
    try:
        async for piece in request.stream():
            await run_in_threadpool(receiving.take, piece)
    except BaseException:
        receiving.given.close()
        raise
    return HandedIn(id=handed_in_of(request).put(receiving.given), name=name, size_bytes=receiving.size_bytes)


@router.delete("/files/{ident}", status_code=204)
def let_go(request: Request, ident: str) -> None:
    """Let a file go that nothing is to be made of."""
    handed_in_of(request).drop(ident)


@router.post("/intake", status_code=202)
def begin(request: Request, wish: IntakeWish) -> WorkNews:
    """Make a job of what was handed in, as long work."""
    held, desks = handed_in_of(request), desks_of(request)
    taken: dict[str, GivenFile] = {}
    try:
        for ident in filter(None, (wish.file, wish.notes)):
            taken[ident] = held.take(ident)
    except InputError:
        _give_back(held, taken)
        raise
    file = taken[wish.file]
    made_of = Wish(file, taken.get(wish.notes or ""), wish.premises or None, wish.unit)

    def do(work: Work) -> BroughtIn:
        is_made = False
        try:
            house = bring_in(made_of, desks.catalogue, work)
            if wish.premises is None and house.report is not None and house.report.premises:
                return _told(house, "")
            work.step("making the job")
            name = desks.free_name(file.name)
            make_job(desks.path_of(name), house.site)
            is_made = True
            if house.report is not None:
                text = report_text(house.report).encode()
                # The job is whole without it, and the page shows it: it is no reason to call the work failed.
                with suppress(JobError):
                    attach(desks.desk(name).job, text, name=REPORT, author=FITTER)
            return _told(house, name)
        finally:
            if is_made:
                for one in taken.values():
                    one.close()
            else:
                _give_back(held, taken)

    return works_of(request).begin(f"bringing in {file.name}", do, steps=STEPS + len(taken) - 1).news()


def _give_back(held: HandedInFiles, taken: Mapping[str, GivenFile]) -> None:
    """What nothing was made of can be tried again, with other notes or other premises."""
    for ident, given in taken.items():
        held.put(given, ident)


def _told(house: House, name: str) -> BroughtIn:
    return BroughtIn(
        file=name,
        choices=() if name or house.report is None else house.report.premises,
        name=house.site.name,
        counts=contents_of(house.site),
        report=house.report,
        noted=house.noted,
        worth_adding=house.worth_adding,
    )
