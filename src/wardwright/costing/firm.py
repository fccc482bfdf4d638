"""A firm's own data: who it is, what it charges, and its texts. Codes, keys and card numbers have no place in it."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from wardwright.costing.money import Money, Percent
from wardwright.model.record import Id, Record
from wardwright.model.tax_rates import Currency

Line = Annotated[str, Field(min_length=1, max_length=200)]


class FirmRates(Record):
    """What a firm charges."""

    currency: Currency
    labour_per_hour: Money
    """For one fitter, before tax."""
    travel_per_journey: Money | None = None
    """One way, beside the time; None: not told, and the catalogue's figure counts."""
    travel_min: Annotated[float, Field(ge=0, le=600)] | None = None
    """One way; None: not told, and the catalogue's figure counts. [min]"""
    mark_up_percent: Percent | None = None
    """Put on the parts' cost where the price list has no price; None: the catalogue's figure counts. [%]"""
    consumables_percent: Percent | None = None
    """Screws, plugs, tape, as a share of the parts' cost; None: the catalogue's figure counts. [%]"""


class FirmTax(Record):
    """What tax a firm adds: it overrules the row of the country."""

    name: Line = "VAT"
    percent: Percent
    """0: the firm charges none. [%]"""
    registration: Annotated[str, Field(max_length=60)] = ""


class Subscription(Record):
    """What is paid each year for a service that kit needs."""

    name: Line
    per_year: Money
    """Before tax."""
    sheets: tuple[Id, ...] = ()
    """Device sheets that need it; none named: every job has it."""


class FirmText(Record):
    """A piece of the firm's own terms."""

    heading: Line
    text: Annotated[str, Field(min_length=1, max_length=20_000)]


class Firm(Record):
    """A firm as its own file says it."""

    name: Line
    address: tuple[Line, ...] = ()
    phone: Annotated[str, Field(max_length=60)] = ""
    email: Annotated[str, Field(max_length=200)] = ""
    logo: Annotated[str, Field(max_length=200)] = ""
    """Name of a picture file beside the firm's file; empty: none."""
    rates: FirmRates
    tax: FirmTax | None = None
    """None: as the row of the country says."""
    upkeep_years: Annotated[int, Field(ge=1, le=25)] = 10
    """Over how many years upkeep is told. [a]"""
    valid_days: Annotated[int, Field(ge=1, le=365)] | None = None
    """How long a quote holds; None: not told. [d]"""
    deposit_percent: Annotated[Percent, Field(le=100)] | None = None
    """Asked with the order; None: not told. [%]"""
    subscription: tuple[Subscription, ...] = ()
    text: tuple[FirmText, ...] = ()
    """Terms in the firm's own words, in order."""
