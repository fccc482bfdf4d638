"""The client's quote: options by what each changes, lines in exact money, upkeep, and the firm's own terms."""

from __future__ import annotations

import re
from datetime import date, timedelta
from decimal import Decimal

from wardwright.costing.firm import Firm
from wardwright.costing.option import QuoteLine, QuoteOption
from wardwright.costing.quote import Quote
from wardwright.costing.rates import NO_CURRENCY
from wardwright.documents.content.discretion import discreet
from wardwright.documents.content.forms.slots import SIGNED
from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Paper, Section, Table, told_date
from wardwright.documents.content.quantities import sentence
from wardwright.documents.content.quote_words import (
    change_words,
    money_words,
    percent_words,
    tax_words,
    without_numbers,
)
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site

AS_IT_STANDS = "As the proposal describes it."
RESTS_ON = "What is protected, and what is not, stands in the proposal and the risk record."
COUNTED: tuple[str, ...] = ("each", "journeys")
"""Units of lines whose count a customer is told; how long something takes is the firm's own."""


def quote_paper(quote: Quote, site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Set a quote out for the customer.

    Parameters
    ----------
    quote : Quote
        Its lines, with costs and allowances, which are not told.
    site : Site
        The design as it stands.
    catalogue : Catalogue
        Says whose place is not told.
    drawn_up : date
        The day the paper is made; how long the quote holds counts from it.

    Returns
    -------
    Paper
        The options beside each other first. An amount that is not known says so.
    """
    firm = quote.firm
    return Paper(
        title="Quote",
        house=discreet(site.name, site, catalogue),
        copy="client",
        drawn_up=drawn_up,
        foot="" if firm is None else f"Offered by {firm.name}.",
        sections=(
            *(() if firm is None else (_who(firm, drawn_up=drawn_up),)),
            Section("The options", table=_options(quote)),
            *(_option(quote, site, catalogue, number=number) for number in range(len(quote.options))),
            *_upkeep(quote),
            Section("What it rests on", points=_rests_on(quote)),
            *(() if firm is None else tuple(Section(one.heading, text=(one.text,)) for one in firm.text)),
            Section("Ordered", blanks=("Option", *SIGNED)),
        ),
    )


def quote_office(quote: Quote, *, drawn_up: date) -> Paper:
    """The lines of all options with what they cost the firm: for its own spreadsheet, as numbers.

    Parameters
    ----------
    quote : Quote
        It.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        The fitter's: costs and allowances are in it.
    """
    money = quote.currency
    columns = (
        Column("Option", share=2.0), Column("Kind"), Column("Code", share=1.6), Column("What", share=2.4),
        Column("Count"), Column("Unit"), Column("Of one", money), Column("Before tax", money), Column("Cost", money),
    )  # fmt: skip
    rows: list[tuple[Cell, ...]] = [
        (
            option.name, line.kind, line.code, line.what, float(line.count), line.unit,
            _number(line.each, is_told=line.unit != ""), _number(line.amount),
            _number(line.cost, is_told=line.kind in ("part", "consumables")),
        )
        for option in quote.options
        for line in option.lines
    ]  # fmt: skip
    sums = Table(
        "Sums",
        (
            Column("Option", share=2.0),
            Column("Before tax", money),
            Column("Tax", money),
            Column("In all", money),
        ),
        tuple((one.name, _number(one.net), _number(one.tax), _number(one.gross)) for one in quote.options),
    )
    return Paper(
        title="Quote with costs",
        house=quote.house,
        copy="fitter",
        drawn_up=drawn_up,
        sections=(
            Section("Lines", table=Table("Lines", columns, tuple(rows))),
            Section("Sums", table=sums),
        ),
        is_landscape=True,
    )


def _number(amount: Decimal | None, *, is_told: bool = True) -> Cell:
    if not is_told:
        return ""
    return NOT_KNOWN if amount is None else float(amount)


def _who(firm: Firm, *, drawn_up: date) -> Section:
    reached = [f"telephone {firm.phone}" if firm.phone else "", firm.email]
    number = "" if firm.tax is None else firm.tax.registration
    text = [", ".join((firm.name, *firm.address)), ", ".join(one for one in reached if one)]
    text.append(f"{'' if firm.tax is None else firm.tax.name} number {number}".strip() if number else "")
    holds = firm.valid_days
    if holds is not None:
        text.append(f"This quote holds until {told_date(drawn_up + timedelta(days=holds))}.")
    if firm.deposit_percent is not None:
        text.append(f"With the order {percent_words(firm.deposit_percent)} is asked.")
    return Section("Who offers it", text=tuple(one for one in text if one))


def _amount(amount: Decimal | None) -> str:
    return NOT_KNOWN if amount is None else money_words(amount, NO_CURRENCY)


def _options(quote: Quote) -> Table:
    money = _money(quote)
    columns = (
        Column("Option", share=2.6), Column("Before tax", money), Column(tax_words(quote), money),
        Column("In all", money), Column("More than the first", money),
    )  # fmt: skip
    rows = tuple(
        (
            f"{number}. {sentence(one.name)[:-1]}",
            _amount(one.net),
            _amount(one.tax),
            _amount(one.gross),
            "" if number == 1 else _amount(one.difference),
        )
        for number, one in enumerate(quote.options, 1)
    )
    return Table("Options", columns, rows)


def _option(quote: Quote, site: Site, catalogue: Catalogue, *, number: int) -> Section:
    option = quote.options[number]
    told = [sentence(change_words(one, site, catalogue)) for one in option.changes]
    missing = [sentence(_plain(one)) for one in option.not_priced]
    return Section(
        f"{number + 1}. {sentence(option.name)[:-1]}",
        points=tuple((told or [AS_IT_STANDS]) + missing),
        table=_lines(quote, option),
    )


def _money(quote: Quote) -> str:
    """The currency for a heading; nothing where it is not known."""
    return quote.currency if quote.currency != NO_CURRENCY else ""


def _line_columns(quote: Quote) -> tuple[Column, ...]:
    money = _money(quote)
    return (
        Column("What", share=3.4), Column("How many", share=0.8), Column("Of one", money),
        Column("Before tax", money),
    )  # fmt: skip


def _lines(quote: Quote, option: QuoteOption) -> Table:
    rows: list[tuple[Cell, ...]] = [_line(line) for line in option.for_the_customer]
    sums = (("Before tax", option.net), (tax_words(quote), option.tax), ("In all", option.gross))
    rows += [(name, "", "", _amount(amount)) for name, amount in sums]
    return Table(option.name, _line_columns(quote), tuple(rows))


def _line(line: QuoteLine) -> tuple[Cell, ...]:
    is_counted = line.unit in COUNTED
    return (
        _plain(line.what),
        f"{line.count:f}" if is_counted else "",
        _amount(line.each) if is_counted else "",
        _amount(line.amount),
    )


def _plain(what: str) -> str:
    """A part in words, without the figures of its sheet.

    Examples
    --------
    >>> _plain("movement detector, 12 m, 104 degrees, passes animals on the floor")
    'movement detector, passes animals on the floor'
    """
    pieces = what.split(", ")
    return ", ".join(piece for piece in pieces if not re.search(r"\d", piece)) or without_numbers(pieces[0])


def _upkeep(quote: Quote) -> tuple[Section, ...]:
    one = quote.upkeep
    if one is None:
        return ()
    rows: list[tuple[Cell, ...]] = [
        (_plain(line.what), f"{line.count:f}", _amount(line.each), _amount(line.amount))
        for line in one.lines
        if line.count
    ]
    rows.append(("In all, before tax", "", "", _amount(one.amount)))
    missing = tuple(sentence(_plain(text)) for text in one.not_known)
    heading = f"To keep it going over {one.years} years, as it stands"
    return (Section(heading, points=missing, table=Table("Upkeep", _line_columns(quote), tuple(rows))),)


def _rests_on(quote: Quote) -> tuple[str, ...]:
    notes = (RESTS_ON, quote.tax_note, quote.rounding, *quote.notes)
    return tuple(sentence(one) for one in notes if one)
