"""What the kit costs to keep going over some years: service visits, batteries, subscriptions."""

from __future__ import annotations

import math
from collections.abc import Mapping
from decimal import Decimal
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from wardwright.costing.money import exact, to_cents, total
from wardwright.costing.rates import Rates, visit_in_rows
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.estimate import Estimate
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.trials.draws import Input, cases_of, estimate_of

if TYPE_CHECKING:  # not loaded by `ask`, whose budget is small
    from wardwright.costing.firm import Subscription
    from wardwright.costing.price_list import PriceList

SERVICE_LENGTH, SERVICE_INTERVAL = "upkeep-service", "service-interval"
SAME = 1e-9
SHORTEST = 0.01
"""No battery's life is taken to be shorter. [a]"""


class UpkeepLine(Record):
    """One thing that is paid for in these years."""

    what: str
    count: Decimal
    each: Decimal | None
    """None: not known. [currency]"""
    amount: Decimal | None
    """Before tax, over all the years; None: not known. [currency]"""


class Upkeep(Record):
    """What is paid after the job, before tax."""

    years: int
    lines: tuple[UpkeepLine, ...]
    amount: Decimal | None
    """Over all the years; None: a price or a life is not known. [currency]"""
    a_year: Estimate | None
    """On average, with the batteries' lives from low to high. [currency]"""
    not_known: tuple[str, ...] = ()


class _Used(NamedTuple):
    """How often cells of one kind are changed in these years."""

    cell: str
    likely: int
    least: int
    most: int

    def figure(self, name: str) -> Figure:
        """What the draws take."""
        return Figure(
            id=f"used-{self.cell}", name=f"how often {name} is changed", value=float(self.likely),
            low=float(self.least), high=float(self.most), unit="-", source="own", mark="derived",
        )  # fmt: skip


def changes_within(years: float, life: float, interval: float) -> int:
    """How often a battery is changed within some years: at the last service visit before it may end.

    Parameters
    ----------
    years : float
        How long is looked ahead. [a]
    life : float
        How long it lasts. [a]
    interval : float
        From one service visit to the next; a shorter life is changed when it ends. [a]

    Returns
    -------
    int
        A change that falls on the last day counts.

    Examples
    --------
    >>> changes_within(5, 2.4, 1.0), changes_within(5, 7.0, 1.0), changes_within(5, 0.5, 1.0)
    (2, 0, 10)
    """
    services = math.floor(life / interval + SAME)
    apart = services * interval if services >= 1 else life
    return math.floor(years / apart + SAME)


def upkeep_of(
    site: Site,
    catalogue: Catalogue,
    rates: Rates,
    *,
    lives: Mapping[str, Estimate | None],
    prices: PriceList | None = None,
) -> Upkeep:
    """What a site's kit costs to keep going.

    Parameters
    ----------
    site : Site
        All its devices count, those from before too.
    catalogue : Catalogue
        Sheets, cells and figures.
    rates : Rates
        What a visit costs, which services are paid for yearly, and over how many years is looked.
    lives : mapping of str to Estimate or None
        How long each device's battery lasts; None: not known. [a]
    prices : PriceList, optional
        The firm's own: it may name kinds of cells by their ids.

    Returns
    -------
    Upkeep
        Visits first, then batteries by kind, then subscriptions.
    """
    years, interval = rates.upkeep_years, catalogue.limit(SERVICE_INTERVAL, site.place.rule_pack).value
    used, not_known = _cells(site, catalogue, lives, years=years, interval=interval)
    kept = {one.sheet for one in site.devices}
    paid = tuple(one for one in rates.subscriptions if not one.sheets or kept & set(one.sheets))
    return _upkeep(
        catalogue,
        rates,
        prices,
        visits=math.floor(years / interval + SAME),
        used=used,
        no_life=not_known,
        paid=paid,
    )


@lru_cache(maxsize=128)
def _upkeep(
    catalogue: Catalogue,
    rates: Rates,
    prices: PriceList | None,
    *,
    visits: int,
    used: tuple[_Used, ...],
    no_life: tuple[str, ...],
    paid: tuple[Subscription, ...],
) -> Upkeep:
    """Remembered by how often things are changed: a battery that lasts a little longer mostly changes nothing."""
    years, not_known = rates.upkeep_years, list(no_life)
    visit = to_cents(rates.visit(exact(catalogue.figure(SERVICE_LENGTH).value)))
    lines = [_line("service visits", visits, visit)]
    priced: list[tuple[Figure, float]] = []
    for one in used:
        price = cell_price(one.cell, catalogue, rates, prices=prices)
        if one.most == 0:
            continue
        name = catalogue.cell(one.cell).name
        if price is None:
            not_known.append(f"no price is known for {name}")
        lines.append(_line(name, one.likely, price))
        priced.append((one.figure(name), float(price or 0)))
    lines += [_line(f"subscription: {one.name}", years, one.per_year) for one in paid]
    amount = None if not_known else total(line.amount for line in lines)
    return Upkeep(
        years=years,
        lines=tuple(lines),
        amount=amount,
        a_year=None
        if amount is None
        else _a_year(
            catalogue,
            rates,
            used=priced,
            a_year=visits / years,
            fixed=float(sum(one.per_year for one in paid)),
        ),
        not_known=tuple(not_known),
    )


def cell_price(cell: str, catalogue: Catalogue, rates: Rates, *, prices: PriceList | None) -> Decimal | None:
    """What the customer pays for one cell before tax; None: not known."""
    row = None if prices is None else prices.of(cell)
    if row is not None and row.price is not None:
        return row.price
    own = catalogue.cell(cell).price
    cost = row.cost if row is not None else None if own is None else exact(own)
    return None if cost is None else to_cents(cost * (1 + rates.mark_up.exact))


def _cells(
    site: Site, catalogue: Catalogue, lives: Mapping[str, Estimate | None], *, years: int, interval: float
) -> tuple[tuple[_Used, ...], tuple[str, ...]]:
    """How many cells of each kind are used, by kind, and of which devices that is not known."""
    counts: dict[str, list[int]] = {}
    not_known: list[str] = []
    for device in sorted(site.devices, key=lambda one: one.id):
        if device.id not in lives:
            continue
        life, sheet = lives[device.id], catalogue.sheet(device.sheet)
        if life is None or not sheet.cell_rows:
            not_known.append(f"how long the battery of {device.name} lasts is not known")
            continue
        cells = sheet.cells
        cell = sheet.cell_rows[-1] if cells is None else device.cell or cells.cell
        each = 1 if cells is None else cells.count
        before = counts.setdefault(cell, [0, 0, 0])
        for i, one in enumerate((life.value, life.high, life.low)):
            before[i] += each * changes_within(years, max(one, SHORTEST), interval)
    return tuple(_Used(cell, *found) for cell, found in sorted(counts.items())), tuple(not_known)


def _line(what: str, count: int, each: Decimal | None) -> UpkeepLine:
    amount = Decimal("0.00") if count == 0 else None if each is None else to_cents(count * each)
    return UpkeepLine(what=what, count=Decimal(count), each=each, amount=amount)


def _a_year(
    catalogue: Catalogue, rates: Rates, *, used: list[tuple[Figure, float]], a_year: float, fixed: float
) -> Estimate:
    """The average of a year over all that is uncertain. [currency]"""
    length = catalogue.figure(SERVICE_LENGTH)
    own = [Input.of(figure) for figure in (length, *(one for one, _ in used))]
    inputs = (*own, rates.hour.input, rates.travel.input, rates.journey.input)
    cases = cases_of(inputs)
    amount = a_year * visit_in_rows(cases, length.id) + fixed
    for figure, price in used:
        amount = amount + cases.rows[figure.id] * (price / rates.upkeep_years)
    return estimate_of(amount, cases, unit=rates.currency)
