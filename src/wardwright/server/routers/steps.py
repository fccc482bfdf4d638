"""The later steps of a job: what is fitted where, what is walk-tested, and what has a date."""

from __future__ import annotations

from fastapi import APIRouter, Request

from wardwright.documents.content.care_list import care_list
from wardwright.documents.content.fitting_list import fitting_list
from wardwright.documents.content.proving_list import proving_list
from wardwright.server.messages import LaterSteps
from wardwright.server.routers.jobs import desks_of
from wardwright.store.clock import today

router = APIRouter(prefix="/api/jobs/{file}/steps", tags=["steps"])


@router.get("")
def steps(request: Request, file: str) -> LaterSteps:
    """What the later steps are about, of the house as it is now."""
    desk = desks_of(request).desk(file)
    state = desk.state()
    return LaterSteps(
        fit=fitting_list(state.site, desk.catalogue, state.findings),
        prove=proving_list(state.site, desk.catalogue, state.answers),
        care=care_list(state.site, desk.catalogue, today=today()),
    )
