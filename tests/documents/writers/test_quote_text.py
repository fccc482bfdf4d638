"""A quote on a terminal, as JSON and as a table."""

from __future__ import annotations

import json

from common.priced_room import FIRM, PRICES, priced_room
from wardwright.costing.quote import Quote
from wardwright.documents.writers.csv_rows import write_csv
from wardwright.documents.writers.quote_text import quote_json, quote_table, quote_text
from wardwright.questions.quoted import quote_of
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
SITE = priced_room()
QUOTE = quote_of(SITE, CATALOGUE, answers=(), firm=FIRM, prices=PRICES)


def test_the_text_has_every_line_and_the_sums() -> None:
    text = quote_text(QUOTE, SITE, CATALOGUE)
    assert text.isascii()
    for words in (
        "by Example Alarms",
        "117.00 GBP",
        "623.60 GBP",
        "VAT 20 %",
        "124.72 GBP",
        "748.32 GBP",
        "half a cent up",
        "1 day on site",
    ):
        assert words in text


def test_the_json_is_the_quote() -> None:
    assert Quote.model_validate_json(quote_json(QUOTE)) == QUOTE
    assert json.loads(quote_json(QUOTE))["options"][0]["net"] == "623.60"


def test_the_table_has_a_row_a_line_and_three_sums() -> None:
    table = quote_table(QUOTE)
    assert len(table.rows) == len(QUOTE.options[0].lines) + 3
    assert table.rows[-1][7] == "748.32"
    assert b"748.32" in write_csv(table)


def test_what_is_not_known_says_so_in_text_and_table() -> None:
    short = PRICES.model_copy(update={"rows": PRICES.rows[:1]})
    quote = quote_of(SITE, CATALOGUE, answers=(), firm=FIRM, prices=short)
    assert "No price is known for movement detector" in quote_text(quote, SITE, CATALOGUE)
    assert [row[7] for row in quote_table(quote).rows[-3:]] == ["not known"] * 3
