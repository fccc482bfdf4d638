"""What a folder of jobs has of its firm: the firm's own file and its price list, each once for all jobs."""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

from wardwright.costing.firm import Firm
from wardwright.costing.price_list import PriceList
from wardwright.errors import OfficeError
from wardwright.store.firms import read_firm
from wardwright.store.price_files import price_list_of, read_price_list
from wardwright.store.texts import write_bytes

FIRM = "firm.toml"
PRICES = ("prices.csv", "prices.xlsx")
"""Of two the first counts."""
LONGEST_NAME = 80
"""So much of a file's name is told in a message. [signs]"""


class Office(NamedTuple):
    """What a folder has; nothing where it is not there."""

    firm: Firm | None
    prices: PriceList | None


def office_of(folder: Path) -> Office:
    """Read what a folder has of its firm.

    Parameters
    ----------
    folder : Path
        Of the jobs.

    Returns
    -------
    Office
        Both, or either, or neither.

    Raises
    ------
    OfficeError
        If one is there that cannot be used.
    """
    firm = folder / FIRM
    lists = [folder / name for name in PRICES if (folder / name).is_file()]
    return Office(read_firm(firm) if firm.is_file() else None, read_price_list(lists[0]) if lists else None)


def keep_prices(folder: Path, name: str, content: bytes) -> PriceList:
    """Keep a price list for all jobs of a folder; the one before goes only when this one can be read.

    Parameters
    ----------
    folder : Path
        Of the jobs.
    name : str
        What its file was called: says CSV or XLSX.
    content : bytes
        What is in it.

    Returns
    -------
    PriceList
        It.

    Raises
    ------
    OfficeError
        If it cannot be read as a price list, or not be kept.
    """
    # A long name is cut at its beginning: its ending counts.
    found = price_list_of(content, where=name[-LONGEST_NAME:])
    kept = next(one for one in PRICES if one.endswith(Path(name).suffix.lower()))
    write_bytes(folder / kept, content, fault=OfficeError)
    for other in PRICES:
        if other != kept:
            (folder / other).unlink(missing_ok=True)
    return found.model_copy(update={"where": kept})


def drop_prices(folder: Path) -> None:
    """Let the price list go: prices are the catalogue's own again."""
    for name in PRICES:
        (folder / name).unlink(missing_ok=True)
