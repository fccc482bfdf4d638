"""A plan that is written beside what is printed: as rows, or as a paper."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from wardwright.errors import OfficeError

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from datetime import date

    from wardwright.documents.content.paper import Paper, Table
    from wardwright.model.place import Place

ENDINGS = (".csv", ".pdf")
HELP = "write it to a file as well: .csv for rows, .pdf for a paper to take along"


def refuse_ending(output: str | None) -> None:
    """Raise OfficeError for a file that is neither, before anything is worked out."""
    if output and Path(output).suffix.lower() not in ENDINGS:
        raise OfficeError(
            f"a plan is written as {' or '.join(ENDINGS)}",
            where=output,
            cure="Give the file one of these endings",
        )


def write_plan(
    output: str, *, place: Place, table: Callable[[], Table], paper: Callable[[date], Paper]
) -> None:
    """Write a plan as its file's ending says.

    Parameters
    ----------
    output : str
        The file.
    place : Place
        Where the house is: says which paper is in the printer.
    table, paper : callable
        The plan as rows; and on paper, for the day it is made.

    Raises
    ------
    OfficeError
        If it cannot be written.
    """
    from wardwright.store.texts import write_bytes

    if Path(output).suffix.lower() == ".pdf":
        from wardwright.documents.press import Press, usual_size
        from wardwright.store.clock import today
        from wardwright.store.fonts import font_folder

        content = Press(font_folder(), usual_size(place)).pdf(paper(today()))
    else:
        from wardwright.documents.writers.csv_rows import write_csv

        content = write_csv(table())
    write_bytes(Path(output), content, fault=OfficeError)
