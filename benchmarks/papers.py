"""All papers of the terrace, against what the typesetter alone takes to set the same sources.

Both sides count processor time, so that a busy machine changes little. Ours begins with the answers and the page as
they are drawn, and makes content, sources, spreadsheets, calendars, pictures and PDFs of all three classes of copy.
What the typesetter is given is written down on the way, and set again by it alone. Codes on labels are forgotten
before each round; the answers are not, nor what the house alone was asked for.
"""

from __future__ import annotations

import io
import time
from collections.abc import Callable
from datetime import date
from typing import Any
from unittest.mock import patch

import pypdfium2
import typst

from wardwright.documents.content.page import page_of
from wardwright.documents.papers import papers_of
from wardwright.documents.press import Press
from wardwright.documents.writers.qr import qr_svg
from wardwright.questions.table import ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.fonts import font_folder
from wardwright.store.samples import read_sample

SAMPLE = "terrace-better"
DAY = date(2026, 11, 26)
MOST_RATIO = 2.0
PAGES, MOST_MB = 30, 3.0
BYTES_IN_MB = 1e6


def timed(work: Callable[[], object]) -> float:
    """Processor time of some work, that of the typesetter's own threads included. [s]"""
    start = time.process_time()
    work()
    return time.process_time() - start


def run(repeats: int = 5) -> dict[str, Any]:
    """Time both in turn; figures, ratio and budget."""
    site, catalogue = read_sample(SAMPLE), load_catalogue()
    answers = ask(site, catalogue)
    page = page_of(site, catalogue, answers, check(site, catalogue))
    press = Press(font_folder())
    sources: list[tuple[tuple[Any, ...], dict[str, Any]]] = []
    setting = typst.compile

    def noted(*arguments: Any, **named: Any) -> bytes:  # noqa: ANN401 - whatever the typesetter is given
        sources.append((arguments, named))
        return setting(*arguments, **named)

    def ours() -> dict[str, bytes]:
        qr_svg.cache_clear()
        return papers_of(site, catalogue, page=page, answers=answers, drawn_up=DAY, press=press)

    def theirs() -> None:
        for arguments, named in sources:
            setting(*arguments, **named)

    with patch.object(typst, "compile", noted):
        files = ours()
    pdfs = [content for name, content in files.items() if name.endswith(".pdf")]
    pages = 0
    for content in pdfs:
        with pypdfium2.PdfDocument(io.BytesIO(content)) as book:
            pages += len(book)
    size = sum(map(len, pdfs)) / BYTES_IN_MB
    own, base = [], []
    for _ in range(repeats):
        base.append(timed(theirs))
        own.append(timed(ours))
    ratio, of_thirty = min(own) / min(base), size / pages * PAGES
    return {
        "name": "all papers of the terrace, against the typesetter alone on the same sources",
        "figures": {
            "papers": len(files),
            "of_them_PDF": len(pdfs),
            "pages": pages,
            "all_PDF_MB": round(size, 2),
            "thirty_pages_MB": round(of_thirty, 2),
            "papers_s": round(min(own), 2),
            "typesetter_s": round(min(base), 2),
        },
        "ratio": round(ratio, 2),
        "budget": f"at most {MOST_RATIO:g} times; {PAGES} pages under {MOST_MB:g} MB",
        "is_met": bool(ratio <= MOST_RATIO and of_thirty < MOST_MB and pages >= PAGES),
    }


if __name__ == "__main__":
    for key, value in run().items():
        print(f"{key}: {value}")
