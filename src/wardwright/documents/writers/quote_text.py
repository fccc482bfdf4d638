"""A quote as lines for a terminal, as JSON, and as a table."""

from __future__ import annotations

import textwrap

from wardwright.costing.option import QuoteOption
from wardwright.costing.quote import Quote
from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Table
from wardwright.documents.content.quantities import sentence, with_range
from wardwright.documents.content.quote_words import change_words, count_words, money_words, sums_of
from wardwright.documents.writers.text import WIDTH, plain
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site

COLUMNS = (
    Column("Option", share=2.0), Column("Line", share=1.2), Column("Code", share=1.6), Column("What", share=2.4),
    Column("Count"), Column("Unit"), Column("Price of one"), Column("Before tax"), Column("Cost"), Column("Currency"),
)  # fmt: skip
CHECKED = (
    "An aid to reckon with, for the firm alone: costs and allowances are no part of the customer's copy."
)


def quote_text(quote: Quote, site: Site, catalogue: Catalogue, *, width: int = WIDTH) -> str:
    """Write a quote as lines.

    Parameters
    ----------
    quote : Quote
        It.
    site : Site
        The design as it stands.
    catalogue : Catalogue
        Its sheets.
    width : int, default 100
        Columns that lines are folded to. [-]

    Returns
    -------
    str
        Each option with its lines, then upkeep, then what it all rests on. Plain letters.
    """
    lines = [f"Quote for {quote.house}" + (f", by {quote.firm.name}" if quote.firm else "")]
    for number, option in enumerate(quote.options, 1):
        lines += ["", f"{number}. {sentence(option.name)[:-1]}"]
        told = (change_words(one, site, catalogue) for one in option.changes)
        lines += [row for one in told for row in _folded(one, width)]
        lines += _lines(option, quote)
    lines += _upkeep(quote)
    notes = (quote.tax_note, quote.rounding, *quote.notes, CHECKED)
    lines += ["", *(row for one in notes if one for row in textwrap.wrap(sentence(one), width))]
    return plain("\n".join(lines) + "\n")


def _lines(option: QuoteOption, quote: Quote) -> list[str]:
    wide = max(len(line.what) for line in option.lines)
    found = [
        f"   {line.what:<{wide}}  {count_words(line):>10}  {money_words(line.amount, quote.currency):>14}"
        for line in option.lines
    ]
    found += [
        f"   {name:<{wide}}  {'':>10}  {money_words(one, quote.currency):>14}"
        for name, one in sums_of(option, quote)
    ]
    if option.price is not None:
        found.append(f"   likely range {with_range(option.price, is_plain=True)}")
    days = "1 day" if option.days == 1 else f"{option.days} days"
    found.append(f"   work and travel {with_range(option.hours, is_plain=True)}, {days} on site")
    if option is not quote.options[0]:
        found.append(f"   more than the first option {money_words(option.difference, quote.currency)}")
    return found + [f"   {sentence(one)}" for one in option.not_priced]


def _upkeep(quote: Quote) -> list[str]:
    one = quote.upkeep
    if one is None:
        return []
    found = ["", f"Upkeep over {one.years} years, before tax: {money_words(one.amount, quote.currency)}"]
    found += [
        f"   {line.count:f} x {line.what}: {money_words(line.amount, quote.currency)}" for line in one.lines
    ]
    return found + [f"   {sentence(text)}" for text in one.not_known]


def _folded(text: str, width: int) -> list[str]:
    return textwrap.wrap(sentence(text), width, initial_indent="   - ", subsequent_indent="     ")


def quote_json(quote: Quote) -> str:
    """A quote as JSON; amounts as text, exact to the cent."""
    return quote.model_dump_json(indent=2) + "\n"


def quote_table(quote: Quote) -> Table:
    """The lines of all options as one table; what is not known says so."""
    rows: list[tuple[Cell, ...]] = []
    for option in quote.options:
        rows += [
            (
                option.name,
                line.kind,
                line.code,
                line.what,
                f"{line.count:f}",
                line.unit,
                "" if line.each is None and line.unit == "" else _cell(line.each),
                _cell(line.amount),
                "" if line.kind not in ("part", "consumables") else _cell(line.cost),
                quote.currency,
            )
            for line in option.lines
        ]
        sums = (("before tax", option.net), (quote.tax_name, option.tax), ("in all", option.gross))
        rows += [
            (option.name, "sum", name, "", "", "", "", _cell(one), "", quote.currency) for name, one in sums
        ]
    return Table("Quote", COLUMNS, tuple(rows))


def _cell(amount: object) -> str:
    return NOT_KNOWN if amount is None else f"{amount:f}"
