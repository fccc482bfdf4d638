"""A quote as data: options of a job with what each changes, upkeep, and what it all rests on."""

from __future__ import annotations

from decimal import Decimal

from wardwright.costing.firm import Firm
from wardwright.costing.option import QuoteOption
from wardwright.costing.upkeep import Upkeep
from wardwright.model.record import Record


class Quote(Record):
    """What a customer is offered, and all that it rests on."""

    house: str
    currency: str
    """ISO 4217; XXX: not known."""
    options: tuple[QuoteOption, ...]
    """The design as it stands first."""
    upkeep: Upkeep | None
    """Of the design as it stands; None: not known."""
    tax_name: str
    tax_percent: Decimal | None
    tax_note: str
    rounding: str
    notes: tuple[str, ...] = ()
    firm: Firm | None = None
    """None: the catalogue's made-up rates were taken."""
