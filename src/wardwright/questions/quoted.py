"""A quote: the design as it stands and the options that were tried, each with its price and the difference."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from wardwright.costing.firm import Firm
from wardwright.costing.option import QuoteOption
from wardwright.costing.price_list import PriceList
from wardwright.costing.pricing import ROUNDING, priced
from wardwright.costing.quote import Quote
from wardwright.costing.rates import NO_CURRENCY, Rates, rates_of
from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.options_tried import options_tried
from wardwright.questions.return_risks import return_risks
from wardwright.questions.what_it_costs import upkeep_for


def quote_of(
    site: Site,
    catalogue: Catalogue,
    *,
    answers: Sequence[Answer],
    firm: Firm | None = None,
    prices: PriceList | None = None,
) -> Quote:
    """Put a quote together.

    Parameters
    ----------
    site : Site
        The design as it stands.
    catalogue : Catalogue
        Sheets, times, and made-up rates where no firm tells its own.
    answers : sequence of Answer
        Of all questions, worst first: options are built of their mends.
    firm : Firm, optional
        Who offers it.
    prices : PriceList, optional
        The firm's own; a sheet that is not in it has no price that is known.

    Returns
    -------
    Quote
        With at least one option.

    Raises
    ------
    NotComputable
        If nothing is to be fitted.
    """
    rates = rates_of(site, catalogue, firm)
    found: list[QuoteOption] = []
    for one in options_tried(site, catalogue, answers):
        option = priced(
            one.site,
            catalogue,
            rates,
            prices=prices,
            risks=return_risks(one.site, catalogue),
            name=one.name,
            changes=one.changes,
            mends=one.mends,
        )
        if option is not None:
            found.append(option.model_copy(update={"difference": _difference(option, found)}))
    if not found:
        raise NotComputable("no devices: nothing is to be fitted")
    return Quote(
        house=site.name,
        currency=rates.currency,
        options=tuple(found),
        upkeep=upkeep_for(site, catalogue, rates, prices=prices),
        tax_name=rates.tax_name,
        tax_percent=rates.tax_percent,
        tax_note=rates.tax_note,
        rounding=ROUNDING,
        notes=_notes(site, rates, firm=firm, prices=prices),
        firm=firm,
    )


def _difference(option: QuoteOption, before: Sequence[QuoteOption]) -> Decimal | None:
    """Its price less that of the first option, with tax where that is known of both; None: not known."""
    first = before[0] if before else option
    now, then = (one.gross if one.gross is not None else one.net for one in (option, first))
    return None if now is None or then is None else now - then


def _notes(site: Site, rates: Rates, *, firm: Firm | None, prices: PriceList | None) -> tuple[str, ...]:
    found = []
    if firm is None:
        found.append("the rates are made up for this program's catalogue: give the firm's own file")
    if prices is None:
        found.append("the parts' prices are made up for this program's catalogue: give a price list")
    elif prices.oldest is not None:
        found.append(f"the oldest price in the list is of {prices.oldest.isoformat()}")
    if rates.currency == NO_CURRENCY:
        found.append("the currency is not known: tell the country, or the firm's")
    country = site.place.country
    if firm is not None and firm.tax is None and rates.tax_percent is None:
        found.append(
            f"the tax is not known{'' if country is None else f' for {country}'}: the firm's file may tell it"
        )
    return tuple(found)
