"""A table as comma-separated values: for the office's own spreadsheet, and for label printers."""

from __future__ import annotations

import csv

from wardwright.documents.content.paper import Cell, Column, Table

STARTS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")
"""Spreadsheets take a text that begins so for something to be worked out."""
BYTE_ORDER_MARK = "\ufeff"
"""Without it a common spreadsheet takes UTF-8 for something else, and names lose their accents."""


class _Lines(list[str]):
    """What a CSV writer writes to: its lines, in memory."""

    def write(self, line: str) -> int:
        """Take a line down."""
        self.append(line)
        return len(line)


def write_csv(table: Table) -> bytes:
    """Write a table, its heading first.

    Parameters
    ----------
    table : Table
        Any.

    Returns
    -------
    bytes
        UTF-8 with a mark of byte order; dates as year-month-day. A text that a spreadsheet would take for a
        formula begins with an apostrophe, which makes it text.
    """
    lines = _Lines()
    writer = csv.writer(lines, lineterminator="\r\n")
    writer.writerow([heading_of(column) for column in table.columns])
    writer.writerows([[_cell(cell) for cell in row] for row in table.rows])
    return (BYTE_ORDER_MARK + "".join(lines)).encode()


def heading_of(column: Column) -> str:
    """A column's heading with its unit.

    Examples
    --------
    >>> heading_of(Column("Height", "m")), heading_of(Column("Name"))
    ('Height [m]', 'Name')
    """
    return f"{column.heading} [{column.unit}]" if column.unit else column.heading


def _cell(cell: Cell) -> str:
    if isinstance(cell, str):
        return "'" + cell if cell.startswith(STARTS_A_FORMULA) else cell
    return f"{cell:g}" if isinstance(cell, float) else str(cell)
