"""What is needed, against what is programmed and what the place allows."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.arrival_house import QUICK, SLOW, USUAL
from wardwright.model.place import Place
from wardwright.questions.times_needed import SPARE, Needed, Which, needed
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.trips import Legs

CATALOGUE = load_catalogue()
NEAR = Legs(0.84, 2.0, 0.0, 0, at_keypad=True)
FAR = Legs(0.84, 16.0, 0.0, 1, at_keypad=True)


def entry(legs: Legs = NEAR, programmed_s: float = 30.0, which: Which = "entry", **place: object) -> Needed:
    return needed(
        CATALOGUE, legs, (QUICK, SLOW, USUAL), which=which, programmed_s=programmed_s,
        place=Place.model_validate(place),
    )  # fmt: skip


def test_the_slowest_decides_and_the_spare_is_on_top() -> None:
    one = entry()
    taken = (0.84 + 2.0) / 0.64 + 14.0
    assert one.slowest == SLOW
    assert one.estimate.value == pytest.approx(1.3 * taken)
    assert SPARE == 0.3
    assert {person.id: estimate.value for person, estimate in one.each}["grandmother"] == pytest.approx(taken)
    assert one.left.value == pytest.approx(30.0 - taken)
    assert one.estimate.low < one.estimate.value < one.estimate.high
    assert one.estimate.drivers[0].name == "entering the code"


def test_verdicts_by_how_much_of_the_time_is_needed() -> None:
    one = entry()
    value, late = one.estimate.value, one.estimate.high / 1.3
    assert late > value  # here the draws ask for more than the spare
    assert entry(programmed_s=value - 0.1).verdict == "bad"
    assert entry(programmed_s=(value + late) / 2).verdict == "thin"
    assert entry(programmed_s=late + 0.1).verdict == "good"
    assert entry(programmed_s=late + 0.1).chance == pytest.approx(0.95, abs=0.01)


def test_the_advised_time_is_the_shortest_step_of_5_s_that_is_good() -> None:
    one = entry()
    assert one.advised_s % 5 == 0
    assert entry(programmed_s=one.advised_s).verdict == "good"
    assert entry(programmed_s=one.advised_s - 5.0).verdict != "good"


def test_the_limit_of_the_european_pack_is_45_s() -> None:
    far = entry(FAR, 60.0)
    assert far.estimate.value > 45.0
    assert far.beyond is not None
    assert (far.beyond.value, far.advised_s, far.verdict) == (45.0, 45.0, "bad")
    assert far.broken is not None  # 60 s is programmed
    near = entry(programmed_s=60.0)
    assert near.beyond is None
    assert near.broken is not None
    assert near.verdict == "thin"


def test_the_american_pack_has_least_times_too() -> None:
    short = entry(programmed_s=25.0, rule_pack="us")
    assert short.broken is not None
    assert (short.broken.value, short.broken.id) == (30.0, "entry-time-least")
    far = entry(FAR, 60.0, rule_pack="us")
    assert (far.beyond, far.broken) == (None, None)
    leaving = entry(programmed_s=30.0, which="exit", rule_pack="us")
    assert leaving.advised_s == 45.0
    assert leaving.broken is not None


def test_the_european_pack_has_no_limit_of_the_exit_time() -> None:
    assert entry(programmed_s=200.0, which="exit").broken is None


@given(flat=st.floats(0.0, 20.0), programmed=st.floats(5.0, 45.0))
def test_somebody_slower_in_the_house_never_shortens_the_need(flat: float, programmed: float) -> None:
    legs = Legs(0.84, flat, 0.0, 0, at_keypad=True)

    def need(*people: object) -> Needed:
        return needed(
            CATALOGUE, legs, people, which="entry", programmed_s=programmed, place=Place()  # type: ignore[arg-type]
        )  # fmt: skip

    alone, both = need(USUAL), need(USUAL, SLOW)
    assert both.estimate.value >= alone.estimate.value
    assert both.advised_s >= alone.advised_s
    assert math.isfinite(both.advised_s)
