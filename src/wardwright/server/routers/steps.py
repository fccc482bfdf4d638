"""The later steps of a job: what is fitted where, what is tested in which order, and what has a date."""

from __future__ import annotations

from fastapi import APIRouter, Request

from wardwright.documents.content.battery_days import battery_days
from wardwright.documents.content.care_list import care_list
from wardwright.server.later_steps import drawn_of, gives_way, round_of, stages_of
from wardwright.server.messages import Drawn, GivesWay, LaterSteps, ResultWish
from wardwright.server.routers.jobs import desks_of
from wardwright.server.site_results import keep, written_down
from wardwright.store.clock import today
from wardwright.works.site_result import SiteResult

router = APIRouter(prefix="/api/jobs/{file}/steps", tags=["steps"])


@router.get("")
def steps(request: Request, file: str) -> LaterSteps:
    """What the later steps are about, of the house as it is now."""
    desk = desks_of(request).desk(file)
    revision = desk.job.newest
    state = desk.state(revision)
    return LaterSteps(
        revision=revision,
        fit=stages_of(desk, state),
        prove=round_of(desk, state),
        care=care_list(state.site, desk.catalogue, today=today()),
        batteries=battery_days(state.site, desk.catalogue, state.answers, today=today()),
    )


@router.get("/drawn")
def drawn(request: Request, file: str, *, key: str) -> Drawn:
    """What a test, one walk of it, or the whole round draws on the plan."""
    return drawn_of(desks_of(request).desk(file), key)


@router.get("/gives-way")
def way(request: Request, file: str, *, device: str) -> GivesWay:
    """How far one device may be fixed from its place before an answer fails."""
    return gives_way(desks_of(request).desk(file), device)


@router.get("/results")
def results(request: Request, file: str) -> tuple[SiteResult, ...]:
    """What was written down last of each device and each test."""
    return written_down(desks_of(request).desk(file))


@router.post("/results", status_code=201)
def write(request: Request, file: str, wish: ResultWish) -> SiteResult:
    """Write down that a device is fitted, or what came of a test."""
    return keep(desks_of(request).desk(file), wish)
