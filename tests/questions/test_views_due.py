"""Which walks past detectors are due, for houses that differ by one thing each."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from common.changed_pairs import (
    CATALOGUE,
    dog_arrived,
    house,
    sofa_moved,
    state,
    wall_added,
)
from common.houses import pet
from wardwright.model.site import Site
from wardwright.questions.compared import State
from wardwright.questions.tests_due import tests_due as due


@pytest.fixture(scope="module")
def before() -> State:
    return state(house())


def pairs(before: State, site: Site) -> set[tuple[str, str]]:
    return {(one.about, one.kind) for one in due(before, state(site), CATALOGUE)}


def test_a_sofa_that_moved_asks_for_the_walk_of_its_room_alone(before: State) -> None:
    found = pairs(before, sofa_moved())
    assert ("study-movement", "view") in found
    assert {about for about, _ in found} == {"study-movement"}
    assert {kind for _, kind in found} <= {"view", "beyond view"}


def test_a_wall_that_was_added_asks_for_the_walk_of_the_room_that_it_stands_in(before: State) -> None:
    found = pairs(before, wall_added())
    assert ("kitchen-movement", "view") in found
    assert not any(about == "study-movement" and "view" in kind for about, kind in found)


def test_a_dog_that_came_asks_for_a_test_with_the_dog_alone(before: State) -> None:
    assert pairs(before, dog_arrived()) == {("big-dog", "pet")}


@pytest.mark.parametrize(("room", "is_due"), [("study", True), ("kitchen", False)])
def test_a_sofa_asks_for_a_test_with_the_dog_only_where_the_dog_may_be(room: str, is_due: bool) -> None:
    def with_dog(of: Callable[[], Site]) -> State:
        return state(of().model_copy(update={"pets": (pet("big-dog", spaces=(room,)),)}))

    kinds = {one.kind for one in due(with_dog(house), with_dog(sofa_moved), CATALOGUE)}
    assert ("pet" in kinds) == is_due
