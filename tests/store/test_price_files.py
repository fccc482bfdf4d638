"""Price lists from files: good ones, wrong ones, and bombs."""

from __future__ import annotations

import contextlib
import tempfile
import zipfile
from datetime import date
from decimal import Decimal
from pathlib import Path

import openpyxl
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.errors import OfficeError
from wardwright.store.price_files import LARGEST_FILE_BYTES, read_price_list

ROWS = [
    ["code", "cost", "price", "date"],
    ["movement-12m", 41.5, None, date(2026, 3, 31)],
    ["keypad-radio", 60, 92.4],
]


def book(path: Path, rows: list[list[object]]) -> Path:
    made = openpyxl.Workbook()
    for row in rows:
        made.active.append(row)
    made.save(path)
    return path


def repacked(path: Path, **parts: bytes) -> Path:
    """A spreadsheet with some of its parts replaced or added."""
    with zipfile.ZipFile(path) as old:
        kept = {name: old.read(name) for name in old.namelist()}
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for name, inside in (kept | {name.replace("__", "/"): text for name, text in parts.items()}).items():
            new.writestr(name, inside)
    return path


def test_a_spreadsheet_and_its_csv_say_the_same(tmp_path: Path) -> None:
    from_book = read_price_list(book(tmp_path / "prices.xlsx", ROWS))
    text = "code,cost,price,date\nmovement-12m,41.50,,2026-03-31\nkeypad-radio,60,92.40,\n"
    (tmp_path / "prices.csv").write_text(text, encoding="utf-8")
    assert read_price_list(tmp_path / "prices.csv").rows == from_book.rows
    assert from_book.rows[0].cost == Decimal("41.50")


@pytest.mark.parametrize(
    "text",
    [
        "\ufeffcode;cost\na;12,50\n",
        "code\tcost\na\t12.50\n",
        'code,cost\r\n"a",12.50\r\n',
        "code;cost\na;12,5\n",
    ],
)
def test_the_usual_forms_of_csv_are_read(tmp_path: Path, text: str) -> None:
    path = tmp_path / "prices.csv"
    path.write_text(text, encoding="utf-8", newline="")
    assert read_price_list(path).rows[0].cost == Decimal("12.50")


def test_a_wrong_cell_of_a_file_is_named(tmp_path: Path) -> None:
    path = tmp_path / "prices.csv"
    path.write_text("code,cost\na,1\nb,-2\n", encoding="utf-8")
    with pytest.raises(
        OfficeError, match=r"prices\.csv, row 3: column 'cost' is '-2', which is below nought"
    ):
        read_price_list(path)
    with pytest.raises(OfficeError, match=r"prices\.xlsx, row 1: column 1 is headed 'codes'"):
        read_price_list(book(tmp_path / "prices.xlsx", [["codes", "cost"], ["a", 1]]))


def test_a_half_quoted_csv_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "prices.csv"
    path.write_text('code,cost\n"a,1\n', encoding="utf-8")
    with pytest.raises(OfficeError, match="this is no CSV"):
        read_price_list(path)


@pytest.mark.parametrize("data", [b"", b"no archive", b"PK\x03\x04 cut off"])
def test_what_is_no_spreadsheet_is_refused(tmp_path: Path, data: bytes) -> None:
    path = tmp_path / "prices.xlsx"
    path.write_bytes(data)
    with pytest.raises(OfficeError, match="this is no XLSX file"):
        read_price_list(path)


def test_an_archive_that_is_no_spreadsheet_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "prices.xlsx"
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("hello.txt", "hello")
    with pytest.raises(OfficeError, match="no spreadsheet that can be read"):
        read_price_list(path)


@pytest.mark.parametrize("packing", [zipfile.ZIP_DEFLATED, zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA])
def test_a_damaged_spreadsheet_is_refused_however_it_is_packed(tmp_path: Path, packing: int) -> None:
    whole = book(tmp_path / "whole.xlsx", ROWS)
    path = tmp_path / "prices.xlsx"
    with zipfile.ZipFile(whole) as archive, zipfile.ZipFile(path, "w", packing) as other:
        for name in archive.namelist():
            other.writestr(name, archive.read(name))
    data = path.read_bytes()
    refused = 0
    for place in range(0, len(data), 37):
        path.write_bytes(data[:place] + bytes([data[place] ^ 0xFF]) + data[place + 1 :])
        with contextlib.suppress(OfficeError):
            read_price_list(path)
            continue
        refused += 1
    assert refused


def test_a_bomb_is_not_unpacked(tmp_path: Path) -> None:
    """40 MB of nought in a few kilobytes."""
    path = repacked(book(tmp_path / "prices.xlsx", ROWS), xl__bomb=b"\0" * 40_000_000)
    assert path.stat().st_size < 100_000
    with pytest.raises(OfficeError, match="unpacked it would be 40 MB"):
        read_price_list(path)


def test_an_archive_of_too_many_parts_is_refused(tmp_path: Path) -> None:
    path = repacked(book(tmp_path / "prices.xlsx", ROWS), **{f"part-{i}": b"" for i in range(400)})
    with pytest.raises(OfficeError, match="parts: more than a price list"):
        read_price_list(path)


@pytest.mark.parametrize("coding", ["utf-8", "utf-16-le"])
def test_declared_entities_are_refused(tmp_path: Path, coding: str) -> None:
    laughing = '<!DOCTYPE x [<!ENTITY a "ha"><!ENTITY b "&a;&a;">]><x>&b;</x>'.encode(coding)
    path = repacked(book(tmp_path / "prices.xlsx", ROWS), **{"xl__extra.xml": laughing})
    with pytest.raises(OfficeError, match="a part of it declares entities"):
        read_price_list(path)


def test_too_long_a_file_is_refused(tmp_path: Path) -> None:
    for name in ("prices.csv", "prices.xlsx"):
        path = tmp_path / name
        path.write_bytes(b" " * (LARGEST_FILE_BYTES + 1))
        with pytest.raises(OfficeError, match="longer than 5 MB"):
            read_price_list(path)


@pytest.mark.parametrize("name", ["prices.ods", "prices"])
def test_another_ending_is_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(OfficeError, match="Save it as CSV or XLSX"):
        read_price_list(tmp_path / name)


@pytest.mark.parametrize("name", ["prices.csv", "prices.xlsx"])
def test_a_file_that_is_not_there_is_told(tmp_path: Path, name: str) -> None:
    with pytest.raises(OfficeError, match="the file cannot be read"):
        read_price_list(tmp_path / name)


def test_rows_far_below_are_not_waited_for(tmp_path: Path) -> None:
    """A sheet that claims a million rows is read no further than a price list may reach."""
    path = tmp_path / "prices.xlsx"
    made = openpyxl.Workbook()
    made.active.append(["code", "cost"])
    made.active.cell(row=1_000_000, column=1, value="a")
    made.save(path)
    with pytest.raises(OfficeError, match="more than 20000 rows"):
        read_price_list(path)


@given(st.binary(max_size=300), st.sampled_from([".csv", ".xlsx"]))
def test_any_bytes_are_a_price_list_or_one_plain_message(data: bytes, ending: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / f"prices{ending}"
        path.write_bytes(data)
        try:
            found = read_price_list(path)
        except OfficeError as fault:
            found, said = None, str(fault)
        assert str(path) in said if found is None else all(one.code for one in found.rows)


@given(
    st.lists(
        st.tuples(st.from_regex(r"[a-z][a-z0-9-]{0,10}", fullmatch=True), st.decimals(0, 99_999, places=2)),
        unique_by=lambda row: row[0],
        min_size=1,
        max_size=8,
    )
)
def test_what_is_written_is_read_to_the_cent(rows: list[tuple[str, Decimal]]) -> None:
    text = "code,cost\n" + "".join(f"{code},{cost}\n" for code, cost in rows)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "prices.csv"
        path.write_text(text, encoding="utf-8")
        assert [(one.code, one.cost) for one in read_price_list(path).rows] == rows
