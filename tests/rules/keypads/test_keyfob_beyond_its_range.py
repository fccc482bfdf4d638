"""KEY104: before the door and at the boundary, against the sheet's reach."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, standing_free, two_rooms_and_hall
from common.rule_houses.control import socket
from common.rule_houses.keypads import FAR_UNIT, KEYFOB, NEAR_UNIT
from wardwright.model.surroundings import Ground
from wardwright.rules.finding import Finding
from wardwright.rules.keypads.keyfob_beyond_its_range import keyfob_beyond_its_range as rule
from wardwright.rules.registry import findings_of

SOCKET = (socket(5.9, 0.05),)
BOUNDARY = Ground(boundary_m=((-3.0, -6.0), (13.0, -6.0), (13.0, 9.0), (-3.0, 9.0)))


def findings(*devices: Any, **parts: Any) -> tuple[Finding, ...]:
    return findings_of(rule, two_rooms_and_hall(devices=devices, **({"outlets": SOCKET} | parts)), CATALOGUE)


def test_the_distance_is_straight_from_before_the_door() -> None:
    """From (5.1, -0.8), 1.1 m up, to (10.16, 5.5), 1.5 m up; the sheet reaches 8 m."""
    (found,) = findings(KEYFOB, FAR_UNIT)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx((5.06**2 + 6.3**2 + 0.4**2) ** 0.5)
    assert (found.severity, found.limit) == ("must mend", 8.0)
    assert "from before front door" in found.message
    assert found.mends[0].action == "add-device"
    assert dict(found.mends[0].values)["sheet"] == "repeater"


def test_the_boundary_straight_before_the_door_counts_where_it_is_drawn() -> None:
    """The unit at (6.24, 2.0) is 8.1 m from (5.1, -6.0), and well within 8 m of the door."""
    assert findings(KEYFOB, NEAR_UNIT) == ()
    (found,) = findings(KEYFOB, NEAR_UNIT, ground=BOUNDARY)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx((1.14**2 + 8.0**2 + 0.4**2) ** 0.5)
    assert "the boundary before front door" in found.message


def test_a_repeater_that_is_there_hears_it_too() -> None:
    assert findings(KEYFOB, FAR_UNIT, on_wall("repeater", "repeater", "south", 6.0)) == ()


def test_keyfobs_of_one_sheet_are_one_finding() -> None:
    (found,) = findings(KEYFOB, standing_free("second", "keyfob", 5.1, 2.0), FAR_UNIT)
    assert (found.subject, found.related) == ("keyfob", ("second",))


def test_no_repeater_without_a_power_point() -> None:
    (found,) = findings(KEYFOB, FAR_UNIT, outlets=())
    assert found.mends == ()


def test_a_silent_sheet_is_said() -> None:
    (found,) = findings(standing_free("keyfob", "keyfob-silent", 5.1, 1.0), NEAR_UNIT)
    assert (found.severity, found.message) == ("not run", "keyfob: its sheet does not say how far it reaches")


@pytest.mark.parametrize(("devices", "lacks"), [((NEAR_UNIT,), "keyfob"), ((KEYFOB,), "control-unit")])
def test_what_is_lacking_is_named(devices: Any, lacks: str) -> None:
    (found,) = findings(*devices)
    assert (found.severity, found.lacks) == ("not run", lacks)
