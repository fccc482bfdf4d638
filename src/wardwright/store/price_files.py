"""Price lists from CSV and XLSX files. They come from suppliers, so nothing in them is trusted.

A spreadsheet is looked at as an archive first: how large it would become, how many parts it has, whether it declares
entities. Only then is it opened, and only as far as a price list may reach.
"""

from __future__ import annotations

import csv
import io
import warnings
import zipfile
from datetime import date
from pathlib import Path

from wardwright.costing.price_list import MOST_ROWS, PriceList, Value, price_list
from wardwright.errors import OfficeError
from wardwright.store.texts import read_text

LARGEST_FILE_BYTES = 5_000_000
LARGEST_UNPACKED_BYTES = 30_000_000
MOST_PARTS = 300
MOST_COLUMNS = 16
"""A price list needs far less. [bytes, bytes, parts, columns] (assumption)"""
DECLARES = (b"<!DOCTYPE", b"<!ENTITY", "<!DOCTYPE".encode("utf-16-le"), "<!DOCTYPE".encode("utf-16-be"))
"""No spreadsheet needs these; a bomb of entities does."""
SAVE_AGAIN = "Save it again as a plain XLSX or CSV file"
DELIMITERS = (",", ";", "\t")


def read_price_list(path: Path) -> PriceList:
    """Read a firm's price list.

    Parameters
    ----------
    path : Path
        A CSV or XLSX file with the columns code, cost, price, date; of a spreadsheet, its first sheet.

    Returns
    -------
    PriceList
        Its rows.

    Raises
    ------
    OfficeError
        If it cannot be read; what is wrong in a cell is named by row and column.
    """
    ending = path.suffix.lower()
    if ending == ".csv":
        return price_list(_csv(path), where=str(path))
    if ending == ".xlsx":
        return price_list(_xlsx(path), where=str(path))
    raise OfficeError(
        f"a price list is no '{ending or 'file without an ending'}'",
        where=str(path),
        cure="Save it as CSV or XLSX",
    )


def _csv(path: Path) -> list[list[Value]]:
    text = read_text(
        path,
        "price list",
        fault=OfficeError,
        largest_bytes=LARGEST_FILE_BYTES,
        cure="Give the rows that you fit",
    ).removeprefix("\ufeff")
    first = text.partition("\n")[0]
    delimiter = max(DELIMITERS, key=lambda one: (first.count(one), -DELIMITERS.index(one)))
    try:
        rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True))
    except csv.Error as fault:
        raise OfficeError(f"this is no CSV: {fault}", where=str(path), cure="Save it again as CSV") from None
    if delimiter == ",":
        return [list(row) for row in rows]
    # Where columns are parted by something else, a comma in a number is a decimal comma.
    return [[_with_point(cell) for cell in row] for row in rows]


def _with_point(cell: str) -> str:
    return cell.replace(",", ".") if cell.strip().replace(",", "", 1).lstrip("-").isdigit() else cell


def _xlsx(path: Path) -> list[list[Value]]:
    where = str(path)
    try:
        if path.stat().st_size > LARGEST_FILE_BYTES:
            raise OfficeError("the price list is longer than 5 MB", where=where, cure=SAVE_AGAIN)
        data = path.read_bytes()
    except OSError as trouble:
        raise OfficeError(
            f"the file cannot be read ({trouble.strerror})",
            where=where,
            cure="Check the path and who may read it",
        ) from None
    _look_into(data, where=where)
    from openpyxl import load_workbook  # noqa: PLC0415 - only who hands in a spreadsheet pays for its reader

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            book = load_workbook(io.BytesIO(data), read_only=True, data_only=True, keep_links=False)
            rows = book.worksheets[0].iter_rows(max_row=MOST_ROWS + 1, max_col=MOST_COLUMNS, values_only=True)
            return [[_value(cell) for cell in row] for row in rows]
    except OfficeError:
        raise
    except Exception as fault:  # noqa: BLE001 - the reader raises whatever it stumbles over
        raise OfficeError(
            f"this is no spreadsheet that can be read ({type(fault).__name__})", where=where, cure=SAVE_AGAIN
        ) from None


def _look_into(data: bytes, *, where: str) -> None:
    """Refuse an archive that would grow too large, has too many parts, or declares entities."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            parts = archive.infolist()
            # What a part says of its length is also how far it is unpacked at most.
            whole = sum(part.file_size for part in parts)
            if len(parts) > MOST_PARTS or whole > LARGEST_UNPACKED_BYTES:
                raise OfficeError(
                    f"unpacked it would be {whole // 1_000_000} MB in {len(parts)} parts: more than a price list",
                    where=where,
                    cure=SAVE_AGAIN,
                )
            for part in parts:
                inside = archive.read(part)
                if part.filename.endswith((".xml", ".rels")) and any(sign in inside for sign in DECLARES):
                    raise OfficeError("a part of it declares entities", where=where, cure=SAVE_AGAIN)
    except (zipfile.BadZipFile, zipfile.LargeZipFile, NotImplementedError, RuntimeError, EOFError) as fault:
        raise OfficeError(
            f"this is no XLSX file ({type(fault).__name__})", where=where, cure=SAVE_AGAIN
        ) from None


def _value(cell: object) -> Value:
    """What a cell holds, as far as a price list can use it."""
    return cell if cell is None or isinstance(cell, str | int | float | date) else str(cell)
