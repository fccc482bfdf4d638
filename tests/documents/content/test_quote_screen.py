"""A quote for the screen says what the quote says, option by option."""

from __future__ import annotations

from decimal import Decimal

from wardwright.documents.content.quote_screen import shown_quote
from wardwright.questions.quoted import quote_of
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.firms import sample_firm
from wardwright.store.samples import read_sample

CATALOGUE, SITE = load_catalogue(), read_sample("terrace")
ANSWERS = ask(SITE, CATALOGUE)


def test_each_option_has_its_sum_and_its_difference_to_the_first() -> None:
    quote = quote_of(SITE, CATALOGUE, answers=ANSWERS, firm=sample_firm("example-alarms"))
    shown = shown_quote(quote, SITE, CATALOGUE)
    assert shown.by == "Example Alarms"
    assert len(shown.options) == len(quote.options) > 1
    for one, option in zip(shown.options, quote.options, strict=True):
        assert one.total == f"{option.gross:.2f} GBP"
        assert one.sums[-1].amount == one.total
        assert len(one.lines) == len(option.lines)
        lines = sum(Decimal(line.amount.split()[0]) for line in one.lines)
        assert lines == Decimal(one.sums[0].amount.split()[0])
    assert shown.options[0].difference == ""
    assert shown.options[1].difference.endswith(" GBP")
    assert quote.upkeep is not None
    assert f"{quote.upkeep.amount:.2f}" in shown.upkeep


def test_without_a_firm_the_rates_are_made_up_and_it_says_so() -> None:
    shown = shown_quote(quote_of(SITE, CATALOGUE, answers=ANSWERS), SITE, CATALOGUE)
    assert shown.by == ""
    assert any("made up" in note for note in shown.notes)
