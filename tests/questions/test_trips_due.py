"""Which trips of the household are due, for houses that differ by one thing each."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from common.changed_pairs import (
    CATALOGUE,
    house,
    sofa_moved,
    state,
)
from common.houses import person
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.questions.compared import State
from wardwright.questions.tests_due import tests_due as due


@pytest.fixture(scope="module")
def before() -> State:
    return state(house())


def pairs(before: State, site: Site) -> set[tuple[str, str]]:
    return {(one.about, one.kind) for one in due(before, state(site), CATALOGUE)}


def test_another_entry_time_asks_for_the_entry_alone_at_each_entry_door(before: State) -> None:
    slower = house(programme=Programme(entry_time_s=45.0))
    assert pairs(before, slower) == {("front-door", "entry")}


def test_somebody_who_moved_in_asks_for_their_night_trip_and_the_times_at_the_door(before: State) -> None:
    found = pairs(before, house(people=(person("Lodger", pace="slow", bed="study"),)))
    assert found >= {("lodger", "night trip"), ("front-door", "entry"), ("front-door", "exit")}


@pytest.mark.parametrize("parts", [("full", "night"), ("full",)])
def test_a_sofa_asks_for_night_trips_only_where_its_detector_is_set_at_night(parts: tuple[str, ...]) -> None:
    def with_parts(of: Callable[[], Site]) -> State:
        site = of()
        zones = tuple(one.model_copy(update={"parts": parts}) for one in site.zones)
        people = (person("Father", bed="kitchen"),)
        return state(site.model_copy(update={"zones": zones, "people": people}))

    kinds = {one.kind for one in due(with_parts(house), with_parts(sofa_moved), CATALOGUE)}
    assert ("night trip" in kinds) == ("night" in parts)
