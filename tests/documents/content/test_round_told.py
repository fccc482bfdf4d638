"""A round of tests in words."""

from __future__ import annotations

from typing import get_args

from common.changed_pairs import CATALOGUE, house
from common.houses import pet
from wardwright.documents.content.round_told import NO_TESTS, NO_WAY, TESTS, told_round
from wardwright.model.site import Site
from wardwright.questions.between_states import DueTest, TestKind
from wardwright.questions.walking_round import walking_round


def told(site: Site, *tests: DueTest):  # type: ignore[no-untyped-def]  # noqa: ANN201 - as told_round
    return told_round(walking_round(site, CATALOGUE, tests), site, CATALOGUE)


def test_every_kind_of_test_has_words() -> None:
    assert set(TESTS) == set(get_args(TestKind))


def test_no_test_is_said_so() -> None:
    found = told(house())
    assert (found.heading, found.stops) == (NO_TESTS, ())


def test_a_test_is_told_by_its_name_with_its_reason_and_its_minutes() -> None:
    found = told(house(), DueTest(kind="view", about="study-movement", why="it is new"))
    (stop,) = found.stops
    assert (stop.number, stop.where) == (1, "ground floor")
    assert stop.tests[0].what.startswith("study movement: walk its edge")
    assert stop.tests[0].why == "it is new"
    assert found.heading.startswith("1 test at 1 place: ")
    assert "min" in found.heading
    assert found.begins_at == "keypad"
    assert found.order == "the shortest order there is"


def test_where_no_way_leads_it_says_so() -> None:
    found = told(house(pets=(pet("cat"),)), DueTest(kind="pet", about="cat", why="it is new"))
    assert found.stops[0].walk == NO_WAY
