"""Two states of a house side by side."""

from __future__ import annotations

from functools import cache

from common.changed_pairs import CATALOGUE as SMALL
from common.changed_pairs import house, sofa_moved, state
from wardwright.documents.content.comparison import comparison
from wardwright.documents.content.side_by_side import SideBySide, races, side_by_side
from wardwright.model.catalogue import Catalogue
from wardwright.questions.changes_since import changes_since
from wardwright.questions.compared import State
from wardwright.questions.table import ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def page(before: State, after: State, catalogue: Catalogue) -> SideBySide:
    found = changes_since(before, after, catalogue)
    told = comparison(before, after, catalogue, found=found)
    return side_by_side(before, after, catalogue, found=found, told=told, names=("a", "b"))


@cache
def sample(name: str) -> State:
    site = read_sample(name)
    return State(site, ask(site, CATALOGUE), check(site, CATALOGUE))


@cache
def terraces() -> SideBySide:
    return page(sample("terrace"), sample("terrace-better"), CATALOGUE)


def test_the_weak_design_fails_where_the_better_one_does_not() -> None:
    tally = {word: (old, new) for word, old, new in terraces().tally}
    assert tally["not met"][0] > 2 * tally["not met"][1]
    assert tally["met"][1] > tally["met"][0]
    assert terraces().must_mend == (3, 0)


def test_the_race_that_differs_most_is_drawn_in_both_with_keys_of_their_own() -> None:
    drawn = terraces().races
    assert [one.key for one in drawn] == ["race-before", "race-after"]
    assert all("Front door" in one.title for one in drawn)
    assert "first design" in drawn[0].title
    assert "better design" in drawn[1].title


def test_the_round_of_tests_is_drawn_on_each_storey_that_it_leads_over() -> None:
    assert [one.key for one in terraces().rounds] == ["round-ground", "round-first"]
    assert all("walk" in one.styles_used for one in terraces().rounds)


def test_without_a_race_that_differs_none_is_drawn() -> None:
    before, after = state(house()), state(sofa_moved())
    assert races(before, after, SMALL, answers=()) == ()
    assert page(before, before, SMALL).rounds == ()
