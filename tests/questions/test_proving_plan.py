"""The walk-test plan."""

from __future__ import annotations

import pytest

from common.houses import one_room
from wardwright.errors import NotComputable
from wardwright.questions.compared import State
from wardwright.questions.proving_plan import ProvingPlan, proving_plan
from wardwright.questions.table import ask
from wardwright.questions.tests_due import tests_due as due
from wardwright.questions.walking_round import walking_round
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")
PLAN = proving_plan(SITE, CATALOGUE)


def test_each_device_is_tested_and_each_test_stands_once() -> None:
    tests = [(test.kind, test.about) for stop in PLAN.round.stops for test in stop.tests]
    assert len(tests) == len(set(tests))
    assert {device.id for device in SITE.devices} <= {about for _, about in tests}
    kinds = {kind for kind, _ in tests}
    assert {
        "view",
        "beyond view",
        "opening",
        "operation",
        "radio",
        "sound",
        "entry",
        "exit",
        "night trip",
    } <= kinds


def test_each_movement_detector_has_its_walks_in_the_order_of_the_round() -> None:
    order = [test.about for stop in PLAN.round.stops for test in stop.tests if test.kind == "view"]
    assert list(dict.fromkeys(walk.device for walk in PLAN.walks)) == order
    assert PLAN.without_walks == ()


def test_the_answers_that_are_not_asked_and_the_findings_say_of_no_more_tests() -> None:
    bare = SITE.model_copy(update={"devices": (), "zones": ()})
    before, after = (State(one, ask(one, CATALOGUE), check(one, CATALOGUE)) for one in (bare, SITE))
    assert PLAN.round == walking_round(SITE, CATALOGUE, due(before, after, CATALOGUE))


def test_it_travels_as_json() -> None:
    assert ProvingPlan.model_validate_json(PLAN.model_dump_json()) == PLAN


def test_a_house_without_devices_has_nothing_to_test() -> None:
    with pytest.raises(NotComputable, match="there is nothing to test"):
        proving_plan(one_room(), CATALOGUE)
