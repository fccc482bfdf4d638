from __future__ import annotations

import pytest

from wardwright.documents.content.quantities import (
    joined,
    number,
    quantity,
    range_words,
    sentence,
    step_of,
    value_words,
)
from wardwright.model.estimate import Estimate


@pytest.mark.parametrize(
    ("value", "low", "high", "unit", "likely", "span"),
    [
        (12.34, 9.06, 15.96, "s", "12.3 s", "9.1 to 16.0 s"),
        (-29.4, -38.2, -21.0, "s", "\u221229 s", "\u221238 to \u221221 s"),
        (0.86, 0.741, 0.93, "-", "86 %", "74 to 93 %"),
        (13.44, 11.6, 14.5, "m2", "13.4 m\u00b2", "11.6 to 14.5 m\u00b2"),
        (0.0, 0.0, 4.0, "deg", "0\u00b0", "0\u00b0 to 4\u00b0"),
        (61.0, 48.0, 74.0, "deg", "61\u00b0", "48\u00b0 to 74\u00b0"),
        (180.0, 120.0, 300.0, "s", "180 s", "120 to 300 s"),
        (3.0, 3.0, 3.0, "m", "3.0 m", ""),
        (-0.04, -0.04, 0.04, "s", "0.0 s", ""),
    ],
)
def test_a_number_is_rounded_to_what_its_range_bears(
    value: float, low: float, high: float, unit: str, likely: str, span: str
) -> None:
    estimate = Estimate(value=value, low=low, high=high, unit=unit)
    assert value_words(estimate) == likely
    assert range_words(estimate) == span


def test_plain_numbers_have_plain_letters() -> None:
    estimate = Estimate(value=-2.0, low=-3.0, high=-1.0, unit="m2")
    assert value_words(estimate, is_plain=True) == "-2.0 m2"
    assert range_words(estimate, is_plain=True).isascii()


def test_a_ratio_above_one_is_no_share() -> None:
    assert quantity(2.5, "-", 0.01) == "2.5"


def test_steps_and_signs() -> None:
    assert step_of(Estimate(value=5.0, low=0.0, high=10.0, unit="m")) == 1.0
    assert number(-0.2, 1.0) == "0"


def test_a_sentence_ends_once() -> None:
    assert sentence("is it shut?") == "Is it shut?"
    assert sentence("  ") == ""


def test_names_are_joined_as_they_are_said() -> None:
    assert [joined(names) for names in ([], ["a"], ["a", "b"], ["a", "b", "c"])] == [
        "",
        "a",
        "a and b",
        "a, b and c",
    ]
