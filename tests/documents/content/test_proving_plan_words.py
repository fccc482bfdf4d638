"""The walk-test plan in words."""

from __future__ import annotations

from typing import get_args

from wardwright.documents.content.proving_plan_words import (
    COLUMNS,
    EXPECTED,
    MANNERS,
    expected_words,
    key_of_walk,
    plan_names,
    proving_plan_table,
    walk_named,
    walk_words,
    walks_of,
)
from wardwright.questions.between_states import DueTest
from wardwright.questions.proving_plan import proving_plan
from wardwright.questions.walk_past import Expected, Manner, WalkTest
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")
PLAN = proving_plan(SITE, CATALOGUE)
WALK = WalkTest(
    device="hall-movement", manner="beyond", subject="kitchen", pace="usual", pace_m_s=1.3, storey="ground",
    from_m=(0.0, 1.0), to_m=(1.4, 1.0), length_m=1.4, expected="stays quiet", is_wanted=True,
    within_m=None, wait_s=180.0,
)  # fmt: skip


def test_every_manner_and_every_outcome_has_its_words() -> None:
    assert set(MANNERS) == set(get_args(Manner))
    assert set(EXPECTED) == set(get_args(Expected))


def test_a_walk_says_how_from_where_to_where_and_what_is_expected() -> None:
    assert walk_words(WALK, plan_names(SITE, CATALOGUE)) == (
        "beyond the open door, in Dining kitchen, from x 0.0, y 1.0 to x 1.4, y 1.0 on the plan, usual (1.3 m/s): "
        "it stays quiet"
    )


def test_what_is_not_wanted_says_what_to_do() -> None:
    leak = WALK.model_copy(update={"expected": "notices", "is_wanted": False, "within_m": 1.4})
    assert (
        expected_words(leak)
        == "it notices within 1.4 m; not wanted there: turn it, screen it, or have it agreed"
    )


def test_the_table_has_a_row_a_walk_and_a_row_for_every_other_test() -> None:
    table = proving_plan_table(PLAN, SITE, CATALOGUE)
    others = [t for stop in PLAN.round.stops for t in stop.tests if "view" not in t.kind]
    assert len(table.rows) == len(PLAN.walks) + len(others)
    assert all(len(row) == len(COLUMNS) for row in table.rows)


def test_walks_are_parted_by_what_they_prove() -> None:
    both = [walks_of(PLAN, "hall-movement", is_view=one) for one in (True, False)]
    assert both[0]
    assert both[1]
    assert sum(map(len, both)) == sum(one.device == "hall-movement" for one in PLAN.walks)


def test_a_walk_is_named_by_its_key_as_it_is_told() -> None:
    names = plan_names(SITE, CATALOGUE)
    walk = next(one for one in PLAN.walks if one.subject)
    key = key_of_walk(DueTest(kind="view", about=walk.device, why=""), walk)
    told = walk_named(key, names)
    assert told == f"{MANNERS[walk.manner].format(of=names.of(walk.subject))}, {walk.pace}"
    for other in (f"view/{walk.device}", "radio/x", "view/x/up the wall//slow", "view/x/toward", ""):
        assert walk_named(other, names) == ""
