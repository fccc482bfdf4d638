"""A paper as plain content: sections of words, tables and drawings; a writer puts the ink down."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from wardwright.documents.drawing.recording import Drawing

Cell = str | int | float | date
"""A number stays a number and a date a date, so that a spreadsheet can sort and add them."""
NOT_KNOWN = "not known"
"""What stands in a cell where nobody said: never empty, never nought."""

BESIDE_MM = {False: 124.0, True: 190.0}
"""A drawing up to this wide has its key beside it, on a page upright or across. [mm]"""

CopyClass = Literal["fitter", "client", "open"]
"""Whom a copy is for, the most telling first."""
PaperSize = Literal["a4", "letter"]
"""What is in the printer."""


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a table."""

    heading: str
    unit: str = ""
    """Printed with the heading, never in the cells."""
    share: float = 1.0
    """Its width as a share of the others' on paper."""


@dataclass(frozen=True, slots=True)
class Table:
    """Rows of cells under headings."""

    name: str
    """Short: the name of its sheet in a spreadsheet."""
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    is_ticked: bool = False
    """Whether a box to tick stands before each row on paper."""
    is_filled_in: bool = False
    """Whether its empty cells are filled in by hand: its rows are as high as a hand writes."""


@dataclass(frozen=True, slots=True)
class Label:
    """What is cut out and stuck inside a cover."""

    code: str
    """What its square holds, for a reader."""
    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Section:
    """A heading and what stands under it."""

    heading: str
    text: tuple[str, ...] = ()
    """Paragraphs before anything else."""
    points: tuple[str, ...] = ()
    """A list."""
    table: Table | None = None
    drawing: Drawing | None = None
    """On a sheet of its own where there is one, at its scale."""
    key: tuple[tuple[str, str], ...] = ()
    """Letters on the drawing, and what they mean."""
    blanks: tuple[str, ...] = ()
    """Lines to be filled in by hand, each after what it is for."""
    labels: tuple[Label, ...] = ()
    """Cut out, two abreast."""
    rules: int = 0
    """Lines across the whole page, for more than a few words. [-]"""
    is_form: bool = False
    """Whether it begins a page of its own, to be used by itself."""


@dataclass(frozen=True, slots=True)
class Logo:
    """A firm's own picture, as its file holds it."""

    name: str
    """Of the file: its ending says of which kind it is."""
    content: bytes
    words: str
    """What it is, for who cannot see it."""


@dataclass(frozen=True, slots=True)
class Paper:
    """One document."""

    title: str
    house: str
    copy: CopyClass
    drawn_up: date
    sections: tuple[Section, ...]
    is_landscape: bool = False
    foot: str = ""
    """One line that says how to read it, under its title."""
    is_large: bool = False
    """Whether it is set in large letters, to be read across a room or by weak eyes."""


def told(cell: Cell) -> str:
    """A cell as it is printed.

    Examples
    --------
    >>> told(2.0), told(date(2026, 3, 1)), told("hall")
    ('2', '1 March 2026', 'hall')
    """
    if isinstance(cell, date):
        return told_date(cell)
    return f"{cell:g}" if isinstance(cell, float) else str(cell)


def told_date(day: date) -> str:
    """A day as one says it."""
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
