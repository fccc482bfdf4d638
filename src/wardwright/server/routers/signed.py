"""Answers kept as signed: signed now, listed, and held against today's."""

from __future__ import annotations

from fastapi import APIRouter, Request

from wardwright.errors import InputError
from wardwright.server.desk import Desk
from wardwright.server.routers.jobs import desks_of
from wardwright.server.routers.works import works_of
from wardwright.server.signing import STEPS, compare, sign_now, signed_line
from wardwright.server.work_messages import SignedLine, SigningWish, WorkNews
from wardwright.store.jobs.signatures import refuse_words, signed, signed_at

router = APIRouter(prefix="/api/jobs/{file}/signed", tags=["signed"])


@router.get("")
def listed(request: Request, file: str) -> tuple[SignedLine, ...]:
    """List what was signed, newest first."""
    desk = desks_of(request).desk(file)
    return tuple(signed_line(desk, one) for one in reversed(signed(desk.job)))


@router.post("", status_code=202)
def sign(request: Request, file: str, wish: SigningWish) -> WorkNews:
    """Sign the answers of the newest revision, if that is the one that was seen; as long work."""
    desk = desks_of(request).desk(file)
    refuse_words(desk.job, author=wish.author, what=wish.what)
    _refuse_unseen(desk, wish.revision)
    begun = works_of(request).begin(
        f"signing revision {wish.revision}",
        lambda work: sign_now(desk, wish, work),
        job=file,
        steps=STEPS + 1,
    )
    return begun.news()


@router.post("/{number}/compared", status_code=202)
def compared(request: Request, file: str, number: int) -> WorkNews:
    """Hold what was signed against today's answers, as long work."""
    desk = desks_of(request).desk(file)
    one = signed_at(desk.job, number)
    begun = works_of(request).begin(
        f"comparing with revision {one.revision} as signed",
        lambda work: compare(desk, one, work),
        job=file,
        steps=2 * STEPS,
    )
    return begun.news()


def _refuse_unseen(desk: Desk, revision: int) -> None:
    if revision != desk.job.newest:
        raise InputError(
            f"the house was changed since you saw it: it is at revision {desk.job.newest} now, not {revision}",
            where="signing",
            cure="Look at its answers as they are now, and sign those",
        )
