"""A paper as PDF: drawings as vectors at their scale, text as text, tagged, the same bytes every time."""

from __future__ import annotations

import base64
import json
import math
import re
from datetime import UTC, datetime, time
from typing import Any

import typst

from wardwright.documents.content.copies import COPIES
from wardwright.documents.content.paper import (
    BESIDE_MM,
    NOT_KNOWN,
    Cell,
    Logo,
    Paper,
    PaperSize,
    Section,
    Table,
    told,
    told_date,
)
from wardwright.documents.writers.csv_rows import heading_of
from wardwright.documents.writers.letters import SAYS, shown
from wardwright.documents.writers.pdf_drawing import svg_for_pdf
from wardwright.documents.writers.pdf_template import PDF_TEMPLATE
from wardwright.documents.writers.qr import qr_svg
from wardwright.errors import InputError

SIZES: dict[PaperSize, str] = {"a4": "a4", "letter": "us-letter"}
"""What the typesetter calls them."""
WIDE_MM = {False: 180.0, True: 262.0}
"""Between the margins of a page, upright or across. [mm]"""
WHOLE_MM = 70.0
"""A table up to this high is not parted over two pages. [mm]"""
LETTER_MM, LINE_MM, PLAIN_MM, FILLED_MM = 1.7, 3.4, 2.2, 5.6
"""Of a table: a letter's width on average, a line, and what is round the words of a row. [mm]"""
AMOUNT = re.compile(r"-?\d+(\.\d\d)?")
"""Exact money, or a count, that is kept as text."""
LOGO = "logo.svg"
WHOLE_PICTURE = {"png": (b"\x89PNG\r\n\x1a\n", b"IEND"), "jpeg": (b"\xff\xd8\xff", b"\xff\xd9")}
"""How each kind of picture begins, and what its end holds."""
ENDS_WITHIN = 64
"""So near its end. [bytes]"""
STANDARD = "ua-1"
"""PDF/UA-1: what is read out to who cannot see it is checked while the file is made."""


def write_pdf(paper: Paper, *, font_folder: str, size: PaperSize = "a4", logo: Logo | None = None) -> bytes:
    """Set a paper on the size that is in the printer.

    Parameters
    ----------
    paper : Paper
        Plain content and recorded drawings. Nothing in it is read as anything but text.
    font_folder : str
        Where the letters are; no others are used.
    size : str, default "a4"
        Of the page.
    logo : Logo, optional
        Stands above the title.

    Returns
    -------
    bytes
        A drawing stands on a page of its own, at its scale exactly.

    Raises
    ------
    InputError
        If the logo cannot be drawn.
    """
    drawings = [section.drawing for section in paper.sections if section.drawing is not None]
    files = {f"{drawing.key}.svg": svg_for_pdf(drawing).decode() for drawing in drawings}
    files |= {
        _code_file(i, j): qr_svg(label.code)
        for i, section in enumerate(paper.sections)
        for j, label in enumerate(section.labels)
    }
    whole = {**_data(paper, size), "logo": None if logo is None else {"file": LOGO, "words": logo.words}}
    files["paper.json"] = json.dumps(whole, ensure_ascii=False)
    if logo is not None:
        files[LOGO] = _logo_svg(logo)
    day = datetime.combine(paper.drawn_up, time(), tzinfo=UTC)
    try:
        return _set(files, font_folder=font_folder, day=day)
    except typst.TypstError:
        # Its fonts of last resort lack a letter, and a paper that hides a name is no good: it is told by a sign.
        data = _shown({**whole, "foot": f"{paper.foot} {SAYS}".strip()})
        lacking = {name: shown(text) for name, text in files.items()}
        lacking["paper.json"] = json.dumps(data, ensure_ascii=False)
        return _set(lacking, font_folder=font_folder, day=day)


def _logo_svg(logo: Logo) -> str:
    """The logo as a drawing: the typesetter takes files in memory as text alone."""
    ending = logo.name.rpartition(".")[2].lower()
    content = logo.content
    if ending == "svg" and b"<svg" in content:
        try:
            return content.decode("utf-8")
        except UnicodeDecodeError:
            pass
    kinds = {"png": "png", "jpg": "jpeg", "jpeg": "jpeg"}
    begins, ends = WHOLE_PICTURE.get(kinds.get(ending, ""), (b"", b""))
    if not begins or not content.startswith(begins) or ends not in content[-ENDS_WITHIN:]:
        raise InputError(
            f"the picture '{logo.name}' cannot be drawn", where="logo", cure="Save it again as a PNG"
        )
    data = base64.b64encode(content).decode("ascii")
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 100" width="400" height="100">'
        f'<image width="400" height="100" preserveAspectRatio="xMinYMid meet" '
        f'href="data:image/{kinds[ending]};base64,{data}"/></svg>'
    )


def _shown(data: Any) -> Any:  # noqa: ANN401 - whatever JSON has
    """The same data with a sign for each letter that cannot be shown."""
    if isinstance(data, str):
        return shown(data)
    if isinstance(data, dict):
        return {key: _shown(value) for key, value in data.items()}
    return [_shown(value) for value in data] if isinstance(data, list | tuple) else data


def _set(files: dict[str, str], *, font_folder: str, day: datetime) -> bytes:
    made = typst.compile(  # type: ignore[call-overload] # its types leave out files in memory, by name
        {name: text.encode() for name, text in {**files, "main.typ": PDF_TEMPLATE}.items()},
        font_paths=[font_folder],
        ignore_system_fonts=True,
        pdf_standards=STANDARD,
        timestamp=day,
    )
    return bytes(made)


def _data(paper: Paper, size: PaperSize) -> dict[str, Any]:
    copy = COPIES[paper.copy]
    return {
        "title": paper.title,
        "size": SIZES[size],
        "large": paper.is_large,
        "house": paper.house,
        "stamp": copy.stamp,
        "warning": copy.warning,
        "drawn-up": told_date(paper.drawn_up),
        "landscape": paper.is_landscape,
        "foot": paper.foot,
        "beside-mm": BESIDE_MM[paper.is_landscape],
        "sections": [
            _section(section, i, is_landscape=paper.is_landscape) for i, section in enumerate(paper.sections)
        ],
    }


def _are_amounts(cells: list[Cell]) -> bool:
    """Whether a column stands to the right: numbers and exact money, here and there nothing or not known."""
    amounts = [cell for cell in cells if cell not in ("", NOT_KNOWN)]
    return bool(amounts) and all(
        isinstance(cell, int | float) or AMOUNT.fullmatch(str(cell)) is not None for cell in amounts
    )


def _height_mm(table: Table, *, wide_mm: float) -> float:
    """About how high a table is. [mm]"""
    whole = sum(column.share for column in table.columns)
    fits = [max(column.share / whole * wide_mm / LETTER_MM, 1.0) for column in table.columns]
    lines = sum(
        max(math.ceil(len(told(cell)) / fit) for cell, fit in zip(row, fits, strict=True)) or 1
        for row in table.rows
    )
    return lines * LINE_MM + len(table.rows) * (FILLED_MM if table.is_filled_in else PLAIN_MM)


def _code_file(section: int, label: int) -> str:
    return f"code-{section}-{label}.svg"


def _section(section: Section, number: int, *, is_landscape: bool) -> dict[str, Any]:
    table, drawing = section.table, section.drawing
    return {
        "heading": section.heading,
        "text": section.text,
        "points": section.points,
        "blanks": section.blanks,
        "rules": section.rules,
        "labels": [
            {"file": _code_file(number, j), "words": label.code, "title": label.title, "lines": label.lines}
            for j, label in enumerate(section.labels)
        ],
        "form": section.is_form,
        "key": section.key,
        "drawing": None
        if drawing is None
        else {
            "file": f"{drawing.key}.svg",
            "width": drawing.width_mm,
            "words": drawing.description,
            "title": drawing.title,
            "scale": drawing.scale,
        },
        "table": None
        if table is None
        else {
            "ticked": table.is_ticked,
            "filled": table.is_filled_in,
            "whole": _height_mm(table, wide_mm=WIDE_MM[is_landscape]) <= WHOLE_MM,
            "shares": [column.share for column in table.columns],
            "headings": [heading_of(column) for column in table.columns],
            "numbers": [_are_amounts([row[j] for row in table.rows]) for j in range(len(table.columns))],
            "rows": [[told(cell) for cell in row] for row in table.rows],
        },
    }
