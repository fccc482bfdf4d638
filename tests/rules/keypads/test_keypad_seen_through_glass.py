"""KEY103: facing a glazed door, beside it, behind a blind."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, two_rooms_and_hall
from common.rule_houses.keypads import FAR_KEYPAD, GLAZED
from wardwright.rules.keypads.keypad_seen_through_glass import keypad_seen_through_glass as rule
from wardwright.rules.registry import findings_of


def test_it_is_seen_straight_through_the_door() -> None:
    """The keypad is at y = 5.96, the onlooker half a metre before the outer face at y = -0.3."""
    (found,) = findings_of(rule, two_rooms_and_hall(devices=(FAR_KEYPAD,), openings=GLAZED), CATALOGUE)
    assert found.message == "keypad: it is seen from outside through front door"
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(5.96 + 0.8)
    assert found.severity == "advise"
    assert found.mends[0].subject == "keypad"


def test_a_solid_door_hides_it() -> None:
    assert findings_of(rule, two_rooms_and_hall(devices=(FAR_KEYPAD,)), CATALOGUE) == ()


def test_beside_the_door_it_is_not_seen() -> None:
    beside = on_wall("keypad", "keypad", "south", 6.0, height_m=1.1)
    assert findings_of(rule, two_rooms_and_hall(devices=(beside,), openings=GLAZED), CATALOGUE) == ()


def test_a_unit_with_a_keypad_is_the_other_rules_business() -> None:
    unit = on_wall("unit", "unit-with-keypad", "north", 5.25, height_m=1.1)
    (found,) = findings_of(rule, two_rooms_and_hall(devices=(unit,), openings=GLAZED), CATALOGUE)
    assert (found.severity, found.lacks) == ("not run", "keypad")
