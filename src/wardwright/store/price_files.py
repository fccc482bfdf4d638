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
    _refuse_ending(str(path))
    try:
        refuse_long(path.stat().st_size, where=str(path))
        content = path.read_bytes()
    except OSError as trouble:
        raise OfficeError(
            f"the file cannot be read ({trouble.strerror})",
            where=str(path),
            cure="Check the path and who may read it",
        ) from None
    return price_list_of(content, where=str(path))


def price_list_of(content: bytes, *, where: str) -> PriceList:
    """Read a price list from what is in its file.

    Parameters
    ----------
    content : bytes
        Of a CSV or XLSX file.
    where : str
        What the file is called: its ending says which of them it is.

    Returns
    -------
    PriceList
        Its rows.

    Raises
    ------
    OfficeError
        As `read_price_list`.
    """
    _refuse_ending(where)
    refuse_long(len(content), where=where)
    read = _csv if where.lower().endswith(".csv") else _xlsx
    return price_list(read(content, where=where), where=where)


def _refuse_ending(where: str) -> None:
    ending = Path(where).suffix.lower()
    if ending not in (".csv", ".xlsx"):
        raise OfficeError(
            f"a price list is no '{ending or 'file without an ending'}'",
            where=where,
            cure="Save it as CSV or XLSX",
        )


def refuse_long(size_bytes: int, *, where: str) -> None:
    """Raise OfficeError for a price list that is too long, before more of it is taken in."""
    if size_bytes > LARGEST_FILE_BYTES:
        raise OfficeError(
            f"the price list is longer than {LARGEST_FILE_BYTES // 1_000_000} MB",
            where=where,
            cure="Give the rows that you fit",
        )


def _csv(content: bytes, *, where: str) -> list[list[Value]]:
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise OfficeError("this is not text in UTF-8", where=where, cure="Save it as UTF-8 text") from None
    first = text.partition("\n")[0]
    delimiter = max(DELIMITERS, key=lambda one: (first.count(one), -DELIMITERS.index(one)))
    try:
        rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True))
    except csv.Error as fault:
        raise OfficeError(f"this is no CSV: {fault}", where=where, cure="Save it again as CSV") from None
    if delimiter == ",":
        return [list(row) for row in rows]
    # Where columns are parted by something else, a comma in a number is a decimal comma.
    return [[_with_point(cell) for cell in row] for row in rows]


def _with_point(cell: str) -> str:
    return cell.replace(",", ".") if cell.strip().replace(",", "", 1).lstrip("-").isdigit() else cell


def _xlsx(data: bytes, *, where: str) -> list[list[Value]]:
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
            _look_into_parts(archive, where=where)
    except OfficeError:
        raise
    except Exception as fault:  # noqa: BLE001 - each way of packing fails in its own way on damaged bytes
        raise OfficeError(
            f"this is no XLSX file ({type(fault).__name__})", where=where, cure=SAVE_AGAIN
        ) from None


def _look_into_parts(archive: zipfile.ZipFile, *, where: str) -> None:
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


def _value(cell: object) -> Value:
    """What a cell holds, as far as a price list can use it."""
    return cell if cell is None or isinstance(cell, str | int | float | date) else str(cell)
