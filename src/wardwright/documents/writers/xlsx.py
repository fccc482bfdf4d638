"""Tables as a spreadsheet: numbers as numbers, dates as dates, text as text whatever it begins with."""

from __future__ import annotations

from datetime import date, datetime, time
from io import BytesIO

import xlsxwriter
from xlsxwriter.worksheet import Worksheet

from wardwright.documents.content.copies import COPIES
from wardwright.documents.content.paper import Cell, Paper, PaperSize, Table
from wardwright.documents.writers.csv_rows import heading_of

SIZES: dict[PaperSize, int] = {"letter": 1, "a4": 9}
"""A paper size's number in the file format."""
WIDEST, NARROWEST = 34, 7
"""Of a column, in letters. [-]"""
TEXT_ONLY = {"strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False}
"""A room called `=1+1` is a room."""


def write_xlsx(paper: Paper, *, size: PaperSize = "a4") -> bytes:
    """Write each table of a paper as a sheet of its own.

    Parameters
    ----------
    paper : Paper
        Its sections without a table are left out.
    size : str, default "a4"
        Of the page that it is printed on.

    Returns
    -------
    bytes
        The heading is frozen, filtered and printed on every page; each sheet is one page wide. The same paper
        gives the same bytes.
    """
    out = BytesIO()
    book = xlsxwriter.Workbook(out, {"in_memory": True, **TEXT_ONLY})
    copy = COPIES[paper.copy]
    book.set_properties(
        {
            "title": f"{paper.title}: {paper.house}",
            "comments": copy.warning,
            "created": datetime.combine(paper.drawn_up, time()),
        }
    )
    for section in paper.sections:
        if section.table is not None:
            _sheet(book, paper, section.table, size=size)
    book.close()
    return out.getvalue()


def _sheet(book: xlsxwriter.Workbook, paper: Paper, table: Table, *, size: PaperSize) -> None:
    sheet: Worksheet = book.add_worksheet(table.name)
    base = {"font_name": "Arial", "font_size": 9, "valign": "top", "border": 1, "border_color": "#999999"}
    head = book.add_format({**base, "bold": True, "text_wrap": True, "bg_color": "#eeeeee"})
    text = book.add_format({**base, "text_wrap": True})
    number = book.add_format({**base, "num_format": "0.###", "align": "right"})
    whole = book.add_format({**base, "num_format": "0", "align": "right"})
    day = book.add_format({**base, "num_format": "yyyy-mm-dd", "align": "left"})
    for j, column in enumerate(table.columns):
        sheet.write_string(0, j, heading_of(column), head)
        sheet.set_column(j, j, _width(heading_of(column), [row[j] for row in table.rows]))
    for i, row in enumerate(table.rows, start=1):
        for j, cell in enumerate(row):
            if isinstance(cell, str):
                sheet.write_string(i, j, cell, text)
            elif isinstance(cell, date):
                sheet.write_datetime(i, j, datetime.combine(cell, time()), day)
            else:
                sheet.write_number(i, j, cell, whole if isinstance(cell, int) else number)
    sheet.freeze_panes(1, 2)
    sheet.autofilter(0, 0, max(len(table.rows), 1), len(table.columns) - 1)
    _print_set_up(sheet, paper, table)
    sheet.set_paper(SIZES[size])


def _print_set_up(sheet: Worksheet, paper: Paper, table: Table) -> None:
    copy = COPIES[paper.copy]
    sheet.set_landscape()
    sheet.set_margins(left=0.4, right=0.4, top=0.8, bottom=0.6)
    sheet.fit_to_pages(1, 0)
    sheet.repeat_rows(0)
    sheet.print_area(0, 0, len(table.rows), len(table.columns) - 1)
    sheet.set_header(f"&L&B{_plain(paper.house)}&B&C{_plain(paper.title)}: {table.name}&R{copy.stamp}")
    sheet.set_footer(f"&LDrawn up {paper.drawn_up:%Y-%m-%d}&RPage &P of &N")


def _plain(words: str) -> str:
    """Words for a header, in which an ampersand begins an order."""
    return words.replace("&", "&&")


def _width(heading: str, cells: list[Cell]) -> float:
    """Wide enough for the longest word of the heading and for most of the cells; the rest is wrapped."""
    longest = max((len(str(cell)) for cell in cells), default=0)
    word = max(map(len, heading.split()))
    return min(max(NARROWEST, word + 2, longest + 1), WIDEST)
