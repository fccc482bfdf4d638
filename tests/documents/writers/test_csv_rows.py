from __future__ import annotations

import csv
import io
from datetime import date

import pytest

from common.fitted import fitted
from wardwright.documents.content.paper import Column, Table
from wardwright.documents.content.schedule import device_table
from wardwright.documents.writers.csv_rows import write_csv
from wardwright.store.catalogue import load_catalogue


def rows_of(content: bytes) -> list[list[str]]:
    return list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline="")))


def test_headings_have_units_and_cells_their_plain_value() -> None:
    table = Table(
        "T",
        (Column("Height", "m"), Column("Made on"), Column("Name")),
        ((1.5, date(2026, 3, 1), 'K\u00fc"che, 1'),),
    )
    assert rows_of(write_csv(table)) == [
        ["Height [m]", "Made on", "Name"],
        ["1.5", "2026-03-01", 'K\u00fc"che, 1'],
    ]


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
def test_a_name_that_would_be_worked_out_is_text(start: str) -> None:
    found = rows_of(write_csv(Table("T", (Column("Name"),), ((f"{start}1+1",),))))
    assert found[1][0].startswith("'")


def test_a_negative_number_stays_a_number() -> None:
    assert rows_of(write_csv(Table("T", (Column("N"),), ((-1.5,), (-2,)))))[1:] == [["-1.5"], ["-2"]]


def test_no_cell_of_a_site_begins_a_formula() -> None:
    rows = rows_of(write_csv(device_table(fitted(), load_catalogue())))
    assert any(cell == "'=1+1, or so" for row in rows for cell in row)
    texts = [cell for row in rows for cell in row if not _is_number(cell)]
    assert not any(cell.startswith(("=", "+", "-", "@")) for cell in texts)


def _is_number(cell: str) -> bool:
    try:
        float(cell)
    except ValueError:
        return False
    return True
