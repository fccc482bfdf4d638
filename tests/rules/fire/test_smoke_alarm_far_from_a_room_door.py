"""FIR101: the walk to each door, worked by hand; the pack decides which doors count."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, one_room
from common.mending import mended
from common.rule_houses.fire import US, hung, with_bedroom
from wardwright.rules.fire.smoke_alarm_far_from_a_room_door import smoke_alarm_far_from_a_room_door as rule
from wardwright.rules.fire_alarms import CAUTION
from wardwright.rules.registry import findings_of


def test_the_walk_is_worked_by_hand() -> None:
    """From x 1 straight to the bedroom's door at x 6.15."""
    site = with_bedroom(hung("smoke", "smoke", 1.0, 4.0))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(5.15)
    assert (found.limit, found.subject, found.severity, found.related) == (3.0, "study", "advise", ("smoke",))
    assert CAUTION in found.cure
    assert found.mends[0].subject == "hall"
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_in_america_21_feet_are_enough_and_other_rooms_do_not_count() -> None:
    assert findings_of(rule, with_bedroom(hung("smoke", "smoke", 1.0, 4.0), place=US), CATALOGUE) == ()


def test_other_rooms_have_the_longer_limit() -> None:
    """From the bedroom's far end, x 10, to the kitchen's door at x 4.05: 5.95 m, within 7.5 m."""
    assert findings_of(rule, with_bedroom(hung("smoke", "smoke", 8.5, 4.0)), CATALOGUE) == ()


def test_a_room_without_a_way_cannot_be_run() -> None:
    (found,) = findings_of(rule, one_room(devices=(hung("smoke", "smoke", 2.5, 2.0),)), CATALOGUE)
    assert (found.severity, found.subject) == ("not run", "living")
