"""What is charged for work, travel and parts: a firm's own rates, else the catalogue's, with how each is known."""

from __future__ import annotations

from decimal import Decimal
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from wardwright.costing.money import HUNDRED, MINUTES, exact
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.trials.draws import Cases, Input

if TYPE_CHECKING:  # not loaded by `ask`, whose budget is small
    from wardwright.costing.firm import Firm, Subscription

HOUR, JOURNEY, MARK_UP, CONSUMABLES, TRAVEL = (
    "rate-hour", "rate-travel", "rate-mark-up", "rate-consumables", "job-travel",
)  # fmt: skip
PER_HOUR = 60.0
UPKEEP_YEARS = 10
"""Over how many years upkeep is told where no firm says: as far ahead as visits are planned. [a] (assumption)"""
NO_CURRENCY = "XXX"
"""ISO 4217 for no currency: neither the firm nor the country is known."""


class Rate(NamedTuple):
    """One rate: exact at its likely value, with its range and how it is known."""

    figure: Figure
    exact: Decimal
    basis: Basis

    @property
    def input(self) -> Input:
        """What the draws take."""
        return Input.of(self.figure, self.basis)


class Rates(NamedTuple):
    """All rates of a job."""

    currency: str
    hour: Rate
    """For an hour of work. [currency]"""
    journey: Rate
    """For one way, beside the time. [currency]"""
    travel: Rate
    """Time of one way. [min]"""
    mark_up: Rate
    """On the parts' cost. [-]"""
    consumables: Rate
    """Of the parts' cost. [-]"""
    tax_name: str
    tax_percent: Decimal | None
    """None: not known. [%]"""
    tax_note: str
    subscriptions: tuple[Subscription, ...]
    upkeep_years: int

    @property
    def inputs(self) -> tuple[Input, ...]:
        """What the draws take of them."""
        return tuple(
            rate.input for rate in (self.hour, self.journey, self.travel, self.mark_up, self.consumables)
        )

    def visit(self, length_min: Decimal) -> Decimal:
        """What a visit of so many minutes costs with the way there and back, not rounded. [currency]"""
        time = length_min + 2 * self.travel.exact
        return time * self.hour.exact / MINUTES + 2 * self.journey.exact


def visit_in_rows(cases: Cases, length: str) -> FloatArray:
    """What a visit costs with the way there and back, in every row.

    Parameters
    ----------
    cases : Cases
        Rows that hold the rates, and how long the visit is.
    length : str
        Id of the figure that says how long it is.

    Returns
    -------
    ndarray, shape (rows,)
        As `Rates.visit` of each row. [currency]
    """
    rows = cases.rows
    time = rows[length] + 2.0 * rows[TRAVEL]
    return np.asarray(time / PER_HOUR * rows[HOUR] + 2.0 * rows[JOURNEY], dtype=np.float64)


def rates_of(site: Site, catalogue: Catalogue, firm: Firm | None = None) -> Rates:
    """The rates that a job is reckoned at.

    Parameters
    ----------
    site : Site
        Its country says the currency and the tax where the firm does not.
    catalogue : Catalogue
        The figures where no firm tells.
    firm : Firm, optional
        The firm's own.

    Returns
    -------
    Rates
        What a firm tells has no range.
    """
    return _rates_in(site.place.country, catalogue, firm)


@lru_cache(maxsize=64)
def _rates_in(country: str | None, catalogue: Catalogue, firm: Firm | None) -> Rates:
    row = catalogue.tax_rate(country)
    told = None if firm is None else firm.rates
    by_row = None if row is None or row.percent is None else exact(row.percent)
    own_tax = None if firm is None else firm.tax
    currency = told.currency if told is not None else NO_CURRENCY if row is None else row.currency
    name: str
    percent: Decimal | None
    if own_tax is not None:
        name, percent, note = own_tax.name, own_tax.percent, "as the firm says; check with the local rules"
    elif row is not None:
        name, percent = row.name, by_row
        note = f"{row.name} of {row.country} from memory: check with the local rules" + (
            f"; {row.note}" if row.note else ""
        )
    else:
        name, percent, note = "tax", None, "no tax is known for this place: tell the country, or the firm's"

    def rate(figure: str, own: Decimal | None) -> Rate:
        return _rate(catalogue, figure, own)

    def share(percent: Decimal | None) -> Decimal | None:
        return None if percent is None else percent / HUNDRED

    return Rates(
        currency=currency,
        hour=rate(HOUR, None if told is None else told.labour_per_hour),
        journey=rate(JOURNEY, None if told is None else told.travel_per_journey),
        travel=rate(TRAVEL, None if told is None or told.travel_min is None else exact(told.travel_min)),
        mark_up=rate(MARK_UP, share(None if told is None else told.mark_up_percent)),
        consumables=rate(CONSUMABLES, share(None if told is None else told.consumables_percent)),
        tax_name=name,
        tax_percent=percent,
        tax_note=note,
        subscriptions=() if firm is None else firm.subscription,
        upkeep_years=UPKEEP_YEARS if firm is None else firm.upkeep_years,
    )


def _rate(catalogue: Catalogue, figure_id: str, own: Decimal | None) -> Rate:
    figure = catalogue.figure(figure_id)
    if own is None:
        return Rate(figure, exact(figure.value), "default")
    one = float(own)
    return Rate(figure.model_copy(update={"value": one, "low": one, "high": one}), own, "told")
