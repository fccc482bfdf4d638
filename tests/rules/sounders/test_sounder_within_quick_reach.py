"""SND101: beside the unit, on the way in, or out of quick reach."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, two_rooms_and_hall
from common.rule_houses.control import UNIT_IN_STUDY
from common.rule_houses.keypads import KEYPAD
from common.rule_houses.sounders import BESIDE, HIGH, IN_HALL, IN_KITCHEN
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of
from wardwright.rules.sounders.sounder_within_quick_reach import sounder_within_quick_reach as rule


def findings(*devices: Any) -> tuple[Finding, ...]:
    return findings_of(rule, two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY, *devices)), CATALOGUE)


def test_beside_the_unit_it_is_found_whatever_else_there_is() -> None:
    (found,) = findings(BESIDE, IN_KITCHEN)
    assert found.message == "beside: it hangs beside the control unit"
    assert found.estimate is not None
    assert (found.estimate.value, found.limit) == (pytest.approx(0.8), 2.0)
    assert found.mends[0].action == "move-device"


def test_on_the_way_in_it_is_found_unless_another_is_elsewhere() -> None:
    in_hall = on_wall("in-hall", "sounder", "study-wall", 5.5)
    (found,) = findings(in_hall)
    assert found.message == "in hall: it hangs on the way in, in reach of a hand"
    assert (found.severity, found.estimate) == ("advise", None)
    assert findings(in_hall, IN_KITCHEN) == ()
    assert findings(in_hall, HIGH) == ()


def test_out_of_reach_of_a_hand_it_may_stay_on_the_way() -> None:
    assert findings(on_wall("in-hall", "sounder", "study-wall", 5.5, height_m=2.45)) == ()


def test_beside_the_unit_counts_through_a_wall() -> None:
    """The hall's sounder is 0.18 m from the unit on the wall's other face."""
    (found,) = findings(IN_HALL, IN_KITCHEN)
    assert found.subject == "in-hall"


def test_only_outside_sounders_leave_it_not_run() -> None:
    (found,) = findings(HIGH)
    assert (found.severity, found.lacks, found.message) == ("not run", None, "no inside sounder")
