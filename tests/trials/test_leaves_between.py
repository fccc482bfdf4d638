"""Leaves between a detector and the floor: shutting one only ever takes floor away."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.arrival_house import KITCHEN, arrival_house
from wardwright.model.opening import LeafState, Opening
from wardwright.model.placement import standing
from wardwright.physics.detection.from_site import watch
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.leaves_between import (
    AJAR_SHARE,
    STATES,
    leaf_pieces,
    leaves_on,
    lines_to,
    looked_through,
    possible_floor,
    seen_past,
    states_of,
)

CATALOGUE = load_catalogue()
HOUSE = arrival_house().bare
EYE = standing(HOUSE, KITCHEN)
LEAVES = leaves_on(HOUSE, "ground")


def test_a_shut_leaf_covers_its_doorway_an_ajar_one_all_but_a_gap_and_an_open_one_nothing() -> None:
    door = HOUSE.opening("kitchen-door")
    (shut,) = leaf_pieces(HOUSE, door, "shut")
    (ajar,) = leaf_pieces(HOUSE, door, "ajar")
    assert shut == pytest.approx(np.array([(4.05, 3.55), (4.05, 4.45)]))
    assert ajar == pytest.approx(np.array([(4.05, 3.55), (4.05, 3.55 + AJAR_SHARE * 0.9)]))
    assert leaf_pieces(HOUSE, door, "open") == []
    turned = door.model_copy(update={"hinge": "end"})
    (other,) = leaf_pieces(HOUSE, turned, "ajar")
    assert sorted(other) == pytest.approx(np.array([(4.05, 4.45 - AJAR_SHARE * 0.9), (4.05, 4.45)]))


def test_of_two_leaves_the_one_that_opens_first_is_ajar_and_the_other_shut() -> None:
    door = HOUSE.opening("kitchen-door").model_copy(update={"leaves": 2})
    near, far = leaf_pieces(HOUSE, door, "ajar")
    assert near == pytest.approx(np.array([(4.05, 3.55), (4.05, 3.55 + AJAR_SHARE * 0.45)]))
    assert far == pytest.approx(np.array([(4.05, 4.0), (4.05, 4.45)]))


def test_leaves_are_those_of_doors_and_windows_but_no_gaps() -> None:
    assert [one.id for one in LEAVES] == sorted(one.id for one in HOUSE.openings)
    gap = tuple(one.model_copy(update={"kind": "gap"}) for one in HOUSE.openings)
    assert leaves_on(HOUSE.model_copy(update={"openings": gap}), "ground") == ()


def test_a_body_behind_a_wall_is_not_seen_past_a_shut_door() -> None:
    points = np.array([[4.6, 3.6], [1.0, 3.0]])
    lines = lines_to(HOUSE, "ground", points, eye=(EYE.x_m, EYE.y_m))
    assert seen_past(HOUSE, LEAVES, lines, state=lambda _: "open").tolist() == [True, True]
    assert seen_past(HOUSE, LEAVES, lines, state=lambda _: "shut").tolist() == [False, True]
    assert looked_through(HOUSE, LEAVES, lines, seen=np.array([True, True])) == ["kitchen-door"]


def test_where_walls_leave_no_line_at_all_nothing_is_said_to_be_hidden_by_a_leaf() -> None:
    lines = lines_to(HOUSE, "ground", np.array([[5.0, 1.0]]), eye=(EYE.x_m, EYE.y_m))
    assert not lines.clear.any()
    assert seen_past(HOUSE, LEAVES, lines, state=lambda _: "shut").tolist() == [True]


@given(
    spots=st.lists(st.tuples(st.floats(0.3, 9.9), st.floats(0.3, 5.7)), min_size=1, max_size=12),
    states=st.lists(st.sampled_from(STATES), min_size=5, max_size=5),
    turned=st.integers(0, 4),
)
def test_closing_a_leaf_never_lets_more_be_seen(
    spots: list[tuple[float, float]], states: list[LeafState], turned: int
) -> None:
    lines = lines_to(HOUSE, "ground", np.array(spots), eye=(EYE.x_m, EYE.y_m))
    standing_so = dict(zip([one.id for one in LEAVES], states, strict=True))
    before = seen_past(HOUSE, LEAVES, lines, state=lambda one: standing_so[one.id])
    name = LEAVES[turned].id
    for state in STATES[: STATES.index(standing_so[name]) + 1]:
        closer = standing_so | {name: state}
        after = seen_past(HOUSE, LEAVES, lines, state=lambda one, now=closer: now[one.id])  # type: ignore[misc]
        assert not (after & ~before).any()


def test_states_are_those_told_or_all_where_nobody_said() -> None:
    def door(**facts: object) -> Opening:
        return Opening.model_validate(
            {"id": "d", "name": "d", "kind": "door", "wall": "w", "offset_m": 1.0, "width_m": 0.8, **facts}
        )

    assert states_of(door()) == STATES
    assert states_of(door(habit="open")) == ("open",)
    assert states_of(door(habit="open", habit_night="shut")) == ("shut", "open")
    assert states_of(door(habit="open", basis={"habit": "guessed"})) == STATES


def test_the_possible_floor_is_the_high_side_shape() -> None:
    floors = possible_floor(HOUSE, CATALOGUE, KITCHEN, storeys=("ground",))
    assert floors["ground"].sum() == watch(HOUSE, CATALOGUE, KITCHEN).high.sum()
    assert possible_floor(HOUSE, CATALOGUE, KITCHEN, storeys=()) == {}
