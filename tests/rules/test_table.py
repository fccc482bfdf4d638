"""Looking rules up, and running them all."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, one_room
from wardwright.errors import InputError
from wardwright.rules.table import RULES, check, check_in_hand, rule, that_wait
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


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


@pytest.mark.parametrize("has_moved", [False, True])
def test_in_hand_the_rules_that_do_not_wait_find_the_same(has_moved: bool) -> None:
    site, catalogue = read_sample("terrace"), load_catalogue()
    waiting = that_wait(has_house_moved=has_moved)
    assert waiting < {one.code for one in RULES}
    assert check_in_hand(site, catalogue, has_house_moved=has_moved) == tuple(
        one for one in check(site, catalogue) if one.code not in waiting
    )


def test_more_waits_for_a_wall_than_for_a_device() -> None:
    assert that_wait(has_house_moved=False) < that_wait(has_house_moved=True)
