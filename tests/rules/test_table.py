"""Looking rules up, and running them all."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, one_room
from wardwright.errors import InputError
from wardwright.rules.table import RULES, check, rule


@pytest.mark.parametrize("word", ["MOV103", "mov103", " movement-detector-facing-glass "])
def test_a_rule_is_found_by_code_or_name(word: str) -> None:
    assert rule(word).code == "MOV103"


@pytest.mark.parametrize(
    ("word", "said"),
    [
        ("MOV130", "Did you mean MOV1"),
        ("movement-detector-facing-glas", "Did you mean MOV103, movement-detector-facing-glass"),
        ("xyz", "'wardwright rule' lists them"),
    ],
)
def test_a_wrong_word_gets_the_nearest_rule(word: str, said: str) -> None:
    with pytest.raises(InputError, match=f"there is no rule '{word}'. {said}"):
        rule(word)


def test_on_a_bare_house_no_rule_passes() -> None:
    found = check(one_room(), CATALOGUE)
    assert [one.code for one in found] == [one.code for one in RULES]
    assert {one.severity for one in found} == {"not run"}
    assert all(one.cure.startswith(("Add ", "Tell ", "Say ", "Ask ")) for one in found)
