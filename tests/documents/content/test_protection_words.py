from __future__ import annotations

from typing import get_args

import pytest

from wardwright.documents.content.protection_words import (
    AGREED,
    LIMITS,
    LOCKS_WHY,
    NOTICED,
    THROUGH_GLASS,
    gain_words,
    outcome_words,
)
from wardwright.model.estimate import Estimate
from wardwright.questions.protection import Noticed


def of(value: float, low: float) -> Estimate:
    return Estimate(value=value, low=low, high=value + 10.0, unit="s")


def test_every_way_of_being_noticed_has_its_words() -> None:
    assert set(NOTICED) == set(THROUGH_GLASS) == set(get_args(Noticed))


@pytest.mark.parametrize(
    ("value", "words"),
    [(5.0, "a little longer"), (20.0, "clearly longer"), (90.0, "much longer")],
)
def test_a_gain_is_told_in_words(value: float, words: str) -> None:
    assert words in gain_words(of(value, 0.0))
    assert "holds longer" in gain_words(None)


def test_an_outcome_is_promised_only_over_the_whole_range() -> None:
    assert outcome_words(of(9.0, 1.0)) == "the alarm would then be in time"
    assert "if nothing goes badly" in outcome_words(of(9.0, -1.0))
    assert "not surely" in outcome_words(of(-9.0, -12.0))
    assert "not surely" in outcome_words(None)


def test_no_word_has_a_number() -> None:
    texts = (
        *NOTICED.values(),
        *THROUGH_GLASS.values(),
        *LIMITS,
        *AGREED,
        LOCKS_WHY,
        gain_words(of(90.0, 0.0)),
    )
    assert not any(letter.isdigit() for text in texts for letter in text)
