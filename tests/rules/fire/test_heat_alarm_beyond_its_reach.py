"""FIR106: 5.3 m to every corner."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, two_rooms_and_hall
from common.rule_houses.fire import hung
from common.rule_houses.glass import long_room
from wardwright.rules.fire.heat_alarm_beyond_its_reach import heat_alarm_beyond_its_reach as rule
from wardwright.rules.registry import findings_of


def test_the_farthest_corner_is_worked_by_hand() -> None:
    """From (0.5, 0.5) to (4, 6)."""
    (found,) = findings_of(rule, two_rooms_and_hall(devices=(hung("heat", "heat", 0.5, 0.5),)), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(math.hypot(3.5, 5.5))
    assert (found.limit, found.severity) == (5.3, "check with the standard")


def test_a_room_too_long_for_one_needs_a_second() -> None:
    """10 m by 4 m: from its middle the corners are 5.39 m away."""
    (found,) = findings_of(rule, long_room(devices=(hung("heat", "heat", 5.0, 2.0),)), CATALOGUE)
    assert found.mends == ()
    assert "Add a second heat alarm" in found.cure
    two = long_room(devices=(hung("a", "heat", 2.5, 2.0), hung("b", "heat", 7.5, 2.0)))
    assert findings_of(rule, two, CATALOGUE) == ()
