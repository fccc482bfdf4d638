"""What goes over the wire about the firm."""

from __future__ import annotations

from wardwright.costing.firm import Firm
from wardwright.model.record import Record
from wardwright.server.messages import Fault


class PricesSaid(Record):
    """A price list that is kept."""

    rows: int
    """How many it has. [-]"""
    oldest: str | None
    """The earliest day that a row is of."""


class OfficeSaid(Record):
    """What the folder has of its firm."""

    firm: Firm | None
    prices: PricesSaid | None
    fault: Fault | None
    """A file is there that cannot be used."""
