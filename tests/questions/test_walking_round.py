"""Tests put in walking order: what lies together is tested together, and no order is shorter."""

from __future__ import annotations

from itertools import permutations

import pytest

from common.changed_pairs import CATALOGUE, house
from common.houses import pet
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Paces, fastest_route, premises_network
from wardwright.questions.between_states import DueTest
from wardwright.questions.walking_round import walking_round
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.paces import walking_pace
from wardwright.trials.ways_on_foot import spot_of


def due(about: str, kind: str = "radio") -> DueTest:
    return DueTest.model_validate({"kind": kind, "about": about, "why": "it is new"})


def test_nothing_to_test_takes_no_time() -> None:
    found = walking_round(house(), CATALOGUE, ())
    assert (found.stops, found.minutes.value, found.walking.value) == ((), 0.0, 0.0)


def test_what_is_tested_at_one_place_is_one_stop() -> None:
    found = walking_round(
        house(), CATALOGUE, (due("unit"), due("study-movement", "view"), due("study-movement"))
    )
    assert sorted(len(stop.tests) for stop in found.stops) == [1, 2]


def test_the_round_over_two_storeys_is_the_shortest() -> None:
    site, catalogue = read_sample("terrace-better"), load_catalogue([])
    devices = [one for one in site.devices if one.id != "hall-keypad"][:7]
    found = walking_round(site, catalogue, [due(one.id) for one in devices])
    assert found.begins_at == "hall-keypad"
    assert found.is_shortest
    paces = Paces(
        walking_pace(catalogue, "usual").value,
        catalogue.figure("stairs-share").value,
        catalogue.figure("pass-door").value,
    )
    spots = {one.id: spot_of(site, one) for one in (*devices, site.device("hall-keypad"))}

    def between(a: str, b: str) -> float:
        route = fastest_route(premises_network(site), spots[a], spots[b], paces=paces)
        assert route is not None
        return float(route.clock[-1])

    legs = {(a, b): between(a, b) for a in spots for b in spots if a != b}
    least = min(
        sum(legs[leg] for leg in zip(("hall-keypad", *order), (*order, "hall-keypad"), strict=True))
        for order in permutations(one.id for one in devices)
    )
    walked = sum(stop.walk_s or 0.0 for stop in found.stops) + found.back_s
    assert walked == pytest.approx(least, abs=0.3)  # the walk one way and back differs by rounding of corners
    assert found.walking.value == pytest.approx(walked / 60.0)


def test_minutes_are_those_of_the_tests_and_of_the_walk() -> None:
    found = walking_round(house(), CATALOGUE, (due("study-movement", "view"), due("kitchen-movement")))
    tests = CATALOGUE.figure("test-view").value + CATALOGUE.figure("test-radio").value
    assert found.minutes.value == pytest.approx(tests + found.walking.value)
    assert found.minutes.low < found.minutes.value < found.minutes.high
    assert {one.name for one in found.minutes.drivers} >= {CATALOGUE.figure("test-view").name}


def test_a_detector_that_sleeps_is_left_alone_before_each_walk() -> None:
    site, catalogue = read_sample("terrace"), load_catalogue([])
    movement = catalogue.sheet(site.device("hall-movement").sheet).movement
    assert movement is not None
    assert movement.sleep_s > 0
    found = walking_round(
        site, catalogue, (due("hall-movement", "view"), due("hall-movement", "beyond view"))
    )
    tests = catalogue.figure("test-view").value + catalogue.figure("test-beyond-view").value
    assert found.minutes.value == pytest.approx(tests + 2 * movement.sleep_s / 60.0 + found.walking.value)


def test_what_nobody_can_walk_to_comes_last_and_is_not_left_out() -> None:
    site = house(pets=(pet("cat"),))  # it may be everywhere, so nobody knows where to look for it
    found = walking_round(site, CATALOGUE, (due("cat", "pet"), due("study-movement")))
    assert [stop.walk_s is None for stop in found.stops] == [False, True]
    assert found.stops[-1].tests[0].about == "cat"


def test_without_a_keypad_it_begins_at_the_control_unit_and_without_that_at_a_door() -> None:
    def without(*kinds: str) -> Site:
        site = house()
        kept = (one for one in site.devices if CATALOGUE.sheet(one.sheet).kind not in kinds)
        return site.model_copy(update={"devices": tuple(kept), "zones": ()})

    tests = (due("study-movement"),)
    assert walking_round(without("keypad"), CATALOGUE, tests).begins_at == "unit"
    assert walking_round(without("keypad", "control-unit"), CATALOGUE, tests).begins_at == "front-door"


def test_the_walk_is_drawn_with_a_running_clock_and_each_stop_numbered() -> None:
    site, catalogue = read_sample("terrace-better"), load_catalogue([])
    found = walking_round(site, catalogue, [due(one.id) for one in site.devices])
    walks = [one for one in found.sketches if one.role == "walk"]
    clock = [time for one in walks for time in one.times_s]
    assert clock == sorted(clock)
    assert {one.storey for one in walks} == {"ground", "first"}
    numbers = [one.label for one in found.sketches if one.role == "goal"]
    assert numbers == [str(i + 1) for i in range(len(found.stops))]
