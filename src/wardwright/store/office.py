"""What a folder of jobs has of its firm: the firm's own file and its price list, each once for all jobs."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path
from typing import NamedTuple

from wardwright.costing.firm import Firm
from wardwright.costing.price_list import PriceList
from wardwright.errors import OfficeError
from wardwright.store.firms import read_firm
from wardwright.store.price_files import LARGEST_FILE_BYTES, read_price_list
from wardwright.store.texts import settle

FIRM = "firm.toml"
PRICES = ("prices.csv", "prices.xlsx")
"""Of two the first counts."""


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
    ending = Path(name).suffix.lower()
    kept = next((one for one in PRICES if one.endswith(ending) and ending), None)
    if kept is None:
        raise OfficeError(
            f"a price list is no '{ending or 'file without an ending'}'",
            where=name[:80],
            cure="Save it as CSV or XLSX",
        )
    if len(content) > LARGEST_FILE_BYTES:
        raise OfficeError(
            "the price list is longer than 5 MB", where=name[:80], cure="Give the rows that you fit"
        )
    try:
        handle, draft = tempfile.mkstemp(dir=folder, prefix=".prices.", suffix=ending)
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        try:
            found = read_price_list(Path(draft))
            Path(draft).replace(folder / kept)
        finally:
            Path(draft).unlink(missing_ok=True)
        for other in PRICES:
            if other != kept:
                (folder / other).unlink(missing_ok=True)
        settle(folder)
    except OfficeError as fault:
        # The draft's own name says nothing to anybody.
        where = fault.where.replace(draft, name[:80])
        raise OfficeError(fault.what, where=where, cure=fault.cure) from None
    except OSError as trouble:
        raise OfficeError(
            f"the price list cannot be kept ({trouble.strerror})",
            where=name[:80],
            cure="Check that the folder has room and may be written to",
        ) from None
    return found.model_copy(update={"where": kept})


def drop_prices(folder: Path) -> None:
    """Let the price list go: prices are the catalogue's own again."""
    for name in PRICES:
        (folder / name).unlink(missing_ok=True)
