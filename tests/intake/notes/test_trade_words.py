from __future__ import annotations

from wardwright.intake.notes.reading import LINES
from wardwright.intake.notes.trade_words import TRADE_WORDS


def test_each_leads_to_a_line_that_there_is_and_hides_none() -> None:
    assert set(TRADE_WORDS.values()) <= set(LINES)
    assert not set(TRADE_WORDS) & set(LINES)
    assert all(word == word.casefold() for word in TRADE_WORDS)
