from __future__ import annotations

import io
import zipfile
from datetime import datetime

import openpyxl
import pytest

from common.fitted import DAY, fitted
from wardwright.documents.content.paper import Column, Paper, Section, Table
from wardwright.documents.content.schedule import schedule
from wardwright.documents.writers.xlsx import write_xlsx
from wardwright.store.catalogue import load_catalogue

PAPER = schedule(fitted(), load_catalogue(), drawn_up=DAY)


@pytest.fixture
def book() -> openpyxl.Workbook:
    return openpyxl.load_workbook(io.BytesIO(write_xlsx(PAPER)))


def test_each_table_is_a_sheet_and_each_cell_is_what_it_was(book: openpyxl.Workbook) -> None:
    assert book.sheetnames == ["Devices", "Zones"]
    for section in PAPER.sections:
        assert section.table is not None
        sheet = book[section.table.name]
        rows = list(sheet.iter_rows(min_row=2, values_only=True))
        for row, found in zip(section.table.rows, rows, strict=True):
            for cell, read in zip(row, found, strict=True):
                value = read.date() if isinstance(read, datetime) else read
                assert value == cell
                assert isinstance(value, str) == isinstance(cell, str)


def test_a_name_that_looks_like_a_formula_is_text(book: openpyxl.Workbook) -> None:
    cells = {cell.value: cell.data_type for sheet in book for row in sheet.iter_rows() for cell in row}
    assert cells["=1+1, or so"] == "s"
    assert cells["@K\u00fcche"] == "s"
    assert "f" not in cells.values()


def test_the_heading_is_frozen_and_printed_on_every_page(book: openpyxl.Workbook) -> None:
    for sheet in book:
        assert sheet.freeze_panes == "C2"
        assert sheet.print_title_rows == "$1:$1"
        assert sheet.page_setup.orientation == "landscape"
        assert sheet.page_setup.paperSize == 9
        # One page wide is what a file says by leaving it out; nought is as many pages high as it takes.
        assert (sheet.page_setup.fitToWidth or 1, sheet.page_setup.fitToHeight) == (1, 0)
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert sheet.auto_filter.ref is not None
    assert "Height [m]" in [cell.value for cell in book["Devices"][1]]


def test_the_same_paper_gives_the_same_bytes() -> None:
    content = write_xlsx(PAPER)
    assert write_xlsx(PAPER) == content
    with zipfile.ZipFile(io.BytesIO(content)) as packed:
        assert not any("vba" in name.lower() or "external" in name.lower() for name in packed.namelist())


def test_a_table_without_rows_is_a_sheet_with_its_heading() -> None:
    paper = Paper("T", "a & b", "fitter", DAY, (Section("S", table=Table("S", (Column("One"),), ())),))
    sheet = openpyxl.load_workbook(io.BytesIO(write_xlsx(paper)))["S"]
    assert [cell.value for cell in sheet[1]] == ["One"]
