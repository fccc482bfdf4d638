"""FIR103: 300 mm on the plan, for ceiling alarms."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room
from common.rule_houses.fire import hung
from wardwright.rules.fire.alarm_too_near_a_wall import alarm_too_near_a_wall as rule
from wardwright.rules.registry import findings_of


@pytest.mark.parametrize("sheet", ["smoke", "heat", "co"])
@pytest.mark.parametrize(("x", "is_near"), [(0.29, True), (0.3, False)])
def test_the_distance_is_to_the_walls_face(sheet: str, x: float, is_near: bool) -> None:
    found = findings_of(rule, one_room(devices=(hung("alarm", sheet, x, 2.0),)), CATALOGUE)
    assert [one.estimate.value for one in found if one.estimate] == ([pytest.approx(x)] if is_near else [])
    assert all(one.limit == 0.3 for one in found)


def test_an_alarm_on_a_wall_is_not_asked_about() -> None:
    assert findings_of(rule, one_room(devices=(on_wall("a", "smoke", "south", 2.0),)), CATALOGUE) == ()
