"""KEY101: the walk from the door, and a keypad nearer to it."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, opening, two_rooms_and_hall
from common.mending import mended
from common.rule_houses.keypads import FAR_KEYPAD, GLAZED, KEYPAD
from wardwright.rules.finding import Finding
from wardwright.rules.keypads.keypad_far_from_the_entry_door import keypad_far_from_the_entry_door as rule
from wardwright.rules.keypads.keypad_seen_through_glass import keypad_seen_through_glass
from wardwright.rules.registry import findings_of


def findings(*devices: Any, **parts: Any) -> tuple[Finding, ...]:
    return findings_of(rule, two_rooms_and_hall(devices=devices, **parts), CATALOGUE)


def test_the_walk_is_measured_from_inside_the_door_to_before_the_keypad() -> None:
    """From (5.1, 0.27) straight up the hall to (5.1, 5.6)."""
    (found,) = findings(FAR_KEYPAD)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(5.33, abs=0.01)
    assert (found.severity, found.limit, found.subject) == ("advise", 5.0, "front-door")
    assert (found.mends[0].action, found.mends[0].subject) == ("move-device", "keypad")


def test_the_new_place_is_not_seen_through_the_door() -> None:
    site = two_rooms_and_hall(devices=(FAR_KEYPAD,), openings=GLAZED)
    (found,) = findings(FAR_KEYPAD, openings=GLAZED)
    (mend,) = found.mends
    assert dict(mend.values)["height_m"] == 1.1
    assert len(findings_of(keypad_seen_through_glass, site, CATALOGUE)) == 1
    assert findings_of(keypad_seen_through_glass, mended(site, mend), CATALOGUE) == ()


def test_a_keypad_that_serves_another_door_stays_and_a_second_is_added() -> None:
    back = opening("back-door", "north", 5.25, is_entry_door=True)
    keypad = on_wall("keypad", "keypad", "kitchen-wall", 5.6, side="right", height_m=1.1)
    (found,) = findings(keypad, openings=(*two_rooms_and_hall().openings, back))
    assert (found.subject, found.mends[0].action) == ("front-door", "add-device")
    assert dict(found.mends[0].values)["sheet"] == "keypad"


def test_a_built_in_keypad_stays_and_a_separate_one_is_added() -> None:
    unit = on_wall("unit", "unit-with-keypad", "north", 5.25, height_m=1.1)
    (found,) = findings(unit)
    assert found.mends[0].action == "add-device"


def test_a_near_one_is_silent_and_none_is_not_run() -> None:
    assert findings(KEYPAD) == ()
    (found,) = findings()
    assert (found.severity, found.lacks) == ("not run", "keypad")


def test_a_keypad_that_cannot_be_reached_is_said() -> None:
    shut_off = tuple(one for one in two_rooms_and_hall().openings if one.id != "study-door")
    (found,) = findings(on_wall("keypad", "keypad", "east", 3.0, height_m=1.1), openings=shut_off)
    assert (found.severity, found.subject) == ("not run", "front-door")
