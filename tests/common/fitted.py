"""A site as it stands when it is fitted, its papers as readable text, and what a reader finds in any file of them."""

from __future__ import annotations

import csv
import html
import io
import re
from datetime import date
from html.parser import HTMLParser

import icalendar
import numpy as np
import openpyxl
import pypdfium2
import zxingcpp

from wardwright.documents.content.paper import Paper, Section, told
from wardwright.documents.writers.csv_rows import heading_of
from wardwright.model.device import Fixing
from wardwright.model.programme import Response
from wardwright.model.site import Site
from wardwright.store.samples import read_sample

DAY = date(2026, 11, 26)
OF_THE_PROGRAM = ("Creator", "Producer", "CreationDate", "ModDate")
"""What a PDF says of how it was made: the typesetter's version, and the day that stands on the paper."""


def fitted() -> Site:
    """The better terrace with what is decided on the day of fitting; some of it is still not known."""
    site = read_sample("terrace-better")
    new = {
        "front-door-contact": {"fixing": Fixing(by="adhesive", surface="upvc"), "made_on": date(2026, 3, 31)},
        "hall-movement": {"fixing": Fixing(by="screws"), "made_on": date(2026, 2, 28), "is_existing": True},
        "living-movement": {"name": "=1+1, or so"},
        "hall-keypad": {"fixing": None},
    }
    devices = tuple(
        one.model_copy(update=found) if (found := new.get(one.id)) else one for one in site.devices
    )
    assert sum(one != other for one, other in zip(devices, site.devices, strict=True)) == len(new)
    zones = tuple(
        zone.model_copy(
            update={"name": "@Küche", "group": "a", "is_on_soak": True, "limit": 3, "behaviour": "always-on"}
        )
        if zone.number == 4
        else zone
        for zone in site.zones
    )
    responses = (
        Response(
            signal="intruder", state="set", sounders="inside", message=True, told=("household", "keyholder")
        ),
    )
    programme = site.programme.model_copy(update={"responses": responses, "check_in_min": 20.0})
    return site.model_copy(update={"devices": devices, "zones": zones, "programme": programme})


def as_text(paper: Paper) -> str:
    """A paper as lines, for a kept reference."""
    head = f"{paper.title} | {paper.house} | {paper.copy} | {told(paper.drawn_up)} | {paper.foot}"
    return "\n".join([head, *(line for section in paper.sections for line in _lines(section))]) + "\n"


def _lines(section: Section) -> list[str]:
    lines = ["", f"# {section.heading}", *section.text, *(f"- {point}" for point in section.points)]
    if section.drawing is not None:
        lines.append(f"drawing 1:{section.drawing.scale}: {section.drawing.description}")
    lines += [f"{letters}: {words}" for letters, words in section.key]
    lines += [f"[{label.code}] {label.title}: {'; '.join(label.lines)}" for label in section.labels]
    if section.table is not None:
        lines.append(" | ".join(map(heading_of, section.table.columns)))
        lines += [" | ".join(map(told, row)) for row in section.table.rows]
    return lines + [f"____ {blank}" for blank in section.blanks]


class _Everything(HTMLParser):
    """All of a page: text, comments, every attribute."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        del tag
        self.found += [f"{name}={value}" for name, value in attrs]

    def handle_data(self, data: str) -> None:
        self.found.append(data)

    def handle_comment(self, data: str) -> None:
        self.found.append(data)


def text_of(name: str, content: bytes) -> str:
    """Everything that a reader of a file may find in it, hidden or not."""
    suffix = name.rpartition(".")[2]
    match suffix:
        case "pdf":
            return _pdf_text(content)
        case "xlsx":
            return _xlsx_text(content)
        case "csv":
            rows = csv.reader(io.StringIO(content.decode("utf-8-sig")))
            return "\n".join(" | ".join(row) for row in rows)
        case "ics":
            return _ics_text(content)
        case "html" | "svg":
            page = _Everything()
            page.feed(content.decode())
            return html.unescape("\n".join(page.found))
        case _:
            raise AssertionError(f"a kind of file that is not read: {name}")


def _pdf_text(content: bytes) -> str:
    found = []
    with pypdfium2.PdfDocument(content) as book:
        facts = book.get_metadata_dict()
        found += [f"{key}={value}" for key, value in facts.items() if key not in OF_THE_PROGRAM]
        for i in range(len(book)):
            page = book[i]
            found.append(page.get_textpage().get_text_range())
    # Words for who cannot see it stand in the file's own structure.
    found += [raw.decode("latin-1") for raw in re.findall(rb"/Alt\s*\(((?:[^()\\]|\\.)*)\)", content)]
    if CODE in "\n".join(found):
        found += codes_of(content)
    return "\n".join(found)


CODE = "Code for a reader"
"""How the words begin that stand for a square code."""


def codes_of(content: bytes) -> list[str]:
    """What a reader finds in the square codes of a PDF, as printed in grey."""
    found: list[str] = []
    with pypdfium2.PdfDocument(content) as book:
        for page in book:
            picture = np.ascontiguousarray(page.render(scale=2.5, grayscale=True).to_numpy())
            found += [one.text for one in zxingcpp.read_barcodes(picture)]
    return found


def _ics_text(content: bytes) -> str:
    """Every property of every part of a calendar; days as ISO 8601 has them."""
    found = []
    for part in icalendar.Calendar.from_ical(content.decode()).walk():
        for key, value in part.property_items(recursive=False):
            if key == "VERSION":  # of the form, always the same
                continue
            day = getattr(value, "dt", None)
            plain = value.decode() if isinstance(value, bytes) else str(value)
            told_value = plain if day is None else day.isoformat()[:10]
            found.append(f"{key}={told_value}")
    return "\n".join(found)


def _xlsx_text(content: bytes) -> str:
    book = openpyxl.load_workbook(io.BytesIO(content))
    found = [str(getattr(book.properties, key)) for key in ("title", "subject", "description", "keywords")]
    for sheet in book.worksheets:
        found += [str(sheet.title), str(sheet.oddHeader.center.text), str(sheet.oddHeader.left.text)]
        for row in sheet.iter_rows():
            found += [str(cell.value) for cell in row if cell.value is not None]
            found += [cell.comment.text for cell in row if cell.comment]
    return "\n".join(found)
