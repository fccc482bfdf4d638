"""The papers of a job: which there are by class of copy, and one to keep."""

from __future__ import annotations

from urllib.parse import quote

from fastapi import APIRouter, Request
from fastapi.responses import Response

from wardwright.documents.content.copies import COPIES
from wardwright.documents.content.paper import CopyClass
from wardwright.documents.paper_list import PaperClass, paper_classes
from wardwright.errors import InputError
from wardwright.server.messages import PaperPage
from wardwright.server.page_pictures import page_picture, page_sizes
from wardwright.server.quoting import NOTHING, has_quote, offered
from wardwright.server.routers.jobs import desks_of
from wardwright.server.written import campaign_of, written
from wardwright.store.jobs.files import ENDING

router = APIRouter(prefix="/api/jobs/{file}/papers", tags=["papers"])
TYPES = {
    "pdf": "application/pdf",
    "html": "text/html; charset=utf-8",
    "csv": "text/csv; charset=utf-8",
    "ics": "text/calendar; charset=utf-8",
    "svg": "image/svg+xml",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}
"""By the ending of a name."""


@router.get("")
def papers(request: Request, file: str) -> tuple[PaperClass, ...]:
    """List the papers that can be had, by class of copy."""
    desks = desks_of(request)
    desk = desks.desk(file)
    return paper_classes(
        desk.job.site(),
        has_campaign=campaign_of(desk) is not None,
        has_quote=has_quote(desk, desks.folder),
    )


@router.get("/{copy_class}/{name}")
def paper(  # noqa: PLR0917 - the parts of its path, in their order
    request: Request, file: str, copy_class: CopyClass, name: str, *, printed: bool = False
) -> Response:
    """One paper; its class of copy stands in the name of the file, so that two classes are not mixed up.

    To be printed it is shown by the browser itself; else it is kept as a file.
    """
    found = _found(request, file, copy_class, name=name)
    kept = f"{file.removesuffix(ENDING)}-{COPIES[copy_class].folder}-{name}"
    how = "inline" if printed and name.endswith(".pdf") else "attachment"
    headers = {"content-disposition": f"{how}; filename*=UTF-8''{quote(kept)}"}
    return Response(found, media_type=TYPES[name.rpartition(".")[2]], headers=headers)


@router.get("/{copy_class}/{name}/pages")
def pages(  # noqa: PLR0917 - the parts of its path, in their order
    request: Request, file: str, copy_class: CopyClass, name: str
) -> tuple[PaperPage, ...]:
    """List the pages of a paper, for pictures of them."""
    pdf = _found(request, file, copy_class, name=_pdf(name))
    return tuple(PaperPage(width_mm=one.width_mm, height_mm=one.height_mm) for one in page_sizes(pdf))


@router.get("/{copy_class}/{name}/pages/{number}")
def page(  # noqa: PLR0917 - the parts of its path, in their order
    request: Request, file: str, copy_class: CopyClass, name: str, number: int, *, width: int = 1200
) -> Response:
    """One page as a picture."""
    pdf = _found(request, file, copy_class, name=_pdf(name))
    return Response(page_picture(pdf, number, width_px=width), media_type="image/png")


def _pdf(name: str) -> str:
    if not name.endswith(".pdf"):
        raise InputError(
            f"'{name[:60]}' has no pages", where="papers", cure="Ask for a PDF, or keep it as a file"
        )
    return name


def _found(request: Request, file: str, copy_class: CopyClass, *, name: str) -> bytes:
    desks = desks_of(request)
    desk = desks.desk(file)
    offer = NOTHING if copy_class == "open" else offered(desk, desks.folder)
    found = written(desk, copy_class, offer=offer).get(name)
    if found is None:
        raise InputError(
            f"there is no paper '{name[:60]}' in this class of copy",
            where="papers",
            cure="Ask for one of the list",
        )
    return found
