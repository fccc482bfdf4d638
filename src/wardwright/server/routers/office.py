"""The firm's own data, once for all jobs of the folder; and what a job costs by them."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool

from wardwright.documents.content.quote_screen import ShownQuote, shown_quote
from wardwright.errors import OfficeError
from wardwright.server.messages import Fault
from wardwright.server.office_messages import OfficeSaid, PricesSaid
from wardwright.server.quoting import quoted
from wardwright.server.routers.jobs import desks_of
from wardwright.store.firms import firm_from, write_firm
from wardwright.store.office import FIRM, LONGEST_NAME, drop_prices, keep_prices, office_of
from wardwright.store.price_files import refuse_long

router = APIRouter(prefix="/api", tags=["office"])


@router.get("/office")
def office(request: Request) -> OfficeSaid:
    """What the folder has of its firm; a file that cannot be used is told, not hidden."""
    return _said(request)


@router.put("/office/firm")
async def keep(request: Request) -> OfficeSaid:
    """Keep the firm's own data, as its form has them."""
    try:
        raw: Any = await request.json()
    except ValueError:
        raise OfficeError("this is no form", where="firm", cure="Send it from the app's own page") from None

    def write() -> OfficeSaid:
        firm = firm_from(raw, where="firm")
        write_firm(desks_of(request).folder / FIRM, firm)
        return _said(request)

    return await run_in_threadpool(write)


@router.put("/office/prices")
async def prices(request: Request, *, name: str) -> OfficeSaid:
    """Keep a price list: its content is the body."""
    content = bytearray()
    async for piece in request.stream():
        content += piece
        refuse_long(len(content), where=name[-LONGEST_NAME:])

    def write() -> OfficeSaid:
        keep_prices(desks_of(request).folder, name, bytes(content))
        return _said(request)

    return await run_in_threadpool(write)


@router.delete("/office/prices")
def without_prices(request: Request) -> OfficeSaid:
    """Let the price list go."""
    drop_prices(desks_of(request).folder)
    return _said(request)


@router.get("/jobs/{file}/quote")
def quote(request: Request, file: str) -> ShownQuote:
    """What the job costs as it is now, in options."""
    desks = desks_of(request)
    desk = desks.desk(file)
    state = desk.state()
    return shown_quote(quoted(desk, desks.folder), state.site, desk.catalogue)


def _said(request: Request) -> OfficeSaid:
    try:
        found = office_of(desks_of(request).folder)
    except OfficeError as fault:
        return OfficeSaid(
            firm=None, prices=None, fault=Fault(what=fault.what, where=fault.where, cure=fault.cure)
        )
    prices = found.prices
    return OfficeSaid(
        firm=found.firm,
        prices=None
        if prices is None
        else PricesSaid(
            rows=len(prices.rows), oldest=None if prices.oldest is None else prices.oldest.isoformat()
        ),
        fault=None,
    )
