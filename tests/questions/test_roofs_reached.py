"""Roofs and balconies that are reached."""

from __future__ import annotations

import pytest

from common.climb_house import box, house
from common.houses import CATALOGUE, one_room
from wardwright.questions.roofs_reached import NO_FAULT, roofs_reached


def test_where_there_is_none() -> None:
    assert roofs_reached(one_room().bare, CATALOGUE, question=14) is None
    assert roofs_reached(house(box("bin", 6.0, 2.0, 1.0, kind="bin")).bare, CATALOGUE, question=14) is None


def test_the_easiest_decides_and_each_is_told() -> None:
    low, high = box("low", 6.0, 2.0, 2.3), box("high", 9.0, 2.0, 2.6)
    answer = roofs_reached(house(low, high).bare, CATALOGUE, question=14)
    assert answer is not None
    assert (answer.question, answer.subject_id, answer.verdict) == (14, "roofs", "good")
    assert answer.estimate is not None
    assert answer.estimate.value == pytest.approx(-0.1)
    assert [part.name for part in answer.parts] == ["onto high", "onto low"]
    assert answer.notes == (
        "reached from the ground: low (2.3 m)", "reached by somebody nimble or tall: high (2.6 m)", NO_FAULT,
    )  # fmt: skip


def test_one_that_nobody_reaches() -> None:
    answer = roofs_reached(house(box("roof", 6.0, 2.0, 5.0)).bare, CATALOGUE, question=14)
    assert answer is not None
    assert answer.notes[0] == "none is reached from the ground"
