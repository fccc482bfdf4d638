from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

import pytest

from common.fitted import DAY, as_text, fitted
from wardwright.costing.price_list import PriceList
from wardwright.costing.quote import Quote
from wardwright.documents.content.forms.quote_paper import quote_office, quote_paper
from wardwright.documents.content.paper import Table
from wardwright.questions.quoted import quote_of
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.firms import sample_firm

CATALOGUE = load_catalogue()


@pytest.fixture(scope="module")
def quote() -> Quote:
    site = fitted()
    return quote_of(site, CATALOGUE, answers=ask(site, CATALOGUE), firm=sample_firm("example-alarms"))


def tables_of(quote: Quote) -> list[Table]:
    paper = quote_paper(quote, fitted(), CATALOGUE, drawn_up=DAY)
    return [one.table for one in paper.sections if one.table is not None]


def test_the_quote_reads_as_it_did(quote: Quote, kept: Callable[[str, str], None]) -> None:
    kept("quote.txt", as_text(quote_paper(quote, fitted(), CATALOGUE, drawn_up=DAY)))


def test_the_lines_that_a_customer_sees_add_up_to_the_price_to_the_cent(quote: Quote) -> None:
    assert len(quote.options) > 1
    for option, table in zip(quote.options, tables_of(quote)[1:], strict=False):
        amounts = [Decimal(str(row[-1])) for row in table.rows]
        lines, (net, tax, gross) = amounts[:-3], amounts[-3:]
        assert sum(lines) == net == option.net
        assert net + tax == gross == option.gross


def test_costs_allowances_and_times_are_the_firms_own(quote: Quote) -> None:
    text = as_text(quote_paper(quote, fitted(), CATALOGUE, drawn_up=DAY)).casefold()
    for word in ("contingency", "return visit", "104 min", "cost |"):
        assert word not in text, word
    costs = {line.cost for one in quote.options for line in one.lines if line.kind == "part"}
    amounts = {line.amount for one in quote.options for line in one.for_the_customer}
    assert not [one for one in costs - amounts if f"{one}" in text]
    office = as_text(quote_office(quote, drawn_up=DAY))
    assert "contingency" in office
    assert "return visit" in office


def test_a_price_that_is_not_known_is_told_so_and_never_less() -> None:
    site = fitted()
    empty = PriceList(where="prices.csv")
    unknown = quote_of(
        site, CATALOGUE, answers=ask(site, CATALOGUE), firm=sample_firm("example-alarms"), prices=empty
    )
    table = tables_of(unknown)[0]
    assert {str(cell) for row in table.rows for cell in row[1:4]} == {"not known"}
    assert "No price is known for control unit" in as_text(
        quote_paper(unknown, site, CATALOGUE, drawn_up=DAY)
    )


def test_how_long_it_holds_counts_from_its_day(quote: Quote) -> None:
    assert "This quote holds until 26 December 2026." in as_text(
        quote_paper(quote, fitted(), CATALOGUE, drawn_up=DAY)
    )


def test_the_office_has_numbers_to_add(quote: Quote) -> None:
    lines, sums = (one.table for one in quote_office(quote, drawn_up=DAY).sections)
    assert lines is not None
    assert sums is not None
    amounts = [row[7] for row in lines.rows if row[0] == quote.options[0].name]
    assert all(isinstance(one, float) for one in amounts)
    assert sum(one for one in amounts if isinstance(one, float)) == pytest.approx(float(sums.rows[0][1]))
