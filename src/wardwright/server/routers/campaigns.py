"""Seeded intruders sent into the house of a job, as long work."""

from __future__ import annotations

from fastapi import APIRouter, Request

from wardwright.server.campaigns import send_in, steps_of
from wardwright.server.routers.jobs import desks_of
from wardwright.server.routers.works import works_of
from wardwright.server.work_messages import CampaignWish, WorkNews

router = APIRouter(prefix="/api/jobs/{file}/campaign", tags=["campaign"])


@router.post("", status_code=202)
def send(request: Request, file: str, wish: CampaignWish) -> WorkNews:
    """Send seeded intruders into the house as it is now, as long work."""
    desk = desks_of(request).desk(file)
    begun = works_of(request).begin(
        f"sending in {wish.trials} intruders",
        lambda work: send_in(desk, wish, work),
        job=file,
        steps=steps_of(wish),
    )
    return begun.news()
