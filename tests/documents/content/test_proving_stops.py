from __future__ import annotations

import pytest

from wardwright.documents.content.proving_stops import ProveRound, ProveTest, proving_stops, walks_in
from wardwright.documents.content.quantities import with_range
from wardwright.questions.proving_plan import proving_plan
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")
ANSWERS = ask(SITE, CATALOGUE)
PLAN = proving_plan(SITE, CATALOGUE)
ROUND = proving_stops(PLAN, SITE, CATALOGUE, answers=ANSWERS)


def by_key(found: ProveRound = ROUND) -> dict[str, ProveTest]:
    return {test.key: test for stop in found.stops for test in stop.tests}


def test_every_test_of_the_plan_is_there_in_walking_order() -> None:
    asked = [f"{test.kind}/{test.about}" for stop in PLAN.round.stops for test in stop.tests]
    assert list(by_key()) == asked
    assert [stop.number for stop in ROUND.stops] == list(range(1, len(PLAN.round.stops) + 1))
    assert ROUND.stops[1].walk == "1 s on foot"
    assert "Begin at Ground hall keypad" in ROUND.begins


@pytest.mark.parametrize("name", ["terrace-better", "bungalow", "lakeside"])
def test_no_two_tests_or_walks_are_known_by_the_same_key(name: str) -> None:
    site = read_sample(name)
    found = proving_stops(proving_plan(site, CATALOGUE), site, CATALOGUE, answers=())
    keys = [test.key for stop in found.stops for test in stop.tests]
    keys += [walk.key for stop in found.stops for test in stop.tests for walk in test.walks]
    assert len(keys) == len(set(keys))


def test_a_walk_says_how_and_what_is_expected_and_where_that_is_not_wanted() -> None:
    view, quiet = by_key()["view/hall-movement"], by_key()["beyond view/hall-movement"]
    assert view.tag.startswith("MD")
    assert "180 s" in view.wait
    across = next(walk for walk in view.walks if walk.how.startswith("Across"))
    assert (across.expects, across.expected) == ("notices", "It notices within 1.7 m.")
    assert "m/s" in across.pace
    doubtful = next(walk for walk in view.walks if walk.expects == "may notice")
    assert not doubtful.is_wanted
    assert "not sure there" in doubtful.expected
    assert {walk.expects for walk in quiet.walks} == {"stays quiet"}


def test_what_the_model_expects_of_radio_sound_and_times_stands_by_the_test() -> None:
    radio = next(one for one in ANSWERS if (one.question, one.subject_id) == (6, "hall-movement"))
    assert radio.estimate is not None
    assert with_range(radio.estimate) in by_key()["radio/hall-movement"].expected
    assert "coming in" in by_key()["entry/front-door"].expected
    assert "leaving" in by_key()["exit/front-door"].expected
    assert by_key()["operation/hall-keypad"].expected == ""


def test_without_answers_nothing_is_expected_of_what_is_no_walk() -> None:
    bare = proving_stops(PLAN, SITE, CATALOGUE, answers=())
    assert by_key(bare)["radio/hall-movement"].expected == ""


def test_a_detector_that_no_walk_is_laid_out_for_is_named() -> None:
    plan = PLAN.model_copy(update={"without_walks": ("hall-movement",)})
    found = proving_stops(plan, SITE, CATALOGUE, answers=())
    assert "Ground hall movement" in found.missing
    assert ROUND.missing == ""


def test_only_tests_of_a_view_are_made_of_walks() -> None:
    for stop in PLAN.round.stops:
        for test in stop.tests:
            assert bool(walks_in(PLAN, test)) == ("view" in test.kind)
