"""Where somebody goes from bed."""

from __future__ import annotations

from common.houses import two_rooms_and_hall
from wardwright.trials.home_goals import TOILETS, goals_from, middle_of, rooms_by

HOUSE = two_rooms_and_hall().bare


def test_the_middle_of_a_room() -> None:
    assert middle_of(HOUSE.space("kitchen")) == ("ground", 2.0, 3.0)


def test_goals_are_the_nearest_rooms_that_there_are() -> None:
    study = HOUSE.space("study")
    assert goals_from(HOUSE, study) == (middle_of(HOUSE.space("kitchen")),)
    assert rooms_by(HOUSE, study, TOILETS) == ()


def test_the_nearer_of_two_rooms_comes_first() -> None:
    spaces = tuple(one.model_copy(update={"use": "bathroom"}) for one in HOUSE.spaces)
    house = HOUSE.model_copy(update={"spaces": spaces})
    study = next(one for one in spaces if one.id == "study")
    assert [one.id for one in rooms_by(house, study, TOILETS)] == ["study", "hall", "kitchen"]
