"""The price of one design: a line for each sheet, each phase of the work, travel and allowances."""

from __future__ import annotations

from decimal import Decimal
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from wardwright.costing.labour import Labour, labour_of
from wardwright.costing.money import HUNDRED, MINUTES, exact, share_of, to_cents, total
from wardwright.costing.option import LineKind, OptionChange, QuoteLine, QuoteOption
from wardwright.costing.parts import Part, parts_of
from wardwright.costing.rates import CONSUMABLES, HOUR, JOURNEY, MARK_UP, PER_HOUR, Rates, visit_in_rows
from wardwright.costing.return_visits import LENGTH, Risk, chance_of_return, risk_inputs
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.rules.finding import Mend
from wardwright.trials.draws import estimate_of

if TYPE_CHECKING:  # not loaded by `ask`, whose budget is small
    from wardwright.costing.price_list import PriceList

PHASES = ("survey", "prepare", "fit", "prove", "hand over")
ROUNDING = (
    "each phase of the work is rounded to whole minutes, each line to whole cents, half a cent up; tax is worked out "
    "on the sum of the lines and rounded once"
)


def priced(
    site: Site,
    catalogue: Catalogue,
    rates: Rates,
    *,
    prices: PriceList | None = None,
    risks: tuple[Risk, ...] = (),
    name: str = "the design as it stands",
    changes: tuple[OptionChange, ...] = (),
    mends: tuple[Mend, ...] = (),
) -> QuoteOption | None:
    """Price a design.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets and figures.
    rates : Rates
        What is charged.
    prices : PriceList, optional
        The firm's own.
    risks : tuple of Risk, default ()
        What may bring somebody back.
    name : str, default "the design as it stands"
        What the option is called.
    changes : tuple of OptionChange, default ()
        What it changes.
    mends : tuple of Mend, default ()
        What is done for it.

    Returns
    -------
    QuoteOption or None
        None where nothing is to be fitted.
    """
    labour = labour_of(site, catalogue, (*rates.inputs, *risk_inputs(catalogue, risks)))
    if labour is None:
        return None
    parts = parts_of(site, catalogue, rates, prices=prices)
    return _option(labour, parts, rates, risks=risks, name=name, changes=changes, mends=mends)


@lru_cache(maxsize=128)
def _option(
    labour: Labour,
    parts: tuple[Part, ...],
    rates: Rates,
    *,
    risks: tuple[Risk, ...],
    name: str,
    changes: tuple[OptionChange, ...],
    mends: tuple[Mend, ...],
) -> QuoteOption:
    """Remembered by the work and the parts: a device that is moved a little mostly takes neither more nor less."""
    lines = (*_part_lines(parts, rates), *_work_lines(labour, rates), *_allowances(labour, rates, risks))
    net = total(line.amount for line in lines)
    tax = None if net is None or rates.tax_percent is None else share_of(net, rates.tax_percent)
    return QuoteOption(
        name=name,
        changes=changes,
        mends=mends,
        lines=lines,
        net=net,
        tax=tax,
        gross=None if net is None or tax is None else net + tax,
        hours=labour.hours,
        days=labour.days,
        price=None if net is None else _range(labour, parts, rates, risks=risks),
        not_priced=tuple(f"no price is known for {part.name}" for part in parts if part.each is None),
    )


def _part_lines(parts: tuple[Part, ...], rates: Rates) -> tuple[QuoteLine, ...]:
    found = [
        QuoteLine(
            kind="part",
            code=part.sheet,
            what=part.name,
            count=Decimal(part.needed),
            unit="each",
            each=part.each,
            amount=None if part.each is None else to_cents(part.needed * part.each),
            cost=None if part.cost is None else to_cents(part.needed * part.cost),
            reason="" if part.each is not None else "no price is known",
        )
        for part in parts
    ]
    bases = [part.base for part in parts]
    known = total(bases)
    amount = None if known is None else to_cents(known * rates.consumables.exact)
    found.append(
        QuoteLine(
            kind="consumables",
            code="consumables",
            what="fixings and consumables",
            count=Decimal(1),
            unit="",
            each=None,
            amount=amount,
            cost=amount,
            reason="" if amount is not None else "a share of the parts, whose price is not known",
        )
    )
    return tuple(found)


def _work_lines(labour: Labour, rates: Rates) -> tuple[QuoteLine, ...]:
    found = [
        _by_time("work", phase, phase, minutes=labour.likely_min(phase), rates=rates)
        for phase in PHASES
        if phase in labour.by_phase
    ]
    found.append(
        _by_time("travel", "travel", "travelling time", minutes=labour.likely_min("travel"), rates=rates)
    )
    fee = rates.journey.exact
    found.append(
        QuoteLine(
            kind="travel",
            code="journeys",
            what="journeys",
            count=Decimal(labour.journeys),
            unit="journeys",
            each=to_cents(fee),
            amount=to_cents(labour.journeys * fee),
        )
    )
    return tuple(found)


def _allowances(labour: Labour, rates: Rates, risks: tuple[Risk, ...]) -> tuple[QuoteLine, ...]:
    chance = exact(round(float(chance_of_return(risks, labour.cases)[0]), 4))
    back = to_cents(chance * rates.visit(exact(float(labour.cases.rows[LENGTH][0]))))
    return (
        _by_time(
            "contingency", "contingency", "contingency", minutes=labour.likely_min("contingency"), rates=rates
        ),
        QuoteLine(
            kind="return visit",
            code="return visit",
            what="a return visit in the first year, weighed by how likely it is",
            count=chance,
            unit="",
            each=None,
            amount=back,
        ),
    )


def _by_time(kind: LineKind, code: str, what: str, *, minutes: float, rates: Rates) -> QuoteLine:
    count = Decimal(int(minutes + 0.5))
    return QuoteLine(
        kind=kind,
        code=code,
        what=what,
        count=count,
        unit="min",
        each=to_cents(rates.hour.exact),
        amount=to_cents(count * rates.hour.exact / MINUTES),
    )


def return_cost(labour: Labour, risks: tuple[Risk, ...]) -> FloatArray:
    """The return visit to be expected, in every row: its cost times how likely it is. [currency]"""
    cost = visit_in_rows(labour.cases, LENGTH)
    return np.asarray(chance_of_return(risks, labour.cases) * cost, dtype=np.float64)


def _range(labour: Labour, parts: tuple[Part, ...], rates: Rates, *, risks: tuple[Risk, ...]) -> Estimate:
    rows = labour.cases.rows
    marked = sum(float(p.needed * p.cost) for p in parts if p.is_marked_up and p.cost is not None)
    plain = sum(float(p.needed * p.each) for p in parts if not p.is_marked_up and p.each is not None)
    base = sum(float(one) for one in (part.base for part in parts) if one is not None)
    net = marked * (1.0 + rows[MARK_UP]) + plain + base * rows[CONSUMABLES]
    net = net + labour.minutes / PER_HOUR * rows[HOUR] + labour.journeys * rows[JOURNEY]
    net = net + return_cost(labour, risks)
    percent = Decimal(0) if rates.tax_percent is None else rates.tax_percent
    return estimate_of(net * float(1 + percent / HUNDRED), labour.cases, unit=rates.currency)
