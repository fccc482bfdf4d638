"""The server put together."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

from fastapi import FastAPI, Request
from fastapi.responses import JSONResponse
from fastapi.staticfiles import StaticFiles
from starlette.middleware.base import RequestResponseEndpoint
from starlette.middleware.trustedhost import TrustedHostMiddleware
from starlette.responses import Response

from wardwright import __version__
from wardwright.errors import InputError
from wardwright.model.catalogue import Catalogue
from wardwright.server.desks import Desks
from wardwright.server.handed_in import HandedInFiles
from wardwright.server.messages import Fault
from wardwright.server.origins import is_from_elsewhere
from wardwright.server.routers import (
    attachments,
    campaigns,
    intake,
    jobs,
    live,
    office,
    papers,
    signed,
    steps,
    works,
)
from wardwright.server.work import Works

HEADERS = {
    "Content-Security-Policy": "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
    "connect-src 'self' ws:; frame-ancestors 'none'; base-uri 'none'; form-action 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cache-Control": "no-store",
}
"""The page talks to its own server only, stands in no other page, and is kept by no cache."""
OWN_NAMES = ("localhost", "127.0.0.1", "[::1]", "testserver")
"""Names under which the server answers: a page elsewhere that is led to this address by another name gets nothing."""


def create_app(folder: Path, catalogue: Catalogue, *, static: Path | None = None) -> FastAPI:
    """Put the server together for the jobs of one folder.

    Parameters
    ----------
    folder : Path
        Where the jobs are.
    catalogue : Catalogue
        Sheets and figures.
    static : Path, optional
        The built page; without it only the interface answers.

    Returns
    -------
    FastAPI
        Ready to be served on this machine.
    """

    @asynccontextmanager
    async def lifespan(app: FastAPI) -> AsyncIterator[None]:
        yield
        # Work first: until it has ended it may have a job open.
        app.state.works.close()
        app.state.handed_in.close()
        app.state.desks.close()

    app = FastAPI(title="Wardwright", version=__version__, docs_url=None, redoc_url=None, lifespan=lifespan)
    app.state.desks = Desks(folder, catalogue)
    app.state.works = Works()
    app.state.handed_in = HandedInFiles(folder)
    app.add_middleware(TrustedHostMiddleware, allowed_hosts=list(OWN_NAMES))

    @app.exception_handler(InputError)
    async def refuse(_: Request, fault: InputError) -> JSONResponse:
        said = Fault(what=fault.what, where=fault.where, cure=fault.cure)
        return JSONResponse(said.model_dump(), status_code=422)

    @app.middleware("http")
    async def own_page_only(request: Request, call_next: RequestResponseEndpoint) -> Response:
        if is_from_elsewhere(request.headers):
            origin = request.headers["origin"]
            return JSONResponse(
                {"what": "asked from another page", "where": origin, "cure": ""}, status_code=403
            )
        response = await call_next(request)
        response.headers.update(HEADERS)
        return response

    for one in (jobs, attachments, signed, campaigns, intake, works, papers, steps, office, live):
        app.include_router(one.router)
    if static is not None:
        app.mount("/", StaticFiles(directory=static, html=True), name="page")
    return app
