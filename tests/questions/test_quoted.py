"""A quote: options with their differences."""

from __future__ import annotations

from decimal import Decimal

import pytest

from common.houses import one_room
from common.priced_room import FIRM, PRICES
from wardwright.costing.price_list import Price, PriceList
from wardwright.errors import NotComputable
from wardwright.questions.quoted import quote_of
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")
ANSWERS = ask(SITE, CATALOGUE)
LIST = PriceList(
    where="p",
    rows=tuple(Price(code=one.id, cost=Decimal(10)) for one in (*CATALOGUE.sheets, *CATALOGUE.cells)),
)


def test_each_sum_is_its_lines_and_each_difference_is_to_the_first() -> None:
    quote = quote_of(SITE, CATALOGUE, answers=ANSWERS, firm=FIRM, prices=LIST)
    assert len(quote.options) == 3
    for option in quote.options:
        assert option.net == sum(line.amount or 0 for line in option.lines)
        assert option.net is not None
        assert option.tax is not None
        assert option.gross == option.net + option.tax
        assert quote.options[0].gross is not None
        assert option.difference == option.gross - quote.options[0].gross
        assert sum(line.amount or 0 for line in option.for_the_customer) == option.net
    assert quote.currency == "GBP"
    assert quote.upkeep is not None
    assert quote.firm == FIRM


def test_made_up_rates_and_prices_are_said_to_be() -> None:
    notes = " ".join(quote_of(SITE, CATALOGUE, answers=ANSWERS).notes)
    assert "the rates are made up" in notes
    assert "the parts' prices are made up" in notes
    own = quote_of(SITE, CATALOGUE, answers=ANSWERS, firm=FIRM, prices=LIST).notes
    assert not any("made up" in note for note in own)


def test_a_short_price_list_makes_the_sums_unknown_and_names_what_is_missing() -> None:
    quote = quote_of(SITE, CATALOGUE, answers=ANSWERS, firm=FIRM, prices=PRICES)
    assert all(option.gross is None and option.difference is None for option in quote.options)
    assert len(quote.options[0].not_priced) == 3


def test_where_no_tax_is_known_differences_are_before_it() -> None:
    abroad = SITE.model_copy(update={"place": SITE.place.model_copy(update={"country": "US"})})
    quote = quote_of(abroad, CATALOGUE, answers=ANSWERS)
    assert quote.tax_percent is None
    assert quote.options[1].gross is None
    assert quote.options[1].net is not None
    assert quote.options[0].net is not None
    assert quote.options[1].difference == quote.options[1].net - quote.options[0].net


def test_a_bare_house_has_no_quote() -> None:
    with pytest.raises(NotComputable, match="no devices: nothing is to be fitted"):
        quote_of(one_room(), CATALOGUE, answers=())
