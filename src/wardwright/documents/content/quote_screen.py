"""A quote for the screen: its options beside one another, all in words."""

from __future__ import annotations

from wardwright.costing.option import QuoteOption
from wardwright.costing.quote import Quote
from wardwright.documents.content.quantities import sentence, with_range
from wardwright.documents.content.quote_words import change_words, count_words, money_words, sums_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import Record
from wardwright.model.site import Site


class ShownLine(Record):
    """One line of an option, or of its upkeep."""

    what: str
    count: str
    amount: str


class ShownOption(Record):
    """The job in one way of doing it."""

    name: str
    changes: tuple[str, ...]
    lines: tuple[ShownLine, ...]
    sums: tuple[ShownLine, ...]
    """Before tax, the tax, in all."""
    total: str
    """What is looked at first: with tax where that is known."""
    price: str
    """With its range; empty: not known."""
    hours: str
    difference: str
    """To the first option; empty for that."""
    not_priced: tuple[str, ...]


class ShownQuote(Record):
    """All options, upkeep, and what they rest on."""

    house: str
    by: str
    """The firm; empty: made-up rates."""
    options: tuple[ShownOption, ...]
    upkeep: str
    """Over how many years, and what in all; empty: not known."""
    upkeep_lines: tuple[ShownLine, ...]
    notes: tuple[str, ...]


def shown_quote(quote: Quote, site: Site, catalogue: Catalogue) -> ShownQuote:
    """Tell a quote for the screen.

    Parameters
    ----------
    quote : Quote
        It.
    site : Site
        The design as it stands.
    catalogue : Catalogue
        Its sheets.

    Returns
    -------
    ShownQuote
        The fitter's own: costs and allowances are in it.
    """
    upkeep = quote.upkeep
    return ShownQuote(
        house=quote.house,
        by=quote.firm.name if quote.firm else "",
        options=tuple(_option(one, quote, site, catalogue=catalogue) for one in quote.options),
        upkeep=""
        if upkeep is None
        else f"over {upkeep.years} years, before tax: {money_words(upkeep.amount, quote.currency)}",
        upkeep_lines=()
        if upkeep is None
        else tuple(
            ShownLine(
                what=line.what, count=f"{line.count:f}", amount=money_words(line.amount, quote.currency)
            )
            for line in upkeep.lines
        ),
        notes=tuple(
            sentence(one)
            for one in (
                quote.tax_note, quote.rounding, *quote.notes, *(() if upkeep is None else upkeep.not_known),
            )
            if one
        ),
    )  # fmt: skip


def _option(option: QuoteOption, quote: Quote, site: Site, *, catalogue: Catalogue) -> ShownOption:
    return ShownOption(
        name=sentence(option.name).removesuffix("."),
        changes=tuple(sentence(change_words(one, site, catalogue)) for one in option.changes),
        lines=tuple(
            ShownLine(
                what=line.what, count=count_words(line), amount=money_words(line.amount, quote.currency)
            )
            for line in option.lines
        ),
        sums=tuple(
            ShownLine(what=name, count="", amount=money_words(one, quote.currency))
            for name, one in sums_of(option, quote)
        ),
        total=money_words(option.net if option.gross is None else option.gross, quote.currency),
        price="" if option.price is None else with_range(option.price),
        hours=with_range(option.hours),
        difference="" if option is quote.options[0] else money_words(option.difference, quote.currency),
        not_priced=tuple(sentence(one) for one in option.not_priced),
    )
