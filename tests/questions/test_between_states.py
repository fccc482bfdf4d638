"""Two states side by side."""

from __future__ import annotations

import pytest

from common.changed_pairs import detector_moved, house
from wardwright.model.estimate import Estimate
from wardwright.model.fixture import Fixture
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, PartAnswer, unanswered
from wardwright.questions.between_states import apart, became, both_states, other_parts, value_of
from wardwright.questions.compared import State


def bare(site: Site) -> State:
    return State(site, (), ())


def changed(**facts: object) -> Site:
    site = house()
    devices = tuple(
        one.model_copy(update=facts) if one.id == "study-movement" else one for one in site.devices
    )
    return site.model_copy(update={"devices": devices})


@pytest.mark.parametrize(
    ("after", "says"),
    [
        (detector_moved(), "it was moved or turned"),
        (changed(heading_deg=30.0), "it was moved or turned"),  # before, it looked straight off its wall
        (changed(sheet="round"), "it was changed"),
        (changed(name="by the desk", is_existing=True), ""),
        (house(), ""),
        (
            house(fixtures=(Fixture(id="box", name="box", storey="ground", centre_m=(1, 1), size_m=(1, 1)),)),
            "",
        ),
    ],
)
def test_what_became_of_a_device(after: Site, says: str) -> None:
    assert became(both_states(bare(house()), bare(after)), "study-movement") == says


def test_a_device_that_was_not_there_is_new() -> None:
    without = house(devices=house().devices[:3], zones=())
    assert became(both_states(bare(without), bare(house())), "study-movement") == "it is new"


@pytest.mark.parametrize(
    ("was", "now", "least", "is_apart"),
    [
        (1.0, 1.4, 0.5, False),
        (1.0, 1.6, 0.5, True),
        (None, None, 0.0, False),
        (None, 0.0, 9.0, True),
        (1e6, 1e6 + 1e-3, 0.0, False),  # they went through other sums
    ],
)
def test_numbers_apart(was: float | None, now: float | None, least: float, is_apart: bool) -> None:
    assert apart(was, now, least) == is_apart
    assert apart(now, was, least) == is_apart


def answer(**parts: float) -> Answer:
    plain = unanswered(11, "blind", subject="hall", subject_id="hall", reason="")
    return plain.model_copy(
        update={
            "parts": tuple(
                PartAnswer(name=name, estimate=Estimate(value=value, low=value, high=value, unit="m2"))
                for name, value in parts.items()
            )
        }
    )


def test_parts_are_held_against_each_other_by_how_their_names_begin() -> None:
    assert other_parts(answer(seen=1.0), answer(seen=2.0), beginning=("see",), least=0.5)
    assert not other_parts(answer(seen=1.0), answer(seen=2.0), beginning=("blind",), least=0.5)
    assert other_parts(answer(), answer(seen=2.0), beginning=("see",), least=5.0)


def test_an_answer_without_a_number_has_no_value() -> None:
    assert value_of(None) is None
    assert value_of(answer()) is None
