"""A quote as data: it travels as JSON and comes back the same."""

from __future__ import annotations

from decimal import Decimal

from common.priced_room import FIRM, PRICES, priced_room
from wardwright.costing.pricing import ROUNDING, priced
from wardwright.costing.quote import Quote
from wardwright.costing.rates import rates_of
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_money_survives_json_to_the_cent() -> None:
    site = priced_room()
    option = priced(site, CATALOGUE, rates_of(site, CATALOGUE, FIRM), prices=PRICES)
    assert option is not None
    quote = Quote(
        house="one room", currency="GBP", options=(option,), upkeep=None, tax_name="VAT", tax_percent=Decimal(20),
        tax_note="", rounding=ROUNDING, firm=FIRM,
    )  # fmt: skip
    assert Quote.model_validate_json(quote.model_dump_json()) == quote
    assert '"gross":"748.32"' in quote.model_dump_json()
