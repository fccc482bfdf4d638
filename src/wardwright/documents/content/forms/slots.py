"""What is filled in by hand: tables with cells to write in, and lines to sign on."""

from __future__ import annotations

from collections.abc import Iterable

from wardwright.documents.content.paper import Cell, Column, Table

TO_FILL = ""
"""What stands in a cell that is filled in by hand."""
CUSTOMER_SIGNS = "The customer: name, date, signature"
FITTER_SIGNS = "The fitter: name, date, signature"
SIGNED = (CUSTOMER_SIGNS, FITTER_SIGNS)
NO_CODES = "Write no code, no password and no absence on this paper, nor on any that stays with it."


def with_slots(
    name: str, known: tuple[Column, ...], rows: Iterable[tuple[Cell, ...]], *, slots: tuple[Column, ...]
) -> Table:
    """A table with known cells first, and after them cells to fill in.

    Parameters
    ----------
    name : str
        Of the table.
    known : tuple of Column
        Columns that the rows have cells for.
    rows : iterable of tuple
        What is known, a row each; a row that is longer fills its first slots.
    slots : tuple of Column
        Columns to write in.

    Returns
    -------
    Table
        Its rows are as high as a hand writes.
    """
    columns = (*known, *slots)
    filled = tuple((*row, *(TO_FILL,) * (len(columns) - len(row))) for row in rows)
    return Table(name, columns, filled, is_filled_in=True)


def checklist(name: str, lines: Iterable[str], *, head: Column, slots: tuple[Column, ...]) -> Table:
    """A table with one line of words in each row, and after it cells to fill in.

    Parameters
    ----------
    name : str
        Of the table.
    lines : iterable of str
        What is done or asked, a row each.
    head : Column
        What the lines stand under.
    slots : tuple of Column
        Columns to write in.

    Returns
    -------
    Table
        As `with_slots` makes it.

    Examples
    --------
    >>> checklist("Last", ["Clock is right"], head=Column("What"), slots=(Column("Read"),)).rows
    (('Clock is right', ''),)
    """
    return with_slots(name, (head,), ((line,) for line in lines), slots=slots)


def empty_rows(name: str, columns: tuple[Column, ...], *, count: int) -> Table:
    """A table with nothing in it yet.

    Examples
    --------
    >>> empty_rows("Visits", (Column("Date"), Column("What")), count=2).rows
    (('', ''), ('', ''))
    """
    return Table(name, columns, ((TO_FILL,) * len(columns),) * count, is_filled_in=True)
