from __future__ import annotations

import math

import pytest

from wardwright.questions.between_states import DueTest
from wardwright.questions.proving_plan import proving_plan
from wardwright.questions.proving_sketches import expected_of, place_of, sketches_of_test
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")
ANSWERS = ask(SITE, CATALOGUE, (6, 11))
PLAN = proving_plan(SITE, CATALOGUE)
VIEW = DueTest(kind="view", about="hall-movement", why="")


def test_a_walk_is_drawn_with_its_clock_over_what_the_detector_is_taken_to_see() -> None:
    walk = next(one for one in PLAN.walks if one.device == "hall-movement" and one.within_m is not None)
    found = sketches_of_test([walk], expected_of(VIEW, ANSWERS), place=place_of(PLAN.round, 1))
    (way,) = (one for one in found if one.role == "walk")
    assert way.points == (walk.from_m, walk.to_m)
    assert way.times_s[-1] == pytest.approx(walk.length_m / walk.pace_m_s)
    (notice,) = (one for one in found if one.role == "notice")
    assert math.dist(walk.from_m, notice.points[0]) == pytest.approx(min(walk.within_m or 0.0, walk.length_m))
    assert {"seen", "walk", "notice"} <= {one.role for one in found}
    assert "leak" not in {one.role for one in found}


def test_where_it_is_to_stay_quiet_no_place_of_notice_is_drawn() -> None:
    walk = next(one for one in PLAN.walks if one.expected == "stays quiet")
    found = sketches_of_test([walk], None, place=())
    assert [one.role for one in found] == ["walk"]


def test_a_test_that_is_no_walk_draws_its_place_and_its_answer() -> None:
    radio = DueTest(kind="radio", about="bedroom-1-sounder", why="")
    answer = expected_of(radio, ANSWERS)
    assert answer is not None
    assert answer.question == 6
    found = sketches_of_test([], answer, place=place_of(PLAN.round, 6))
    assert [one.label for one in found if one.role == "goal"] == ["6"]
    assert any(one.role == "radio-path" for one in found)


def test_a_test_that_no_answer_tells_of_has_none() -> None:
    assert expected_of(DueTest(kind="message", about="hall-control-unit", why=""), ANSWERS) is None
    assert place_of(PLAN.round, 99) == ()
