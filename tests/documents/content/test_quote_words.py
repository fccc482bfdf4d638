"""A quote in words: gains without a time, a length or a place."""

from __future__ import annotations

import re
from decimal import Decimal

from wardwright.costing.option import OptionChange, QuoteLine
from wardwright.documents.content.quote_words import change_words, count_words
from wardwright.questions.options_tried import options_tried
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names

CATALOGUE = load_catalogue()
TERRACE = read_sample("terrace")


def test_an_opening_is_told_by_how_it_is_noticed() -> None:
    change = OptionChange(
        what="opening",
        name="Kitchen window",
        subject="kitchen-window",
        is_glass=True,
        before="not",
        after="at once",
    )
    told = change_words(change, TERRACE, CATALOGUE)
    assert told == "Kitchen window, through its glass: noticed as it breaks, where now it is not noticed"


def test_a_device_is_told_with_its_room() -> None:
    change = OptionChange(what="device", name="sounder", subject="bedroom-2")
    assert change_words(change, TERRACE, CATALOGUE) == "a sounder more in Bedroom 2"
    unplaced = OptionChange(what="device", name="transmitter")
    assert change_words(unplaced, TERRACE, CATALOGUE) == "a transmitter more"


def test_nothing_measured_is_told_of_any_sample() -> None:
    for name in sample_names():
        site = read_sample(name)
        for option in options_tried(site, CATALOGUE, ask(site, CATALOGUE)):
            for change in option.changes:
                told = change_words(change, site, CATALOGUE)
                assert not re.search(r"\d+(\.\d+)? ?(s|m|min|seconds|metres)\b", told)
                assert "control unit" not in told.lower()


def test_counts_have_their_units() -> None:
    line = QuoteLine(
        kind="work",
        code="fit",
        what="fit",
        count=Decimal(155),
        unit="min",
        each=Decimal(60),
        amount=Decimal(155),
    )
    assert count_words(line) == "155 min"
    back = line.model_copy(update={"kind": "return visit", "count": Decimal("0.8254"), "unit": ""})
    assert count_words(back) == "83 %"
