from typing import Any

import numpy as np
import pytest

from wardwright.model.fabric import Wall
from wardwright.model.leaves import leaf_panels, state_at_night, state_of
from wardwright.model.opening import Opening

WALL = Wall(id="wall", storey="ground", line_m=((0.0, 0.0), (4.0, 0.0)), thickness_m=0.2)
TOLD = {"basis": (("habit", "told"),)}


def door(**facts: Any) -> Opening:
    usual: dict[str, Any] = {"id": "door", "name": "door", "kind": "door", "wall": "wall", "offset_m": 2.0}
    return Opening(**(usual | {"width_m": 1.0, "hinge": "start", "swing": "left"} | facts))


def panels(opening: Opening, leaves: Any = "told", medium: Any = "heat") -> Any:
    return leaf_panels(WALL, opening, floor=0.0, whole=(0.0, 2.4), medium=medium, leaves=leaves).panels


def test_a_shut_door_closes_the_wall_from_floor_to_ceiling() -> None:
    assert panels(door()).tolist() == [[1.5, 0.0, 2.5, 0.0, 0.0, 2.4]]


def test_an_open_leaf_stands_at_a_right_angle_on_its_swing_side() -> None:
    (leaf,) = panels(door(habit="open", **TOLD))
    # By hand: hinged at x = 1.5 on the left face, y = 0.1, and 1 m long.
    assert leaf == pytest.approx([1.5, 0.1, 1.5, 1.1, 0.0, 2.0])
    (leaf,) = panels(door(habit="open", hinge="end", swing="right", **TOLD))
    assert leaf == pytest.approx([2.5, -0.1, 2.5, -1.1, 0.0, 2.0])


def test_a_leaf_ajar_leaves_a_gap_of_some_0_15_m() -> None:
    (leaf,) = panels(door(habit="ajar", **TOLD))
    gap = np.hypot(2.5 - leaf[2], leaf[3])
    assert 0.12 < gap < 0.2


def test_a_habit_that_nobody_told_is_not_relied_on() -> None:
    assert state_of(door(habit="open", basis=(("habit", "guessed"),)), "told") == "shut"
    assert state_of(door(habit="open", **TOLD), "told") == "open"
    assert state_of(door(habit="open", **TOLD), "shut") == "shut"


def test_away_takes_doors_away_and_leaves_fixed_glass() -> None:
    pane = door(kind="window", sill_m=0.9, hinge="fixed", glazing="double")
    assert len(panels(door(), leaves="away")) == 0
    assert len(panels(pane, leaves="away")) == 1
    assert len(panels(pane.model_copy(update={"hinge": "start", "habit_night": "open"}), leaves="away")) == 0


def test_glass_stops_heat_and_lets_light_through_but_for_a_curtain() -> None:
    pane = door(kind="window", sill_m=0.9, glazing="double")
    assert len(panels(pane)) == 1
    assert len(panels(pane, medium="light")) == 0
    curtained = pane.model_copy(update={"covering": "curtain"})
    assert len(panels(curtained, medium="light")) == 1
    assert len(panels(curtained, medium="light", leaves="away")) == 0


def test_the_second_of_two_leaves_stays_shut() -> None:
    rows = panels(door(habit="open", leaves=2, width_m=1.6, **TOLD))
    assert rows[0] == pytest.approx([1.2, 0.1, 1.2, 0.9, 0.0, 2.0])
    assert rows[1] == pytest.approx([2.0, 0.0, 2.8, 0.0, 0.0, 2.0])


def test_a_gap_has_no_leaf_and_a_slid_leaf_is_gone() -> None:
    assert len(panels(door(kind="gap"))) == 0
    assert len(panels(door(habit="open", hinge="sliding", **TOLD))) == 0
    (ajar,) = panels(door(habit="ajar", hinge="sliding", **TOLD))
    assert ajar == pytest.approx([1.5, 0.0, 2.35, 0.0, 0.0, 2.0])


def test_a_habit_of_the_night_that_nobody_told_is_shut() -> None:
    assert state_at_night(door(habit_night="ajar", basis=(("habit_night", "guessed"),))) == "shut"
    assert state_at_night(door(habit_night="ajar", basis=(("habit_night", "told"),))) == "ajar"
