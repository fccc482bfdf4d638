"""What a job costs by the firm's own data of the folder."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

from wardwright.costing.quote import Quote
from wardwright.costing.tasks import new_devices
from wardwright.documents.content.paper import Logo
from wardwright.errors import NotComputable, OfficeError
from wardwright.model.catalogue import Catalogue
from wardwright.questions.compared import State
from wardwright.questions.quoted import quote_of
from wardwright.server.desk import Desk
from wardwright.store.firms import logo_beside
from wardwright.store.office import FIRM, Office, office_of

HELD = 4
"""Quotes that are held ready. [-]"""


class Offer(NamedTuple):
    """What a firm puts on paper."""

    quote: Quote | None
    logo: Logo | None


NOTHING = Offer(None, None)


def quoted(desk: Desk, folder: Path) -> Quote:
    """What an open job costs as it is now.

    Parameters
    ----------
    desk : Desk
        The open job.
    folder : Path
        Of the jobs: has the firm's data, or not.

    Returns
    -------
    Quote
        By made-up rates where no firm is told.

    Raises
    ------
    OfficeError
        If the firm's data cannot be used, or nothing is to be fitted.
    """
    return _quoted(desk.state(), desk.catalogue, office_of(folder))


def offered(desk: Desk, folder: Path) -> Offer:
    """What the folder's firm offers; nothing where none is told, or its data cannot be used.

    Where nothing is to be fitted there is no quote.
    """
    try:
        office = office_of(folder)
        if office.firm is None:
            return NOTHING
        logo = logo_beside(folder / FIRM, office.firm)
    except OfficeError:
        return NOTHING
    has_work = bool(new_devices(desk.job.site()))
    return Offer(_quoted(desk.state(), desk.catalogue, office) if has_work else None, logo)


def has_quote(desk: Desk, folder: Path) -> bool:
    """Whether there is a firm to offer something, and something to offer: known before it is priced."""
    try:
        return office_of(folder).firm is not None and bool(new_devices(desk.job.site()))
    except OfficeError:
        return False


@lru_cache(maxsize=HELD)
def _quoted(state: State, catalogue: Catalogue, of: Office) -> Quote:
    try:
        return quote_of(state.site, catalogue, answers=state.answers, firm=of.firm, prices=of.prices)
    except NotComputable as why:
        raise OfficeError(
            f"not computable: {why}", where="quote", cure="Place what is to be fitted first"
        ) from None
